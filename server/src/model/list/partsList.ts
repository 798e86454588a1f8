/**
 * The parts list as the analysis sees it, whatever file it came from.
 * Spans are offsets into `PartsList.text`, the decoded text without byte-order mark.
 */
import type { Quantity } from "../../quantity/value.ts";
import type { SheetPlaces } from "../../syntax/sheets/sheetText.ts";
import type { TableCell } from "../../syntax/tableRow.ts";
import type { Span } from "../../text/span.ts";

/** What a column of a parts list can mean. */
export const MEANINGS = [
  "item",
  "designator",
  "quantity",
  "value",
  "tolerance",
  "power",
  "voltage",
  "current",
  "package",
  "height",
  "description",
  "part number",
  "fitted",
  "optional",
  "spare",
  "board",
  "side",
  "bag",
  "notes",
] as const;
export type Meaning = (typeof MEANINGS)[number];

/** A cell's content without quotes and outer space, and where it stands. */
export type Cell = TableCell;

/** What a column was taken for, and why, in one plain sentence. */
export interface ColumnChoice {
  /** Zero-based position in the row. */
  readonly column: number;
  readonly header: string;
  readonly headerSpan?: Span;
  readonly meaning?: Meaning;
  readonly why: string;
}

export interface ListedDesignator {
  /** As written, carried prefix filled in: `C3` for the `3` of `C1,3`. */
  readonly name: string;
  /** Where it stands; all members of a range share the range's span. */
  readonly span: Span;
  /** The line's remark names this one of its parts as optional ("U24 is optional"). */
  readonly optional?: true;
}

/** One line of the list: a kind of part with its designators, or hardware without any. */
export interface ListLine {
  /** Position in `PartsList.lines`. */
  readonly index: number;
  /** One-based line of the file, or row of the sheet, where the row begins. */
  readonly row: number;
  /** The same in words: `line 12`, `row 12`. */
  readonly place: string;
  readonly span: Span;
  /** Each is made when it is asked for; `cellsOf` gives them all. */
  readonly cells: { readonly [meaning in Meaning]?: Cell };
  /** The text of a cell alone; empty where there is none. */
  text(meaning: Meaning): string;
  readonly designators: readonly ListedDesignator[];
  /** The stated quantity; undefined when the list has none or it could not be read. */
  readonly quantity?: number;
  /** Length supplied by the line in metres, where the quantity is a length. */
  readonly metres?: number;
  readonly spare?: number;
  /** Value, tolerance and ratings read from their own columns or from the value text. */
  readonly value?: Quantity | undefined;
  readonly tolerance?: string | undefined;
  readonly power?: Quantity | undefined;
  readonly voltage?: Quantity | undefined;
  readonly current?: Quantity | undefined;
  /** Body height in mm from the list's own column. */
  readonly height?: number | undefined;
  /** False where the line is marked do-not-fit. */
  readonly fitted: boolean;
  /** The builder may leave it out. */
  readonly optional: boolean;
  readonly board?: string;
  readonly side?: "top" | "bottom" | undefined;
}

/** All cells of a line that mean something. */
export function* cellsOf({ cells }: ListLine): Iterable<Cell> {
  for (const meaning of MEANINGS) {
    const cell = cells[meaning];
    if (cell) yield cell;
  }
}

/** Codes of the checks that report what the reader found. */
export type ListProblemCode =
  | "unreadable-list"
  | "designator-syntax"
  | "repeated-designator"
  | "count-mismatch";

export interface ListProblem {
  readonly code: ListProblemCode;
  readonly span: Span;
  readonly message: string;
  /** Line the problem belongs to, so that a check can weigh it against the guide. */
  readonly line?: number;
  /** The other place that the problem is about: where a repeated designator stands first. */
  readonly other?: Span;
}

/** A name in the guide's `columns` that no column of the list has. */
export interface OverrideProblem {
  readonly meaning: Meaning;
  readonly name: string;
  /** The headers that the list does have. */
  readonly candidates: readonly string[];
}

export interface PartsList {
  readonly uri: string;
  /** Decoded text without byte-order mark; empty when the bytes are no text. */
  readonly text: string;
  readonly format: "csv" | "fixed width" | "markdown" | "netlist" | "workbook" | "unreadable";
  /**
   * Set where no one sees `text`, because it was made of a sheet: places are told by the names of
   * cells, and findings are shown where the guide names the list.
   */
  readonly places?: SheetPlaces;
  /** `utf-8`, `utf-16le`, `utf-16be` or `windows-1252`. */
  readonly encoding: string;
  /** Of each header of the list in turn; a header repeated word for word counts once. */
  readonly columns: readonly ColumnChoice[];
  readonly lines: readonly ListLine[];
  readonly problems: readonly ListProblem[];
  readonly overrideProblems: readonly OverrideProblem[];
}

/** Designators of one list beyond this number are not read (a finding says so). */
export const MAX_PARTS = 200_000;
