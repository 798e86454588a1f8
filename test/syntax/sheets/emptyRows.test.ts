/** Rows and cells without content may go before a worksheet is parsed: what is read stays the same. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { withoutEmptyRows } from "../../../server/src/syntax/sheets/emptyRows.ts";
import { readWorksheet } from "../../../server/src/syntax/sheets/xlsxSheet.ts";
import { readXml } from "../../../server/src/syntax/sheets/xml.ts";

function rowsOf(portions: Iterable<string>) {
  const { rows, uncomputed } = readWorksheet(
    "sheet",
    (_, handler) => readXml(portions, handler, "broken"),
    { texts: [], formats: [], is1904: false },
  );
  return { rows, uncomputed };
}

/** A cell in one of the forms that programs write; `at` is its name. */
const cell = (at: string) =>
  fc.constantFrom(
    `<c r="${at}" s="1"/>`,
    `<c s="1"/>`,
    `<c r="${at}" s="1"></c>`,
    `<c r="${at}"><v>7</v></c>`,
    `<c><v>8</v></c>`,
    `<c r="${at}"><f>A1</f></c>`,
  );

const row = (number: number) =>
  fc
    .record({
      start: fc.constantFrom(
        `<row r="${number}"`,
        "<row",
        `<row r="${number}" hidden="1" ht="15"`,
        `<row spans="1:3" r="${number}"`,
      ),
      cells: fc.oneof(
        fc.constant([]),
        fc.tuple(...["A", "B", "D"].map((one) => cell(one + number))),
      ),
      blank: fc.constantFrom("", "\n  "),
    })
    .map(({ start, cells, blank }) =>
      cells.length === 0 ? `${blank}${start}/>` : `${blank}${start}>${cells.join("")}</row>`,
    );

const sheet = fc
  .tuple(...Array.from({ length: 12 }, (_, i) => row(i * 3 + 1)))
  .map((rows) => `<worksheet><sheetData>${rows.join("")}</sheetData></worksheet>`);

test("what is read stays the same, whatever rows a sheet has and wherever its text is cut into portions", () => {
  fc.assert(
    fc.property(sheet, fc.integer({ min: 1, max: 300 }), (text, size) => {
      const portions: string[] = [];
      for (let at = 0; at < text.length; at += size) portions.push(text.slice(at, at + size));
      expect(rowsOf(withoutEmptyRows(portions))).toEqual(rowsOf([text]));
    }),
    { numRuns: 300 },
  );
});

test("formatted rows without content go, and those that tell where a nameless one stands stay", () => {
  const strip = (...portions: string[]) => [...withoutEmptyRows(portions)].join("");
  const formatted = `<row r="2" s="1"><c r="A2" s="1"/><c r="B2" s="1"/></row><row r="3" s="1"/>`;
  const kept = `<row r="1"><c r="A1"><v>1</v></c></row>`;
  expect(strip(`<sheetData>${kept}${formatted}</sheetData>`)).toBe(
    `<sheetData>${kept}</sheetData>`,
  );
  expect(strip(kept + formatted, `<row r="9"/>`, kept)).toBe(kept + kept);
  expect(strip(`${formatted}<row><c><v>1</v></c></row>`)).toBe(
    `<row r="3" s="1"/><row><c><v>1</v></c></row>`,
  );
});

test("a row that never ends is passed on, not kept", () => {
  let most = 0;
  const part = `<row r="1" ${"x".repeat(50_000)}`;
  for (const one of withoutEmptyRows([
    part,
    ..."yyyyyyyyyy".split("").map((y) => y.repeat(50_000)),
  ])) {
    most = Math.max(most, one.length);
  }
  expect(most).toBeLessThan(200_000);
});
