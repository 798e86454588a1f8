/** Writes CSV after RFC 4180, safe to open in a spreadsheet. */

/** A number stays one; a text is never taken for a formula. */
export type CsvCell = string | number;

/** Lines ending in CRLF. */
export function csvText(rows: readonly (readonly CsvCell[])[]): string {
  return rows.map((cells) => `${cells.map(csvCell).join(",")}\r\n`).join("");
}

/**
 * A file for spreadsheets, which read one without a byte-order mark as their country's 8-bit code and
 * cannot find words parted by no-break spaces.
 */
export function csvFile(rows: readonly (readonly CsvCell[])[]): string {
  return `\uFEFF${csvText(rows).replace(/[\u00a0\u202f]/g, " ")}`;
}

function csvCell(cell: CsvCell): string {
  if (typeof cell === "number") return String(cell);
  const text = FORMULA.test(cell) ? `'${cell}` : cell;
  return /[",;\t\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/**
 * How cells begin that spreadsheets compute, also behind blanks and in full-width signs of East Asian
 * keyboards; an apostrophe before them makes them text. Source: OWASP, CSV Injection.
 */
const FORMULA = /^[\s\uFEFF]*[=+\-@\uFF1D\uFF0B\uFF0D\uFF20]|^[\t\r\n]/;
