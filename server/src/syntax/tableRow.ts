/** A row of a table, whatever it was written in, whose cells know their exact place in the text. */
import type { Span } from "../text/span.ts";

/** A cell's content without quotes, markup and outer space, and where it stands. */
export interface TableCell {
  readonly text: string;
  /** Inside the quotes of a CSV cell. */
  readonly span: Span;
}

export interface TableRow {
  /** One-based line on which the row begins. */
  readonly line: number;
  readonly span: Span;
  /** How many cells it has. */
  readonly width: number;
  /** The text of a cell; empty behind the last one. */
  text(column: number): string;
  /** Undefined behind the last cell; cells are made on demand, so that long tables stay small. */
  cell(column: number): TableCell | undefined;
  /** Where the characters from `start` to `end` of a cell's text stand. */
  place(column: number, start: number, end: number): Span;
}
