/** Rows of delimited text that keep only where their cells stand: long lists stay small. */
import type { Span } from "../text/span.ts";
import type { TableCell, TableRow } from "./tableRow.ts";

/** The contents of a text's cells, one after the other, kept as where each begins and ends. */
export class CellStore {
  /** How many there are. */
  count = 0;
  readonly #text: string;
  #bounds = new Int32Array(2048);
  /** Those in which `""` stands for a quote. */
  readonly #doubled = new Set<number>();
  /** Where in the text a character of a cell with doubled quotes is; the place asked for last. */
  #last = { cell: -1, index: 0, at: 0 };

  constructor(text: string) {
    this.#text = text;
  }

  add(start: number, end: number): void {
    const at = 2 * this.count++;
    if (at === this.#bounds.length) {
      const grown = new Int32Array(2 * at);
      grown.set(this.#bounds);
      this.#bounds = grown;
    }
    this.#bounds[at] = start;
    this.#bounds[at + 1] = end;
  }

  /** Says of the cell added next that it has doubled quotes. */
  markDoubled(): void {
    this.#doubled.add(this.count);
  }

  start(cell: number): number {
    return this.#bounds[2 * cell]!;
  }

  end(cell: number): number {
    return this.#bounds[2 * cell + 1]!;
  }

  content(cell: number): string {
    const raw = this.#text.slice(this.start(cell), this.end(cell));
    return this.#doubled.size > 0 && this.#doubled.has(cell) ? raw.replaceAll('""', '"') : raw;
  }

  /** Source offset of the character `index` of a content. */
  offset(cell: number, index: number): number {
    if (!this.#doubled.has(cell)) return this.start(cell) + index;
    // Places are mostly asked for in their order: go on from the one before.
    const goesOn = this.#last.cell === cell && this.#last.index <= index;
    const from = goesOn ? this.#last : { index: 0, at: this.start(cell) };
    let { at } = from;
    for (let i = from.index; i < index; i++) at += this.#text.startsWith('""', at) ? 2 : 1;
    this.#last = { cell, index, at };
    return at;
  }
}

/** A row that knows only which cells are its own. */
export class CsvRow implements TableRow {
  readonly line: number;
  readonly width: number;
  readonly #cells: CellStore;
  readonly #first: number;
  readonly #start: number;
  readonly #end: number;

  constructor(
    cells: CellStore,
    first: number,
    width: number,
    line: number,
    start: number,
    end: number,
  ) {
    this.#cells = cells;
    this.#first = first;
    this.width = width;
    this.line = line;
    this.#start = start;
    this.#end = end;
  }

  get span(): Span {
    return { start: this.#start, end: this.#end };
  }

  text(column: number): string {
    return column < this.width ? this.#cells.content(this.#first + column) : "";
  }

  cell(column: number): TableCell | undefined {
    if (column >= this.width) return undefined;
    const cell = this.#first + column;
    const span = { start: this.#cells.start(cell), end: this.#cells.end(cell) };
    return { text: this.#cells.content(cell), span };
  }

  place(column: number, from: number, to: number): Span {
    if (column >= this.width) return { start: this.#end + from, end: this.#end + to };
    const cell = this.#first + column;
    return { start: this.#cells.offset(cell, from), end: this.#cells.offset(cell, to) };
  }
}
