/** Which column tells how many. */
import { readDesignatorList } from "../../syntax/designatorList.ts";
import type { TableRow } from "../../syntax/tableRow.ts";
import { readAmount } from "./amounts.ts";
import { type Candidates, percent } from "./candidates.ts";

/** The column that counts the designators beside it, else the one that is called so. */
export function chooseQuantity(columns: Candidates): void {
  const lengths = listLengths(columns);
  let best: { column: number; score: number; why: string } | undefined;
  for (const [column, profile] of columns.free()) {
    const rank = columns.names[column]?.ranks.get("quantity");
    const { compared, agreeing, several } = agreement(column, lengths);
    const share = compared === 0 ? 0 : agreeing / compared;
    const counts = share >= 0.8 && compared >= lengths.size / 2 && compared > 0;
    const says =
      (rank === 0 && isAmounts(columns, column)) ||
      (rank === 1 && profile.whole > 0.5 && (counts || (compared === 0 && !profile.counting)));
    // A column of ones beside single parts tells nothing, unless its name does not contradict.
    if (!says && !(counts && (several > 1 || !columns.isNamed(column)))) continue;
    const score =
      (counts ? share + Math.min(1, several / 2) : 0) + (says ? 1 - (rank ?? 0) / 4 : 0);
    if (best && score <= best.score) continue;
    const seen = `in ${percent(share)} of the rows it is the number of designators`;
    const why = says ? (counts ? `${seen}, and its name says so` : "its name says so") : seen;
    best = { column, score, why };
  }
  if (best) columns.take("quantity", best.column, best.why);
}

/** `Nombre` heads numbers in French and names in Spanish. */
function isAmounts(columns: Candidates, column: number): boolean {
  const cells = columns.rows.map((row) => row.text(column)).filter((text) => text !== "");
  const read = cells.filter((text) => readAmount(text).kind !== "unread");
  return read.length >= cells.length / 4;
}

/** How many designators each row has that has any. */
function listLengths(columns: Candidates): ReadonlyMap<TableRow, number> {
  const lengths = new Map<TableRow, number>();
  const column = columns.chosen.get("designator");
  if (column === undefined) return lengths;
  for (const row of columns.rows) {
    const { names } = readDesignatorList(row.text(column));
    if (names.length > 0) lengths.set(row, names.length);
  }
  return lengths;
}

function agreement(column: number, lengths: ReadonlyMap<TableRow, number>) {
  let compared = 0;
  let agreeing = 0;
  let several = 0;
  for (const [row, length] of lengths) {
    const text = row.text(column);
    const amount = text ? readAmount(text) : undefined;
    if (amount?.kind !== "pieces") continue;
    compared++;
    if (amount.count !== length) continue;
    agreeing++;
    if (length > 1) several++;
  }
  return { compared, agreeing, several };
}
