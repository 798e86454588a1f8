/**
 * A sheet as rows that the list reader takes. Since a workbook has no text that offsets could count
 * in, one is made of it: a line a row, cells parted by tabs. No one gets to see it; places are told
 * by the names of cells.
 */
import type { Span } from "../../text/span.ts";
import type { TableCell, TableRow } from "../tableRow.ts";
import { columnName, type Sheet } from "./sheet.ts";

/** Tells the places of a text that was made of a sheet. */
export interface SheetPlaces {
  readonly sheet: string;
  /** The cell in which the span begins: `B12`; undefined for an empty span, which is the whole sheet. */
  cellAt(span: Span): string | undefined;
  isHiddenAt(span: Span): boolean;
}

export interface SheetText {
  readonly text: string;
  readonly rows: readonly TableRow[];
  readonly places: SheetPlaces;
}

export function textOfSheet(sheet: Sheet): SheetText {
  const width = Math.max(0, ...sheet.rows.map(({ cells }) => cells.length));
  const rows: SheetTableRow[] = [];
  const parts: string[] = [];
  let at = 0;
  for (const { number, cells, isHidden } of sheet.rows) {
    const starts: number[] = [];
    const start = at;
    for (let column = 0; column < cells.length; column++) {
      if (column > 0) at++;
      starts.push(at);
      at += cells[column]?.length ?? 0;
    }
    // `join` takes a hole for an empty text.
    parts.push(cells.join("\t"));
    rows.push(new SheetTableRow(number, { start, end: at }, cells, starts, width, isHidden));
    at++;
  }
  return { text: parts.join("\n"), rows, places: new Places(sheet.name, rows) };
}

class SheetTableRow implements TableRow {
  readonly line: number;
  readonly span: Span;
  readonly width: number;
  readonly isHidden: boolean;
  readonly #cells: readonly (string | undefined)[];
  readonly #starts: readonly number[];

  constructor(
    line: number,
    span: Span,
    cells: readonly (string | undefined)[],
    starts: readonly number[],
    width: number,
    isHidden: boolean,
  ) {
    this.line = line;
    this.span = span;
    this.#cells = cells;
    this.#starts = starts;
    this.width = width;
    this.isHidden = isHidden;
  }

  text(column: number): string {
    return this.#cells[column] ?? "";
  }

  cell(column: number): TableCell | undefined {
    if (column >= this.width) return undefined;
    const text = this.text(column);
    const start = this.#starts[column] ?? this.span.end;
    return { text, span: { start, end: start + text.length } };
  }

  place(column: number, start: number, end: number): Span {
    const at = this.#starts[column] ?? this.span.end;
    return { start: at + start, end: at + end };
  }

  /** The column of the cell that holds the offset. */
  columnAt(offset: number): number {
    const behind = this.#starts.findIndex((start) => start > offset);
    return (behind < 0 ? this.#starts.length : behind) - 1;
  }
}

class Places implements SheetPlaces {
  readonly sheet: string;
  readonly #rows: readonly SheetTableRow[];

  constructor(sheet: string, rows: readonly SheetTableRow[]) {
    this.sheet = sheet;
    this.#rows = rows;
  }

  cellAt({ start, end }: Span): string | undefined {
    const row = start < end ? this.#rowAt(start) : undefined;
    return row && `${columnName(row.columnAt(start))}${row.line}`;
  }

  isHiddenAt({ start, end }: Span): boolean {
    return start < end && (this.#rowAt(start)?.isHidden ?? false);
  }

  #rowAt(offset: number): SheetTableRow | undefined {
    let low = 0;
    let high = this.#rows.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.#rows[middle]!.span.start <= offset) low = middle;
      else high = middle - 1;
    }
    return this.#rows[low];
  }
}
