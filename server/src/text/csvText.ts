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
  // A spreadsheet of a country of decimal commas may part cells at semicolons, whatever the quotes.
  const text = cell.includes(";")
    ? cell
        .split(/(?<=;)/)
        .map(neutral)
        .join("")
    : neutral(cell);
  return /[",;\t\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** An apostrophe makes a text of what a spreadsheet would compute. */
function neutral(text: string): string {
  return FORMULA.test(text) && !AMOUNT.test(text) ? `'${text}` : text;
}

/**
 * How cells begin that spreadsheets compute, also behind blanks and in full-width signs of East Asian
 * keyboards. Source: OWASP, CSV Injection.
 */
const FORMULA = /^[\s\uFEFF]*[=+\-@\uFF1D\uFF0B\uFF0D\uFF20]|^[\t\r\n]/;

/** A signed amount such as `-5 V` or `+0,5 %`: one number and at most a unit compute nothing. */
const AMOUNT = /^[+-]\d{1,9}(?:[.,]\d{1,9})?(?: ?[%°µμΩ]?[A-Za-zΩ]{0,3})?;?$/;
