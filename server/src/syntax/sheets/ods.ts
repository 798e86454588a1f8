/** Spreadsheets of OpenDocument (OASIS ODF 1.3, ISO/IEC 26300): `.ods`. */
import { DAMAGED, Refused } from "./refused.ts";
import { columnName, type Sheet, SheetBuilder } from "./sheet.ts";
import { type Attributes, attributeOf, decodeXml, readXml, type XmlHandler } from "./xml.ts";
import { type Archive, type Budget, LOCKED, spendText } from "./zip.ts";

const CONTENT = "content.xml";
const MANIFEST = "META-INF/manifest.xml";

export function isOds(archive: Archive): boolean {
  return archive.has(MANIFEST);
}

/** All sheets. Throws Refused. */
export function readOds(archive: Archive, budget: Budget): Sheet[] {
  refuseLocked(archive, budget);
  const reader = new ContentReader();
  readXml(spendText(decodeXml(archive.unpack(CONTENT, budget)), budget), reader, DAMAGED);
  if (!reader.isSpreadsheet) {
    throw new Refused(
      "This OpenDocument file is no spreadsheet, so no table in it is read. Save the parts list as .ods, .xlsx or CSV.",
    );
  }
  return reader.sheets;
}

function refuseLocked(archive: Archive, budget: Budget): void {
  const handler: XmlHandler = {
    open(element) {
      if (element === "encryption-data") throw new Refused(LOCKED);
    },
  };
  readXml(spendText(decodeXml(archive.unpack(MANIFEST, budget)), budget), handler, DAMAGED);
}

/** Elements whose text is no content of the cell or sheet they stand in. */
const ASIDE = new Set([
  "annotation",
  "tracked-changes",
  "shapes",
  "frame",
  "custom-shape",
  "dde-links",
]);

interface OpenCell {
  readonly element: string;
  readonly attributes: Attributes;
  text: string;
  paragraphs: number;
  /** How deep in paragraphs. */
  inText: number;
}

class ContentReader implements XmlHandler {
  readonly sheets: Sheet[] = [];
  isSpreadsheet = false;
  readonly #hiddenStyles = new Set<string>();
  #style = "";
  #aside = 0;
  #builder = new SheetBuilder();
  #sheet = { name: "", isHidden: false };
  #row = { number: 0, next: 1, isHidden: false, count: 1 };
  #column = 0;
  #cell: OpenCell | undefined;

  open(element: string, attributes: Attributes): void {
    if (this.#aside > 0 || ASIDE.has(element)) {
      this.#aside++;
      return;
    }
    switch (element) {
      case "spreadsheet":
        this.isSpreadsheet = true;
        return;
      case "style":
        this.#style = attributeOf(attributes, "name") ?? "";
        return;
      case "table-properties":
        if (attributeOf(attributes, "display") === "false") this.#hiddenStyles.add(this.#style);
        return;
      case "table":
        this.#startSheet(attributes);
        return;
      case "table-row":
        this.#startRow(attributes);
        return;
      case "table-cell":
      case "covered-table-cell":
        this.#cell = { element, attributes, text: "", paragraphs: 0, inText: 0 };
        return;
      default:
        this.#openInCell(element, attributes);
    }
  }

  close(element: string): void {
    if (this.#aside > 0) {
      this.#aside--;
      return;
    }
    switch (element) {
      case "table":
        this.sheets.push({ ...this.#sheet, ...pick(this.#builder) });
        return;
      case "table-row":
        this.#builder.endRow(this.#row.number, this.#row.isHidden, this.#row.count);
        return;
      case "table-cell":
      case "covered-table-cell":
        this.#endCell();
        return;
      case "p":
        if (this.#cell) this.#cell.inText--;
    }
  }

  text(part: string): void {
    // Line ends inside a paragraph are only the file's layout.
    if (this.#cell?.inText && this.#aside === 0) this.#cell.text += part.replace(/\s+/g, " ");
  }

  #startSheet(attributes: Attributes): void {
    this.#builder = new SheetBuilder();
    const style = attributeOf(attributes, "style-name") ?? "";
    this.#sheet = {
      name: attributeOf(attributes, "name") ?? "",
      isHidden: this.#hiddenStyles.has(style),
    };
    this.#row.next = 1;
  }

  #startRow(attributes: Attributes): void {
    const count = repeated(attributes, "number-rows-repeated");
    const isHidden = (attributeOf(attributes, "visibility") ?? "visible") !== "visible";
    this.#row = { number: this.#row.next, next: this.#row.next + count, isHidden, count };
    this.#column = 0;
  }

  #openInCell(element: string, attributes: Attributes): void {
    const cell = this.#cell;
    if (!cell) return;
    if (element === "p") {
      if (cell.paragraphs++ > 0) cell.text += "\n";
      cell.inText++;
    } else if (element === "s") {
      cell.text += " ".repeat(Math.min(100, repeated(attributes, "c")));
    } else if (element === "tab") cell.text += " ";
    else if (element === "line-break") cell.text += "\n";
  }

  #endCell(): void {
    const cell = this.#cell;
    if (!cell) return;
    this.#cell = undefined;
    const { attributes } = cell;
    const count = repeated(attributes, "number-columns-repeated");
    // What lies under a merged cell is not seen.
    const text = cell.element === "table-cell" ? shown(attributes, cell.text) : "";
    if (text === "") {
      if (isUncomputed(attributes)) {
        this.#builder.uncomputed.push(`${columnName(this.#column)}${this.#row.number}`);
      }
    } else {
      // Beyond the widest list the builder takes nothing.
      for (let i = 0; i < Math.min(count, 1000); i++) this.#builder.set(this.#column + i, text);
    }
    this.#column += count;
  }
}

function pick({
  rows,
  uncomputed,
  isCut,
}: SheetBuilder): Pick<Sheet, "rows" | "uncomputed" | "isCut"> {
  return { rows, uncomputed, isCut };
}

function repeated(attributes: Attributes, name: string): number {
  const count = Number(attributeOf(attributes, name) ?? 1);
  return Number.isInteger(count) && count > 0 ? count : 1;
}

/** The text as shown; of plain numbers the stored value, which is not rounded and has a point. */
function shown(attributes: Attributes, text: string): string {
  const trimmed = text.trim();
  const value = attributeOf(attributes, "value");
  const isNumber = attributeOf(attributes, "value-type") === "float" && value !== undefined;
  if (!isNumber) return trimmed;
  // `0603` and `4,7 mm` say more than their numbers.
  return trimmed === "" || /^[-+]?(?:0|[1-9]['\d\s.,]*|0?[.,]\d*)(?:E[-+]?\d+)?$/i.test(trimmed)
    ? value
    : trimmed;
}

function isUncomputed(attributes: Attributes): boolean {
  return (
    attributeOf(attributes, "formula") !== undefined &&
    attributeOf(attributes, "value-type") === undefined
  );
}
