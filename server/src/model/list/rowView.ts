/**
 * A row seen through what its section's columns mean. Rows that lost their first cell, or whose list
 * of designators was not quoted, are seen as they were meant.
 */
import { isDesignatorList } from "../../syntax/designatorList.ts";
import type { TableCell, TableRow } from "../../syntax/tableRow.ts";
import type { Span } from "../../text/span.ts";
import type { Columns } from "./columns.ts";
import type { Meaning } from "./partsList.ts";

export type Fault = "first-cell-missing" | "unquoted-list";

export class RowView {
  readonly row: TableRow;
  readonly columns: Columns;
  readonly fault: Fault | undefined;
  /** All cells of the row, in their order. */
  readonly cells: readonly TableCell[];
  readonly #source: string;
  /** Columns from the designators on are moved by this many cells. */
  readonly #shift: number;
  /** How many cells behind the first one the designators are spread over. */
  readonly #spread: number;

  constructor(row: TableRow, columns: Columns, source: string) {
    this.row = row;
    this.columns = columns;
    this.#source = source;
    this.cells = Array.from({ length: row.width }, (_, column) => row.cell(column)!);
    const column = columns.of("designator");
    this.#spread = column === undefined ? 0 : spreadOf(row, column, columns.width);
    const lacksFirst = column !== undefined && lacksFirstCell(row, column, columns.width);
    this.#shift = lacksFirst ? -1 : this.#spread;
    this.fault = lacksFirst ? "first-cell-missing" : this.#spread > 0 ? "unquoted-list" : undefined;
  }

  cell(meaning: Meaning): TableCell | undefined {
    const column = this.columns.of(meaning);
    if (column === undefined) return undefined;
    const at = this.#place(column);
    if (at < 0) return undefined;
    if (meaning === "designator" && this.#spread > 0) return this.#spreadCell(at);
    return this.cells[at];
  }

  /** Text of the cell, empty where there is none. */
  text(meaning: Meaning): string {
    return this.cell(meaning)?.text ?? "";
  }

  /** Where a stretch of the designator cell's text stands. */
  designatorPlace(start: number, end: number): Span {
    const at = this.#place(this.columns.of("designator")!);
    if (this.#spread === 0) return this.row.place(at, start, end);
    const from = this.#spreadCell(at)!.span.start;
    return { start: from + start, end: from + end };
  }

  /** What the cell in this place of the row means. */
  meaningAt(place: number): Meaning | undefined {
    const designators = this.columns.of("designator");
    if (designators === undefined || this.#shift === 0) return this.columns.choices[place]?.meaning;
    const column = this.#shift < 0 || place > designators ? place - this.#shift : place;
    return this.columns.choices[column]?.meaning;
  }

  #place(column: number): number {
    const designators = this.columns.of("designator");
    if (designators === undefined || this.#shift === 0) return column;
    if (this.#shift < 0) return column - 1;
    return column > designators ? column + this.#shift : column;
  }

  #spreadCell(at: number): TableCell | undefined {
    const [first, last] = [this.cells[at], this.cells[at + this.#spread]];
    if (!first || !last) return first;
    const span = { start: first.span.start, end: last.span.end };
    return { text: this.#source.slice(span.start, span.end), span };
  }
}

/** One cell short, and the designators stand one column early. */
function lacksFirstCell(row: TableRow, column: number, width: number): boolean {
  if (column === 0 || row.width !== width - 1) return false;
  return (
    !isDesignatorList(row.cell(column)?.text ?? "") &&
    isDesignatorList(row.cell(column - 1)?.text ?? "")
  );
}

/** Too many cells, as many of them behind the first designator being designators, too. */
function spreadOf(row: TableRow, column: number, width: number): number {
  const excess = row.width - width;
  if (excess <= 0 || !isDesignatorList(row.cell(column)?.text ?? "")) return 0;
  let spread = 0;
  let named = 0;
  for (; spread < excess; spread++) {
    const text = row.cell(column + spread + 1)?.text ?? "";
    if (isDesignatorList(text)) named++;
    else if (!/^\d{1,5}$/.test(text)) break;
  }
  // Empty cells at the end are no excess; a count may follow, but stands behind the last name.
  return named > 0 ? (spread === excess ? spread : named) : 0;
}
