/** Reads a file of readings as labs have them: with a header or none, labelled or not, in one unit. */
import { readCsv } from "../../syntax/csv.ts";
import type { TableCell, TableRow } from "../../syntax/tableRow.ts";
import { type ReadingText, readReading, unitInHeader } from "../../trade/matching/readings.ts";
import { countsUp, isBlank, isHeader, readingsDelimiter } from "./readingsDelimiter.ts";

export interface LotReading {
  /** The part's own label, else its number in the lot from 1. */
  readonly label: string;
  /** The number, in plain decimal figures. */
  readonly figures: string;
}

export interface Lot {
  readonly readings: readonly LotReading[];
  /** The column that was read: its header, else its number from 1. */
  readonly column: string;
  /** Empty where neither header nor cells name one. */
  readonly unit: string;
}

/** What cannot be read, and where: an offset in the text. */
export interface LotProblem {
  readonly at: number;
  readonly message: string;
}

/** `column`: header or number from 1 of the column to read; undefined leaves it to the file. */
export function readReadings(text: string, column: string | undefined): Lot | LotProblem {
  const delimiter = readingsDelimiter(text);
  if (delimiter === undefined) return { at: Math.max(0, text.search(/\S/)), message: UNDECIDED };
  return new LotReader(text, delimiter).read(column);
}

export function isProblem(lot: Lot | LotProblem): lot is LotProblem {
  return "message" in lot;
}

const UNDECIDED =
  "It cannot be told whether a comma here is a decimal comma or parts two columns. Begin the file with a header line: one word where each line is one reading (`V`), two words where there are two columns (`part,V`). Or write decimal points, or part the columns with semicolons.";

class LotReader {
  readonly #rows: readonly TableRow[];
  readonly #header: TableRow | undefined;
  readonly #width: number;
  readonly #isParted: boolean;

  constructor(text: string, delimiter: string) {
    this.#isParted = delimiter === ",";
    const rows = readCsv(text, delimiter).rows.filter((row) => !isBlank(row));
    this.#header = rows[0] && isHeader(rows[0]) ? rows[0] : undefined;
    this.#rows = this.#header ? rows.slice(1) : rows;
    this.#width = rows.reduce((most, { width }) => Math.max(most, width), 0);
  }

  read(wanted: string | undefined): Lot | LotProblem {
    if (this.#rows.length === 0) return { at: 0, message: "The file holds no readings." };
    const column = wanted === undefined ? this.#findColumn() : this.#named(wanted);
    if (typeof column !== "number") return column;
    const header = this.#header?.cell(column)?.text ?? "";
    const labels = this.#labels(column);
    const readings: LotReading[] = [];
    let unit = unitInHeader(header);
    for (const [index, row] of this.#rows.entries()) {
      const cell = row.cell(column);
      const read = cell && readReading(cell.text);
      if (!read) return unread(row, cell);
      if (read.unit !== "" && unit !== "" && read.unit !== unit) return otherUnit(cell, read, unit);
      if (read.unit !== "") unit = read.unit;
      readings.push({ label: labels[index]!, figures: read.figures });
    }
    return { readings, column: header || String(column + 1), unit };
  }

  /** The one column of numbers; what only counts the parts is none where there is another. */
  #findColumn(): number | LotProblem {
    const columns = Array.from({ length: this.#width }, (_, column) => column);
    const numeric = columns.filter((column) => this.#share(column) >= 0.5);
    const measured = numeric.filter((column) => !this.#counts(column));
    const [first, second] = measured.length > 0 ? measured : numeric;
    // Parts are counted already, and nothing is measured yet.
    const waiting = columns.find((column) => this.#isWaiting(column));
    if (measured.length === 0 && waiting !== undefined) {
      return unread(this.#rows[0]!, this.#rows[0]!.cell(waiting));
    }
    if (first === undefined) return unread(this.#rows[0]!, this.#rows[0]!.cell(0));
    if (second === undefined) return first;
    const [one, other] = [this.#nameOf(first), this.#nameOf(second)];
    const isPerhapsOne = this.#isParted && this.#header && this.#width === 2;
    const hint = isPerhapsOne
      ? " If the comma is a decimal comma, put quotes round the header."
      : "";
    return {
      at: this.#rows[0]!.cell(second)!.span.start,
      message: `Columns ${one} and ${other} both hold numbers. Say with \`--column\` which has the readings.${hint}`,
    };
  }

  #named(wanted: string): number | LotProblem {
    for (let column = 0; column < this.#width; column++) {
      const header = this.#header?.cell(column)?.text ?? "";
      if (header.toLowerCase() === wanted.toLowerCase()) return column;
    }
    const number = /^\d{1,4}$/.test(wanted) ? Number(wanted) : 0;
    if (number >= 1 && number <= this.#width) return number - 1;
    const names = Array.from({ length: this.#width }, (_, column) => this.#nameOf(column));
    return { at: 0, message: `There is no column \`${wanted}\`. There are ${names.join(", ")}.` };
  }

  #nameOf(column: number): string {
    const header = this.#header?.cell(column)?.text;
    return header ? `\`${header}\`` : String(column + 1);
  }

  /** Share of the rows that have a reading in the column. */
  #share(column: number): number {
    const read = this.#rows.filter((row) => readReading(row.text(column)));
    return read.length / this.#rows.length;
  }

  /** Whether there is a header and nothing below it. */
  #isWaiting(column: number): boolean {
    const header = this.#header?.cell(column)?.text;
    return !!header && this.#rows.every((row) => row.text(column) === "");
  }

  #counts(column: number): boolean {
    return this.#rows.length > 1 && countsUp(this.#rows.map((row) => row.text(column)));
  }

  /** The texts of the first other column that tells the parts apart; else their numbers. */
  #labels(except: number): readonly string[] {
    for (let column = 0; column < this.#width; column++) {
      if (column === except) continue;
      const texts = this.#rows.map((row) => row.text(column));
      if (!texts.includes("") && new Set(texts).size === texts.length) return texts;
    }
    return this.#rows.map((_, index) => String(index + 1));
  }
}

function unread(row: TableRow, cell: TableCell | undefined): LotProblem {
  if (!cell || cell.text === "") {
    const message = "A reading is missing here. Write it down, or take the line out.";
    return { at: cell?.span.start ?? row.span.end, message };
  }
  const shown = cell.text.length > 30 ? `${cell.text.slice(0, 29)}…` : cell.text;
  return {
    at: cell.span.start,
    message: `\`${shown}\` is no reading: write a number with a decimal point or comma, and at most one unit after it.`,
  };
}

function otherUnit({ span }: TableCell, { unit }: ReadingText, before: string): LotProblem {
  return {
    at: span.start,
    message: `This reading is in ${unit}, those before it in ${before}. Write all in one unit.`,
  };
}
