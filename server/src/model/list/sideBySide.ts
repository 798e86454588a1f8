/** Lists that stand side by side in one sheet, parted by empty columns. */
import { isDesignatorList } from "../../syntax/designatorList.ts";
import type { TableCell, TableRow } from "../../syntax/tableRow.ts";
import type { Span } from "../../text/span.ts";
import { type HeaderLookup, MAX_COLUMNS } from "./sections.ts";

/** The rows of each list: of more than one only where two blocks have designators under a header. */
export function sideBySide(
  rows: readonly TableRow[],
  lookup: HeaderLookup,
): (readonly TableRow[])[] {
  const blocks = blocksOf(rows);
  if (blocks.length < 2) return [rows];
  const sliced = blocks.map(({ from, to }) => rows.map((row) => new RowSlice(row, from, to)));
  const lists = sliced.filter((block) => isList(block, lookup));
  return lists.length < 2 ? [rows] : lists;
}

/** Stretches of columns between columns in which no row has anything. */
function blocksOf(rows: readonly TableRow[]): { from: number; to: number }[] {
  const width = Math.min(rows[0]?.width ?? 0, MAX_COLUMNS);
  const filled = new Array<boolean>(width).fill(false);
  for (const row of rows) {
    for (let i = 0; i < width; i++) filled[i] ||= row.text(i) !== "";
  }
  const blocks: { from: number; to: number }[] = [];
  for (const [column, isFilled] of filled.entries()) {
    const last = blocks.at(-1);
    if (!isFilled) continue;
    if (last?.to === column) last.to++;
    else blocks.push({ from: column, to: column + 1 });
  }
  return blocks;
}

function isList(rows: readonly TableRow[], lookup: HeaderLookup): boolean {
  let isHeaded = false;
  for (const row of rows) {
    const texts = Array.from({ length: row.width }, (_, column) => row.text(column));
    isHeaded ||= texts.some((text) => lookup.of(text)?.ranks.has("designator"));
    if (isHeaded && texts.some((text) => isDesignatorList(text))) return true;
  }
  return false;
}

/** Some columns of a row. */
class RowSlice implements TableRow {
  readonly #row: TableRow;
  readonly #from: number;
  readonly width: number;

  constructor(row: TableRow, from: number, to: number) {
    this.#row = row;
    this.#from = from;
    this.width = to - from;
  }

  get line(): number {
    return this.#row.line;
  }

  get span(): Span {
    const first = this.#row.cell(this.#from)!.span;
    return { start: first.start, end: this.#row.cell(this.#from + this.width - 1)!.span.end };
  }

  text(column: number): string {
    return column < this.width ? this.#row.text(this.#from + column) : "";
  }

  cell(column: number): TableCell | undefined {
    return column < this.width ? this.#row.cell(this.#from + column) : undefined;
  }

  place(column: number, start: number, end: number): Span {
    return this.#row.place(this.#from + column, start, end);
  }
}
