/** Workbooks as programs write them that the fixtures do not come from. */
import { strToU8, zipSync } from "fflate";
import { expect, test } from "vitest";
import { loadPartsList } from "../../../server/src/model/list/load.ts";
import type { PartsList } from "../../../server/src/model/list/partsList.ts";
import { decodeXml } from "../../../server/src/syntax/sheets/xml.ts";
import { lineOf, lines, utf16 } from "../../list/reading.ts";
import { ods, xlsx, zip64 } from "./packing.ts";

function load(bytes: Uint8Array, sheet?: string): Promise<PartsList> {
  return loadPartsList("file:///kit/foreign", bytes, sheet === undefined ? {} : { sheet });
}

async function messages(bytes: Uint8Array, sheet?: string): Promise<string[]> {
  return (await load(bytes, sheet)).problems.map(({ message }) => message);
}

const text = (text: string) => `<c t="inlineStr"><is><t>${text}</t></is></c>`;
const shared = (index: number) => `<c t="s"><v>${index}</v></c>`;
const row = (...cells: readonly string[]) => `<row>${cells.join("")}</row>`;
const LIST = row(text("Ref"), text("Value")) + row(text("R1"), text("4k7"));

const table = (rows: string, name = "Kit") =>
  `<table:table table:name="${name}">${rows}</table:table>`;
const odsRow = (...cells: readonly string[]) =>
  `<table:table-row>${cells.map((cell) => `<table:table-cell>${cell}</table:table-cell>`).join("")}</table:table-row>`;
const p = (text: string) => `<text:p>${text}</text:p>`;

test("an archive with the figures of ZIP64 is read, and refused where they lead nowhere", async () => {
  const bytes = zip64(xlsx(LIST));
  expect(lines(await load(bytes))).toEqual(["R1"]);
  const astray = bytes.slice();
  new DataView(astray.buffer).setBigUint64(astray.length - 22 - 12, 2n ** 60n, true);
  expect(await messages(astray)).toEqual([expect.stringContaining("damaged or cut off")]);
});

test("an archive packed in another way, or whose packed bytes end too soon, is refused", async () => {
  const whole = zipSync({
    "_rels/.rels": strToU8("<a/>".repeat(99)),
    "[Content_Types].xml": strToU8("<a/>"),
  });
  const directory = new DataView(whole.buffer).getUint32(whole.length - 6, true);
  const strange = whole.slice();
  new DataView(strange.buffer).setUint16(directory + 10, 12, true);
  expect(await messages(strange)).toEqual([
    "The file is packed in a way that is not known. Save it again.",
  ]);
  const short = whole.slice();
  new DataView(short.buffer).setUint32(directory + 20, 3, true);
  expect(await messages(short)).toEqual([expect.stringContaining("damaged or cut off")]);
});

test("sheets that hold a diagram are passed over", async () => {
  const before = `<sheet name="Prices" sheetId="2" r:id="r3"/>`;
  expect(lines(await load(xlsx(LIST, { before })))).toEqual(["R1"]);
});

// ECMA-376 Part 1, 18.4.6 (rPh: how a text is read aloud) and 22.9.2.19 (characters as _xHHHH_).
test("reading aids are left out, and characters that XML cannot hold are decoded", async () => {
  const texts = [
    `抵抗</t><rPh sb="0" eb="2"><t>テイコウ</t></rPh><t>`,
    "red_x000A_green_x005F_x000A_",
  ];
  const rows =
    row(text("Ref"), text("Description"), text("Notes"), text("Value")) +
    row(text("R1"), shared(0), shared(1), `<c t="str"><f>A1</f><v>1k_x000D_</v></c>`);
  const { cells } = lineOf(await load(xlsx(rows, { texts })), "R1");
  expect(cells.description?.text).toBe("抵抗");
  expect(cells.notes?.text).toBe("red\ngreen_x000A_");
  expect(cells.value?.text).toBe("1k");
});

test("truth values of cells say which parts are left out", async () => {
  const truth = (value: string) => `<c t="b"><v>${value}</v></c>`;
  const rows =
    row(text("Ref"), text("Value"), text("DNP")) +
    row(text("R1"), text("1k"), truth("1")) +
    row(text("R2"), text("1k"), truth("0"));
  const list = await load(xlsx(rows));
  expect(list.lines.map(({ fitted }) => fitted)).toEqual([false, true]);
});

// OASIS ODF 1.3 Part 3, 6.1.2 to 6.1.5.
test("spaces, tabs and line breaks are elements in OpenDocument", async () => {
  const rows =
    odsRow(p("Ref"), p("Notes")) +
    odsRow(p("R1"), p(`two<text:s text:c="2"/>spaces<text:tab/>a tab<text:line-break/>a line`));
  const { cells } = lineOf(await load(ods(table(rows))), "R1");
  expect(cells.notes?.text).toBe("two  spaces a tab\na line");
});

test("formulas that nothing has computed are told by their cells in OpenDocument, too", async () => {
  const formula = `<table:table-row><table:table-cell>${p("R1")}</table:table-cell><table:table-cell table:formula="of:=1+1"/></table:table-row>`;
  expect(await messages(ods(table(odsRow(p("Ref"), p("Qty")) + formula)))).toEqual([
    expect.stringContaining("The formulas in B2 have no stored results"),
  ]);
});

test("a workbook without a list says which sheets were looked at", async () => {
  const names = Array.from({ length: 10 }, (_, i) => `S${i + 1}`);
  const sheets = names.map((name) => table(odsRow(p("Price list")), name)).join("");
  expect(await messages(ods(sheets))).toEqual([
    expect.stringMatching(
      /^None of the sheets `S1`, .*`S8` and 2 more has a column of designators/,
    ),
  ]);
  const header = odsRow(p("Ref"), p("Value"), p("Qty"));
  expect(await messages(ods(table(header)))).toEqual([expect.stringMatching(/^Sheet `Kit`: /)]);
});

test("a document of XML is read in either order of UTF-16", () => {
  const little = utf16("<a>µ</a>");
  const big = little.map((_, i) => little[i ^ 1]!);
  for (const bytes of [little, big]) expect([...decodeXml([bytes])].join("")).toBe("<a>µ</a>");
});
