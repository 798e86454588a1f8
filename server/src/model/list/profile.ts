/** What the cells of each column look like, from a sample of the rows. */

import { glanceAtList } from "../../syntax/designatorList.ts";
import { designatorKey, readDesignator } from "../../syntax/designators.ts";
import type { TableRow } from "../../syntax/tableRow.ts";
import { classesOfLetters } from "../../trade/classLetters.ts";

/** Rows looked at; more of them do not change the picture. */
const SAMPLE = 300;

export interface ColumnProfile {
  /** Cells that hold something. */
  readonly filled: number;
  /** Of the filled cells, the share that lists designators. */
  readonly listed: number;
  /** The same, single words in capitals (ALARM) counted, too. */
  readonly named: number;
  /** How far the designators are what one expects: each once, known letters, small numbers. 0 … 1 */
  readonly plausible: number;
  /** Of the filled cells, the share of whole numbers. */
  readonly whole: number;
  /** The whole numbers rise from row to row, as item numbers do. */
  readonly counting: boolean;
}

/** Every n-th row, so that the whole list is seen. */
export function sampleOf(rows: readonly TableRow[]): readonly TableRow[] {
  if (rows.length <= SAMPLE) return rows;
  const step = rows.length / SAMPLE;
  return Array.from({ length: SAMPLE }, (_, i) => rows[Math.floor(i * step)]!);
}

export function profileColumn(rows: readonly TableRow[], column: number): ColumnProfile {
  const seen = new Set<string>();
  let filled = 0;
  let listed = 0;
  let named = 0;
  let names = 0;
  let weight = 0;
  const numbers: number[] = [];
  for (const row of rows) {
    const text = row.text(column);
    if (text === "") continue;
    filled++;
    if (/^\d{1,6}$/.test(text)) numbers.push(Number(text));
    const list = glanceAtList(text);
    if (list.names.length + list.problems.length === 0 || list.remarks.length > 0) continue;
    named++;
    if (list.names.length > 0 && list.words === list.names.length) continue;
    listed++;
    for (const { name } of list.names) {
      names++;
      weight += weightOf(name);
      seen.add(designatorKey(name));
    }
  }
  return {
    filled,
    listed: share(listed, filled),
    named: share(named, filled),
    plausible: names === 0 ? 0 : (weight / names) * (seen.size / names),
    whole: share(numbers.length, filled),
    counting: numbers.length >= 3 && isCounting(numbers),
  };
}

/** Order numbers (`C14663`) and type numbers (`BC547`) have a designator's form, too. */
function weightOf(name: string): number {
  const designator = readDesignator(name);
  if (!designator || designator.digits.length > 5) return 0.3;
  const known = classesOfLetters(designator.letters).length > 0;
  return known && designator.digits.length <= 4 ? 1 : 0.6;
}

function isCounting(numbers: readonly number[]): boolean {
  let up = 0;
  for (let i = 1; i < numbers.length; i++) if (numbers[i]! > numbers[i - 1]!) up++;
  return up >= (numbers.length - 1) * 0.8;
}

function share(part: number, whole: number): number {
  return whole === 0 ? 0 : part / whole;
}
