/**
 * Delimited text (CSV, TSV) after RFC 4180, and what people make of it: blanks round quotes, lone
 * quotes, inch marks, any line end, files cut off in the middle. Cells keep their exact places.
 */
import type { Span } from "../text/span.ts";
import { CellStore, CsvRow } from "./csvRow.ts";
import type { TableRow } from "./tableRow.ts";

export interface CsvTable {
  /** Rows that hold at least one character or delimiter; blank lines are left out. */
  readonly rows: readonly TableRow[];
  /**
   * Offset of the first quote that is never closed. On the last line it closes with the text (a file
   * cut off there); before that it counts as a character.
   */
  readonly unclosed: number | undefined;
  /** The text goes on, but `maxRows` or `maxCells` is reached. */
  readonly cut: boolean;
}

export interface CsvLimits {
  readonly maxRows: number;
  readonly maxCells: number;
}

const NO_LIMITS: CsvLimits = {
  maxRows: Number.POSITIVE_INFINITY,
  maxCells: Number.POSITIVE_INFINITY,
};

/** Reads the text as rows of cells; `delimiter` is a single character. */
export function readCsv(text: string, delimiter: string, limits = NO_LIMITS): CsvTable {
  return new CsvReader(text, delimiter).read(limits);
}

const QUOTE = 34;
const LF = 10;
const CR = 13;

class CsvReader {
  readonly #text: string;
  readonly #delimiter: number;
  readonly #cells: CellStore;
  #at = 0;
  #line = 1;
  #unclosed: number | undefined;
  /** The quoted cell read last has a `""` in it. */
  #hasPairs = false;
  /** No quote that opens before this offset is closed. */
  #openUntil = 0;
  /** The line whose end was looked for last. */
  #known: Span = { start: 0, end: -1 };

  constructor(text: string, delimiter: string) {
    this.#text = text;
    this.#delimiter = delimiter.charCodeAt(0);
    this.#cells = new CellStore(text);
  }

  read({ maxRows, maxCells }: CsvLimits): CsvTable {
    const rows: TableRow[] = [];
    const cells = this.#cells;
    if (this.#text.charCodeAt(0) === 0xfeff) this.#at = 1;
    while (this.#at < this.#text.length && rows.length < maxRows && cells.count < maxCells) {
      const row = this.#row(maxCells);
      if (row) rows.push(row);
    }
    return { rows, unclosed: this.#unclosed, cut: this.#at < this.#text.length };
  }

  #row(maxCells: number): TableRow | undefined {
    const start = this.#at;
    const line = this.#line;
    const cells = this.#cells;
    const first = cells.count;
    do this.#cell();
    while (this.#takeDelimiter() && cells.count < maxCells);
    const end = this.#at;
    this.#takeLineEnd();
    if (start < end) return new CsvRow(cells, first, cells.count - first, line, start, end);
    cells.count = first;
    return undefined;
  }

  /** Adds the next cell and stops at what ends it. */
  #cell(): void {
    const start = this.#skipBlanks(this.#at);
    const close = this.#text.charCodeAt(start) === QUOTE ? this.#closingQuote(start) : -1;
    if (close < 0) {
      const end = this.#endOfCell(start);
      this.#at = end;
      this.#add(start, end);
      return;
    }
    for (let i = start; i < close; i++) if (this.#isLineEnd(i)) this.#line++;
    this.#at = Math.min(this.#skipBlanks(close + 1), this.#text.length);
    if (this.#hasPairs) this.#cells.markDoubled();
    this.#add(start + 1, close);
  }

  #add(from: number, to: number): void {
    let start = from;
    let end = to;
    while (start < end && isSpace(this.#text.charCodeAt(start))) start++;
    while (end > start && isSpace(this.#text.charCodeAt(end - 1))) end--;
    this.#cells.add(start, end);
  }

  /**
   * The quote that closes the one at `open`, or -1. A quote closes a cell only where the cell ends
   * behind it, so an inch mark inside stays a character. A quote that opens a cell on a later line
   * tells that this one was forgotten. After one was found open, only quotes that close on their own
   * line are trusted.
   */
  #closingQuote(open: number): number {
    if (open < this.#openUntil) return -1;
    const text = this.#text;
    this.#hasPairs = false;
    const lineEnd = this.#endOfLine(open);
    const limit = this.#unclosed === undefined ? text.length : lineEnd;
    let at = text.indexOf('"', open + 1);
    while (at >= 0 && at < limit) {
      if (text.charCodeAt(at + 1) === QUOTE) {
        this.#hasPairs = true;
        at++;
      } else if (this.#endsCell(at + 1)) return at;
      else if (at > lineEnd && this.#opensCell(at)) break;
      at = text.indexOf('"', at + 1);
    }
    this.#unclosed ??= open;
    this.#openUntil = lineEnd;
    return lineEnd === text.length ? text.length : -1;
  }

  /** Whether nothing but blanks stands between `at` and the delimiter or line end before it. */
  #opensCell(at: number): boolean {
    let before = at - 1;
    while (this.#isBlank(before)) before--;
    const code = this.#text.charCodeAt(before);
    return code === this.#delimiter || code === LF || code === CR;
  }

  #endsCell(at: number): boolean {
    const behind = this.#skipBlanks(at);
    if (behind >= this.#text.length) return true;
    const code = this.#text.charCodeAt(behind);
    return code === this.#delimiter || code === LF || code === CR;
  }

  #skipBlanks(at: number): number {
    let i = at;
    while (this.#isBlank(i)) i++;
    return i;
  }

  #isBlank(at: number): boolean {
    const code = this.#text.charCodeAt(at);
    return (code === 32 || code === 9 || code === 0xa0) && code !== this.#delimiter;
  }

  #endOfCell(from: number): number {
    let i = from;
    for (; i < this.#text.length; i++) {
      const code = this.#text.charCodeAt(i);
      if (code === this.#delimiter || code === LF || code === CR) break;
    }
    return i;
  }

  #endOfLine(from: number): number {
    const { start, end } = this.#known;
    if (from >= start && from <= end) return end;
    let i = from;
    for (; i < this.#text.length; i++) {
      const code = this.#text.charCodeAt(i);
      if (code === LF || code === CR) break;
    }
    this.#known = { start: from, end: i };
    return i;
  }

  #takeDelimiter(): boolean {
    if (this.#text.charCodeAt(this.#at) !== this.#delimiter) return false;
    this.#at++;
    return true;
  }

  #takeLineEnd(): void {
    if (this.#at >= this.#text.length) return;
    const code = this.#text.charCodeAt(this.#at);
    if (code !== LF && code !== CR) return;
    this.#at += code === CR && this.#text.charCodeAt(this.#at + 1) === LF ? 2 : 1;
    this.#line++;
  }

  #isLineEnd(at: number): boolean {
    const code = this.#text.charCodeAt(at);
    return code === LF || (code === CR && this.#text.charCodeAt(at + 1) !== LF);
  }
}

/** What `String.prototype.trim` takes for space. */
function isSpace(code: number): boolean {
  if (code < 128) return code === 32 || (code >= 9 && code <= 13);
  return (
    code === 0xa0 ||
    code === 0xfeff ||
    code === 0x1680 ||
    (code >= 0x2000 && code <= 0x200a) ||
    code === 0x2028 ||
    code === 0x2029 ||
    code === 0x202f ||
    code === 0x205f ||
    code === 0x3000
  );
}
