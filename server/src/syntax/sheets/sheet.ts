/** What a spreadsheet file holds, before anything in it is taken for a parts list. */

/** A row that has content. */
export interface SheetRow {
  /** One-based, as the program counts. */
  readonly number: number;
  readonly isHidden: boolean;
  /** Cells as their texts, from column A; holes and what follows the last filled one are undefined. */
  readonly cells: readonly (string | undefined)[];
}

export interface Sheet {
  readonly name: string;
  readonly isHidden: boolean;
  readonly rows: readonly SheetRow[];
  /** Names of cells with a formula whose result is not stored: `C2`. */
  readonly uncomputed: readonly string[];
  /** Rows or cells beyond the limits were left out. */
  readonly isCut: boolean;
}

/** What is read of a sheet at most; cells are counted with content, text in UTF-16 units. */
export const SHEET_LIMITS = { rows: 200_000, cells: 2_000_000, columns: 256, text: 20 * 2 ** 20 };

/** Longer texts are cut: spreadsheet programs hold no more in a cell. */
const MAX_CELL = 32_767;

/** Gathers the rows of a sheet as far as the limits reach. */
export class SheetBuilder {
  readonly rows: SheetRow[] = [];
  readonly uncomputed: string[] = [];
  isCut = false;
  #cells = 0;
  #text = 0;
  #current: (string | undefined)[] = [];

  /** Sets a cell of the row in hand; `column` counts from 0. */
  set(column: number, text: string): void {
    const trimmed = text.slice(0, MAX_CELL).trim();
    if (trimmed === "") return;
    // Nothing that far to the right belongs to a list.
    if (column >= SHEET_LIMITS.columns) return;
    this.#count(trimmed);
    if (!this.isCut) this.#current[column] = trimmed;
  }

  /** Ends the row in hand, which stands for `count` equal ones; rows without content are left out. */
  endRow(number: number, isHidden: boolean, count = 1): void {
    const cells = this.#current;
    if (cells.length === 0) return;
    this.#current = [];
    for (let i = 0; i < count && !this.isCut; i++) {
      if (i > 0) this.#repeat(cells);
      if (this.rows.length >= SHEET_LIMITS.rows) this.isCut = true;
      if (!this.isCut) this.rows.push({ number: number + i, isHidden, cells });
    }
  }

  #repeat(cells: readonly (string | undefined)[]): void {
    for (const cell of cells) if (cell !== undefined) this.#count(cell);
  }

  #count(text: string): void {
    this.#cells++;
    this.#text += text.length;
    this.isCut ||= this.#cells > SHEET_LIMITS.cells || this.#text > SHEET_LIMITS.text;
  }
}

/** `0` is A, `26` is AA. */
export function columnName(column: number): string {
  const letter = String.fromCharCode(65 + (column % 26));
  return column < 26 ? letter : columnName(Math.floor(column / 26) - 1) + letter;
}

/** Zero-based column of a cell's name: 1 for `B12`. Undefined for what is no such name. */
export function columnOf(cell: string): number | undefined {
  let column = 0;
  let i = 0;
  for (; i < cell.length; i++) {
    const code = cell.charCodeAt(i);
    if (code < 65 || code > 90) break;
    column = column * 26 + code - 64;
  }
  return i > 0 && i <= 3 ? column - 1 : undefined;
}
