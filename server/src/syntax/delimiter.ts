/** Which character parts the cells of a delimited text: the one by which its rows agree. */
import { readCsv } from "./csv.ts";
import { isDesignatorList } from "./designatorList.ts";
import type { TableRow } from "./tableRow.ts";

export const DELIMITERS = ["\t", ";", ",", ":", "|"] as const;
export type Delimiter = (typeof DELIMITERS)[number];

/** Rows looked at; lists do not change their delimiter half-way. */
const SAMPLE = { maxRows: 300, maxCells: 30_000 };
const MAX_SAMPLE = 300_000;

/**
 * The delimiter, or undefined when by none of them the rows agree in any way. Characters are not
 * counted: a semicolon file may hold more commas than semicolons. What counts is how many rows have
 * the same number of cells, how many cells that are, and whether some column of them holds
 * designators.
 */
export function findDelimiter(text: string): Delimiter | undefined {
  const sample = text.slice(0, MAX_SAMPLE);
  let best: Delimiter | undefined;
  let most = 0;
  for (const delimiter of DELIMITERS) {
    if (!sample.includes(delimiter)) continue;
    // Of equals the first: hardly a cell holds a tab, and a semicolon file has decimal commas.
    const score = agreement(readCsv(sample, delimiter, SAMPLE).rows, delimiter, most + 0.01);
    if (score !== undefined) {
      most = score;
      best = delimiter;
    }
  }
  return best;
}

/** How well the rows agree, from 0 to 1; undefined where it is not more than `least`. */
function agreement(
  rows: readonly TableRow[],
  delimiter: Delimiter,
  least: number,
): number | undefined {
  const counts = new Map<number, number>();
  for (const { width } of rows) counts.set(width, (counts.get(width) ?? 0) + 1);
  let width = 0;
  let agreeing = 0;
  for (const [cells, count] of counts) {
    if (cells < 2 || count < agreeing || (count === agreeing && cells < width)) continue;
    width = cells;
    agreeing = count;
  }
  if (width === 0) return undefined;
  const share = agreeing / rows.length;
  // Colons stand in prose, times and addresses; only a strict `J2:1` list is parted by them.
  if (delimiter === ":" && (share < 0.9 || width > 3)) return undefined;
  // Of tables drawn with bars each row has two of them at least.
  if (delimiter === "|" && width < 3) return undefined;
  const most = share * (1 - 1 / width);
  if (most <= least) return undefined;
  const score = most * (0.5 + 0.5 * designatorShare(rows, width));
  return score > least ? score : undefined;
}

/** Of the column with most of them, the share of cells that are designators. */
function designatorShare(rows: readonly TableRow[], width: number): number {
  let most = 0;
  for (let column = 0; column < Math.min(width, 30); column++) {
    let filled = 0;
    let listed = 0;
    for (const row of rows) {
      const text = row.text(column);
      if (!text) continue;
      filled++;
      if (isDesignatorList(text)) listed++;
    }
    if (filled > 0) most = Math.max(most, listed / filled);
  }
  return most;
}
