/** The rows of one worksheet (ECMA-376 Part 1, 18.3.1): values as stored, formulas by their results. */
import { showNumber } from "./numberFormat.ts";
import { columnName, columnOf, type Sheet, SheetBuilder } from "./sheet.ts";
import { decodeEscapes, isTrue, type ReadPart, RichText } from "./xlsxText.ts";
import type { Attributes } from "./xml.ts";

export interface SheetContext {
  /** Texts that cells refer to by number. */
  readonly texts: readonly string[];
  /** Number formats that cells refer to. */
  readonly formats: readonly (string | undefined)[];
  /** Dates count from 1904. */
  readonly is1904: boolean;
}

export function readWorksheet(
  part: string,
  read: ReadPart,
  context: SheetContext,
): Pick<Sheet, "rows" | "uncomputed" | "isCut"> {
  const builder = new SheetBuilder();
  const cell = new CellReader(context);
  let row = 0;
  let isHidden = false;
  let column = -1;
  read(part, {
    open(element, attributes) {
      switch (element) {
        case "row":
          row = Number(attributes.r) || row + 1;
          isHidden = isTrue(attributes.hidden);
          column = -1;
          return;
        case "c":
          column = columnOf(attributes.r ?? "") ?? column + 1;
          cell.start(attributes);
          return;
        default:
          cell.open(element);
      }
    },
    close(element) {
      switch (element) {
        case "row":
          builder.endRow(row, isHidden);
          return;
        case "c":
          builder.set(column, cell.shown());
          if (cell.isUncomputed) builder.uncomputed.push(`${columnName(column)}${row}`);
          return;
        default:
          cell.close(element);
      }
    },
    text: (text) => cell.add(text),
  });
  return builder;
}

/** Gathers what stands in one cell after the other. */
class CellReader {
  readonly #context: SheetContext;
  readonly #inline = new RichText();
  #type = "";
  #style = "";
  #value = "";
  #isValue = false;
  #hasFormula = false;

  constructor(context: SheetContext) {
    this.#context = context;
  }

  start(attributes: Attributes): void {
    this.#type = attributes.t ?? "n";
    this.#style = attributes.s ?? "";
    this.#value = "";
    this.#hasFormula = false;
    this.#inline.clear();
  }

  open(element: string): void {
    if (element === "v") this.#isValue = true;
    else if (element === "f") this.#hasFormula = true;
    else this.#inline.open(element);
  }

  close(element: string): void {
    if (element === "v") this.#isValue = false;
    else this.#inline.close(element);
  }

  add(text: string): void {
    if (this.#isValue) this.#value += text;
    else this.#inline.add(text);
  }

  /** A formula whose result the program that wrote the file did not store. */
  get isUncomputed(): boolean {
    return this.#hasFormula && this.#value === "" && this.#type !== "str";
  }

  shown(): string {
    const value = this.#value;
    switch (this.#type) {
      case "s":
        return this.#context.texts[Number(value)] ?? "";
      case "inlineStr":
        return this.#inline.text;
      case "b":
        return value === "" ? "" : isTrue(value) ? "TRUE" : "FALSE";
      case "n": {
        const number = value === "" ? Number.NaN : Number(value);
        const { formats, is1904 } = this.#context;
        return Number.isFinite(number)
          ? showNumber(number, formats[Number(this.#style)], is1904)
          : value;
      }
      default:
        // Texts of formulas, errors such as #REF!, dates of ISO 8601.
        return decodeEscapes(value);
    }
  }
}
