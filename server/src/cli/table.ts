/** Rows of cells as text in columns, as CSV or as JSON. */
import { type CsvCell, csvText } from "../text/csvText.ts";
import { printable, type Terminal } from "./terminal.ts";

export type CellValue = string | number | boolean | null | readonly string[];

export interface Column<Row> {
  /** Field name in JSON, and header in CSV. */
  readonly field: keyof Row & string;
  /** Header in text. */
  readonly title: string;
  /** Left out of the text, where space is short. */
  readonly hidden?: boolean;
  /** What text shows in place of the field. */
  readonly shown?: (row: Row) => CellValue;
}

export type TableFormat = "text" | "csv" | "json";

/** Cells of a text table are cut to this width, but for those at the end of their line. */
const WIDEST = 60;

export function formatTable<Row extends Readonly<Record<string, CellValue>>>(
  rows: readonly Row[],
  columns: readonly Column<Row>[],
  format: TableFormat,
  paint: Terminal["paint"],
): string {
  if (format === "json") {
    const objects = rows.map((row) =>
      Object.fromEntries(columns.map(({ field }) => [field, row[field]!])),
    );
    return `${JSON.stringify(objects, undefined, 2)}\n`;
  }
  if (format === "csv") return csv(rows, columns);
  return text(
    rows,
    columns.filter(({ hidden }) => !hidden),
    paint,
  );
}

function csv<Row extends Readonly<Record<string, CellValue>>>(
  rows: readonly Row[],
  columns: readonly Column<Row>[],
): string {
  const header = columns.map(({ field }): CsvCell => field);
  return csvText([header, ...rows.map((row) => columns.map(({ field }) => csvCell(row[field]!)))]);
}

function csvCell(value: CellValue): CsvCell {
  return typeof value === "number" ? value : cellText(value, ",");
}

function text<Row extends Readonly<Record<string, CellValue>>>(
  rows: readonly Row[],
  columns: readonly Column<Row>[],
  paint: Terminal["paint"],
): string {
  const table = rows.map((row) =>
    columns.map(({ field, shown }, i) => {
      const value = shown ? shown(row) : row[field]!;
      const cell = printable(cellText(value, ", ").replace(/\s+/g, " ").trim());
      return i < columns.length - 1 ? shorten(cell) : cell;
    }),
  );
  const titles = columns.map(({ title }) => title);
  const widths = titles.map((title, i) =>
    table.reduce((width, cells) => Math.max(width, cells[i]!.length), title.length),
  );
  const line = (cells: readonly string[]) =>
    cells
      .map((cell, i) => cell.padEnd(widths[i]!))
      .join("  ")
      .trimEnd();
  const body = table.map((cells) => `${line(cells)}\n`);
  return `${paint("bold", line(titles))}\n${body.join("")}`;
}

function shorten(cell: string): string {
  return cell.length > WIDEST ? `${cell.slice(0, WIDEST - 1)}…` : cell;
}

function cellText(value: CellValue, separator: string): string {
  if (value === null) return "";
  if (typeof value === "boolean") return value ? "yes" : "no";
  return typeof value === "object" ? value.join(separator) : String(value);
}
