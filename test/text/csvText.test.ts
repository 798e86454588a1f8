/** CSV that spreadsheets open without computing anything. */
import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { csvFile, csvText } from "../../server/src/text/csvText.ts";

// OWASP, CSV Injection: cells that begin with these are formulas to a spreadsheet.
test.each([
  "=1+1",
  "+A1",
  "-1+2",
  "-2+3+cmd|' /C calc'!A0",
  "+5 V-A1",
  "-5 V(1)",
  "@SUM(A1)",
  "\t=1",
  "\r=1",
  "  =1",
  "\uFF1D1+1",
  "\uFEFF=1",
])("%j is neutralised", (cell) => {
  const [[read]] = parse(csvText([[cell, "x"]]), { relax_quotes: false }) as [[string]];
  expect(read).toBe(`'${cell}`);
});

test.each(["-5 V", "+12 V", "-5", "+0,5 %", "-40 °C", "-3 dB", "+1.5 kΩ"])(
  "the amount %j stays as it is",
  (cell) => {
    expect(parse(csvText([[cell, "x"]]))).toEqual([[cell, "x"]]);
  },
);

// A comma file opened as one of semicolons: the quotes do not hold the cell together.
test("a formula behind a semicolon is neutralised, an amount there is not", () => {
  expect(csvText([["x", "a;=1+1;-5 V"]])).toBe('x,"a;\'=1+1;-5 V"\r\n');
});

test("numbers stay numbers, and texts that compute nothing stay as they are", () => {
  expect(csvText([[-5, 4.7, "4k7", "R1–R4", "a=b", "10-20"]])).toBe(
    "-5,4.7,4k7,R1–R4,a=b,10-20\r\n",
  );
});

describe("an independent reader", () => {
  test("gets back every cell, but for the apostrophe of what would compute", () => {
    const cell = fc.string({ unit: "grapheme", maxLength: 12 });
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell, cell), { minLength: 1 }), (rows) => {
        const read = parse(csvText([["a", "b", "c"], ...rows]), { skip_empty_lines: false });
        const plain = (read as string[][]).map((cells) =>
          cells.map((one) => one.replace(/(^|;)'/g, "$1")),
        );
        expect(plain.slice(1)).toEqual(
          rows.map((row) => row.map((one) => one.replace(/(^|;)'/g, "$1"))),
        );
      }),
    );
  });

  test("sees no cell that begins as a formula", () => {
    const cell = fc.array(
      fc.constantFrom("=", "+", "-", "@", " ", "\t", "\r", "\n", '"', ",", "x"),
    );
    fc.assert(
      fc.property(cell, (signs) => {
        const [[read]] = parse(csvText([[signs.join(""), "end"]])) as [[string]];
        expect(read).not.toMatch(/^[=+\-@\t\r\n]/);
      }),
    );
  });
});

test("files begin with a byte-order mark, so that spreadsheets read µ and Ω", () => {
  expect(csvFile([["µ"]])).toBe("\uFEFFµ\r\n");
});
