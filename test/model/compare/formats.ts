/** Writes a parts list as files of other kinds: Markdown, workbook, XML netlist, columns of blanks. */
import { xlsx } from "../../syntax/sheets/packing.ts";
import { KEPT, type Row } from "./reexport.ts";

/** A file's name and what it holds. */
export type Written = readonly [name: string, bytes: Uint8Array];

const NAMES: Readonly<Record<string, string>> = {
  value: "Value",
  tolerance: "Tolerance",
  power: "Power",
  voltage: "Voltage",
  current: "Current",
  package: "Footprint",
  height: "Height",
  description: "Description",
  "part number": "MPN",
};

/** The list in each kind of file that can hold it. */
export function otherFormats(rows: readonly Row[]): Written[] {
  const table = tableOf(rows);
  const encode = (text: string) => new TextEncoder().encode(text);
  const found: Written[] = [
    ["again.md", encode(markdown(table))],
    ["again.xlsx", workbook(table)],
  ];
  // Netlists know no hardware; columns of blanks no cells of several lines or with gaps, nor hardware
  // without a quantity.
  if (rows.every(({ designator }) => designator !== "")) {
    found.push(["again.xml", encode(netlist(table))]);
  }
  const isCounted = rows.every(({ designator, quantity }) => designator !== "" || quantity !== "");
  if (isCounted && table.every((cells) => cells.every((cell) => !/[\t\r\n|]| {2}/.test(cell)))) {
    found.push(["again.txt", encode(columns(table))]);
  }
  return found;
}

function tableOf(rows: readonly Row[]): string[][] {
  const meanings = KEPT.filter((meaning) => rows.some(({ cells }) => cells[meaning]));
  const header = ["Ref", "Qty", ...meanings.map((one) => NAMES[one]!), "DNP", "Optional"];
  const lines = rows.map((row) => [
    row.designator,
    row.quantity,
    ...meanings.map((meaning) => row.cells[meaning] ?? ""),
    row.fitted ? "" : "DNP",
    row.optional ? "yes" : "",
  ]);
  return [header, ...lines];
}

function markdown([header, ...rows]: readonly (readonly string[])[]): string {
  const escaped = (cell: string) =>
    cell.replace(/[\\`*_{}[\]<>()#+\-.!|~&:@]/g, "\\$&").replace(/\s*\n\s*/g, "<br>");
  const line = (cells: readonly string[]) => `| ${cells.map(escaped).join(" | ")} |`;
  const rule = `|${header!.map(() => "---|").join("")}`;
  return [line(header!), rule, ...rows.map(line)].join("\n");
}

function escapeXml(text: string): string {
  return text.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);
}

/** A workbook whose sheet `Kit` holds the cells as texts. */
export function workbook(table: readonly (readonly string[])[]): Uint8Array {
  const cell = (text: string) =>
    `<c t="inlineStr"><is><t xml:space="preserve">${escapeXml(text)}</t></is></c>`;
  return xlsx(table.map((cells) => `<row>${cells.map(cell).join("")}</row>`).join(""));
}

function netlist([header, ...rows]: readonly (readonly string[])[]): string {
  const components = rows.map((cells) => {
    const fields = cells
      .map((cell, i) => `<field name="${header![i]}">${escapeXml(cell)}</field>`)
      .slice(1);
    return `<comp ref="${escapeXml(cells[0]!)}"><fields>${fields.join("")}</fields></comp>`;
  });
  return `<export version="E"><components>${components.join("\n")}</components></export>`;
}

function columns(table: readonly (readonly string[])[]): string {
  const widths = table[0]!.map((_, i) => Math.max(...table.map((cells) => cells[i]!.length)) + 2);
  const line = (cells: readonly string[]) =>
    cells
      .map((cell, i) => cell.padEnd(widths[i]!))
      .join("")
      .trimEnd();
  const rule = widths.map((width) => "-".repeat(width - 2)).join("  ");
  return [line(table[0]!), rule, ...table.slice(1).map(line)].join("\n");
}
