/** Which character parts the columns of a file of readings, told by all its lines and its header. */
import { readCsv } from "../../syntax/csv.ts";
import type { TableRow } from "../../syntax/tableRow.ts";

/** A number on its own, perhaps with a decimal comma and a unit. */
const LONE = /^[+\-\u2212]?\d+(?:,\d+)?[^\d,]*$/u;
/** A sign or a nought after the comma is none of two columns of labels and whole numbers. */
const SURELY_DECIMAL = /^[+\-\u2212]|,0\d/u;

/**
 * A tab for lines of one column, where a comma is the decimal comma. Undefined where a comma could
 * be that as well as part two columns: `2,31` is one reading, or the reading 31 of part 2.
 */
export function readingsDelimiter(text: string): "\t" | ";" | "," | undefined {
  const rows = readCsv(text, ",").rows.filter((row) => !isBlank(row));
  const header = rows[0] && isHeader(rows[0]) ? rows[0] : undefined;
  const body = header && rows.length > 1 ? rows.slice(1) : rows;
  const lines = body.map(({ span }) => text.slice(span.start, span.end).trim());
  if (lines.some((line) => line.includes("\t"))) return "\t";
  if (lines.some((line) => line.includes(";"))) return ";";
  const isOneNumber = lines.every((line) => LONE.test(line));
  if (!isOneNumber || !lines.some((line) => line.includes(","))) return ",";
  // A header has as many cells as there are columns.
  if (header) return header.width === 1 ? "\t" : header.width === 2 ? "," : undefined;
  return withoutHeader(lines);
}

function withoutHeader(lines: readonly string[]): "\t" | "," | undefined {
  // Of two columns each line would have both.
  if (lines.some((line) => !line.includes(",") || SURELY_DECIMAL.test(line))) return "\t";
  const before = lines.map((line) => line.slice(0, line.indexOf(",")));
  if (countsUp(before)) return ",";
  // What stands before the comma labels no parts where it repeats.
  return new Set(before).size < before.length ? "\t" : undefined;
}

/** Whether the texts are 0, 1, 2 … or 1, 2, 3 …, which only number the parts. */
export function countsUp(texts: readonly string[]): boolean {
  const first = Number(texts[0]);
  return (
    (first === 0 || first === 1) && texts.every((text, index) => text === String(first + index))
  );
}

export function isBlank(row: TableRow): boolean {
  for (let column = 0; column < row.width; column++) {
    if (row.text(column)) return false;
  }
  return true;
}

/** No cell of a header begins as a number does. */
export function isHeader(row: TableRow): boolean {
  for (let column = 0; column < row.width; column++) {
    if (/^[+\-\u2212.,]?\d/.test(row.text(column))) return false;
  }
  return true;
}
