/** Compares the tables of a guide cell by cell with the parts list. */
import type { Guide, GuidePiece, ResolvedMark } from "../../model/guide.ts";
import { type GuideTable, isPlain, readTables, type TableCell } from "../../model/guideTable.ts";
import type { Part } from "../../model/parts.ts";
import { readDesignatorList } from "../../syntax/designatorList.ts";
import type { Finding } from "../check.ts";
import { type Row, RULES } from "./cells.ts";
import { columnKinds } from "./columns.ts";

/** Findings of all tables of the piece that name parts. */
export function* tableFindings(piece: GuidePiece, guide: Guide): Generator<Finding> {
  for (const table of readTables(piece)) yield* ofTable(table, piece, guide);
}

function* ofTable(table: GuideTable, piece: GuidePiece, guide: Guide): Generator<Finding> {
  const kinds = columnKinds(table, guide.language);
  if (!kinds.some((kind) => kind !== undefined && kind !== "designators")) return;
  const names = kinds.indexOf("designators");
  for (const cells of table.rows) {
    const row = rowOf(cells, names < 0 ? undefined : cells[names], piece, guide);
    if (row.parts.length === 0 && row.count === undefined) continue;
    for (const [place, cell] of cells.entries()) {
      const kind = kinds[place];
      if (kind && kind !== "designators" && isPlain(cell)) yield* RULES[kind](cell, row);
    }
  }
}

/** What a row speaks of: the parts of its marks, else those whose designators stand in it. */
function rowOf(
  cells: readonly TableCell[],
  names: TableCell | undefined,
  piece: GuidePiece,
  guide: Guide,
): Row {
  const marks = cells.flatMap((cell) => cell.marks);
  const marked = marks.length > 0;
  const parts = marked ? partsOf(marks) : named(names, guide);
  const count = marked ? countOf(marks) : parts.length;
  return { piece, parts, marked, ...(count ? { count } : {}), language: guide.language };
}

function partsOf(marks: readonly ResolvedMark[]): readonly Part[] {
  const parts = new Set<Part>();
  for (const item of marks.flatMap((mark) => mark.items)) {
    for (const supply of item.supplies) if (supply.kind === "part") parts.add(supply);
  }
  return [...parts];
}

/** Pieces that the marks use, one of a choice; undefined where a length is among them. */
function countOf(marks: readonly ResolvedMark[]): number | undefined {
  let count = 0;
  for (const { item, supplies } of marks.flatMap((mark) => mark.items)) {
    if (item.kind === "choice") count += 1;
    else if (item.kind !== "amount") count += supplies.length;
    else if (item.amount.kind === "count") count += item.amount.count;
    else return undefined;
  }
  return count;
}

/** Parts of a cell of designators; none where one of them is not listed. */
function named(cell: TableCell | undefined, guide: Guide): readonly Part[] {
  if (!cell || !isPlain(cell)) return [];
  const parts = readDesignatorList(cell.text).names.map(({ name }) => guide.find(name));
  return parts.every((part) => part !== undefined) ? [...new Set(parts)] : [];
}
