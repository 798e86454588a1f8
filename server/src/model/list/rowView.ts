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

/** Where in a row the cells stand that mean something. Rows without a fault share one. */
export class RowLayout {
  readonly columns: Columns;
  /** What a row is called where the author sees it. */
  readonly noun: "line" | "row";
  readonly fault: Fault | undefined;
  readonly #source: string;
  /** How many cells behind the first one the designators are spread over. */
  readonly #spread: number;
  /** Columns from the designators on are moved by this many cells. */
  readonly #shift: number;

  /** `source`: the text in which the rows stand. */
  constructor(columns: Columns, source: string, noun: "line" | "row", fault?: Fault, spread = 0) {
    this.columns = columns;
    this.#source = source;
    this.noun = noun;
    this.fault = fault;
    this.#spread = spread;
    this.#shift = fault === "first-cell-missing" ? -1 : spread;
  }

  /** The layout of a row in a section with this one. */
  of(row: TableRow): RowLayout {
    const { columns } = this;
    const column = columns.of("designator");
    if (column === undefined || row.width === columns.width) return this;
    if (lacksFirstCell(row, column, columns.width)) return this.#with("first-cell-missing", 0);
    const spread = spreadOf(row, column, columns.width);
    return spread > 0 ? this.#with("unquoted-list", spread) : this;
  }

  cell(row: TableRow, meaning: Meaning): TableCell | undefined {
    const at = this.place(meaning);
    if (at === undefined) return undefined;
    return this.isSpread(meaning) ? this.#spreadCell(row, at) : row.cell(at);
  }

  /** Text of the cell, empty where there is none. */
  text(row: TableRow, meaning: Meaning): string {
    const at = this.place(meaning);
    if (at === undefined) return "";
    return this.isSpread(meaning) ? (this.#spreadCell(row, at)?.text ?? "") : row.text(at);
  }

  /** Where a stretch of the row's designator cell's text stands. */
  designatorPlace(row: TableRow, start: number, end: number): Span {
    const at = this.place("designator")!;
    if (this.#spread === 0) return row.place(at, start, end);
    const from = this.#spreadCell(row, at)!.span.start;
    return { start: from + start, end: from + end };
  }

  /** Whether what is meant is spread over several cells. */
  isSpread(meaning: Meaning): boolean {
    return this.#spread > 0 && meaning === "designator";
  }

  /** Which cell of a row means this. */
  place(meaning: Meaning): number | undefined {
    const column = this.columns.of(meaning);
    if (column === undefined || this.#shift === 0) return column;
    if (this.#shift < 0) return column === 0 ? undefined : column - 1;
    return column > this.columns.of("designator")! ? column + this.#shift : column;
  }

  /** What the cell in this place of a row means. */
  meaningAt(place: number): Meaning | undefined {
    const isMoved = this.#shift < 0 || place > (this.columns.of("designator") ?? place);
    return this.columns.choices[isMoved ? place - this.#shift : place]?.meaning;
  }

  #with(fault: Fault, spread: number): RowLayout {
    return new RowLayout(this.columns, this.#source, this.noun, fault, spread);
  }

  #spreadCell(row: TableRow, at: number): TableCell | undefined {
    const [first, last] = [row.cell(at), row.cell(at + this.#spread)];
    if (!first || !last) return first;
    const span = { start: first.span.start, end: last.span.end };
    return { text: this.#source.slice(span.start, span.end), span };
  }
}

/** A row while it is read: its cells' texts, each cut out once. */
export class RowView {
  readonly row: TableRow;
  readonly layout: RowLayout;
  /** Of all cells, in their order. */
  readonly texts: readonly string[];

  /** `usual`: the layout of most rows of the section. */
  constructor(row: TableRow, usual: RowLayout) {
    this.row = row;
    this.layout = usual.of(row);
    const texts: string[] = [];
    for (let column = 0; column < row.width; column++) texts.push(row.text(column));
    this.texts = texts;
  }

  get columns(): Columns {
    return this.layout.columns;
  }

  cell(meaning: Meaning): TableCell | undefined {
    return this.layout.cell(this.row, meaning);
  }

  /** Text of the cell, empty where there is none. */
  text(meaning: Meaning): string {
    if (this.layout.isSpread(meaning)) return this.layout.text(this.row, meaning);
    const at = this.layout.place(meaning);
    return at === undefined ? "" : (this.texts[at] ?? "");
  }

  /** Where a stretch of the designator cell's text stands. */
  designatorPlace(start: number, end: number): Span {
    return this.layout.designatorPlace(this.row, start, end);
  }
}

/** One cell short, and the designators stand one column early. */
function lacksFirstCell(row: TableRow, column: number, width: number): boolean {
  if (column === 0 || row.width !== width - 1) return false;
  return !isDesignatorList(row.text(column)) && isDesignatorList(row.text(column - 1));
}

/** Too many cells, as many of them behind the first designator being designators, too. */
function spreadOf(row: TableRow, column: number, width: number): number {
  const excess = row.width - width;
  if (excess <= 0 || !isDesignatorList(row.text(column))) return 0;
  let spread = 0;
  let named = 0;
  for (; spread < excess; spread++) {
    const text = row.text(column + spread + 1);
    if (isDesignatorList(text)) named++;
    else if (!/^\d{1,5}$/.test(text)) break;
  }
  // Empty cells at the end are no excess; a count may follow, but stands behind the last name.
  return named > 0 ? (spread === excess ? spread : named) : 0;
}
