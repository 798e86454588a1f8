/** Numbers as cells show them. Codes after ECMA-376 Part 1, 18.8.30 and 18.8.31. */
import { expect, test } from "vitest";
import { builtInFormat, showNumber } from "../../../server/src/syntax/sheets/numberFormat.ts";
import { columnName, columnOf } from "../../../server/src/syntax/sheets/sheet.ts";

test.each([
  [0.05, "0%", "5%"],
  [0.0025, "0.00%", "0.25%"],
  [603, "0000", "0603"],
  [603, "[$-409]0000", "0603"],
  [12, '"R"0', "R12"],
  [7, '"R"000', "R007"],
  [4.7, '0.0" mm"', "4.7 mm"],
  [4.7, '0.0\\ "µH"', "4.7 µH"],
  [100, 'General"n"', "100n"],
  [4700, "#,##0", "4700"],
  [4700, "#,##0.00_);[Red](#,##0.00)", "4700"],
  [0.25, "# ?/?", "0.25"],
  [-5, "0000", "-5"],
  [2.5, "0000", "2.5"],
  [0.30000000000000004, undefined, "0.3"],
  [1e-7, undefined, "1e-7"],
  [680, undefined, "680"],
])("%d in the format %j is %s", (value, format, shown) => {
  expect(showNumber(value, format)).toBe(shown);
});

// Serial numbers of days: ECMA-376 Part 1, 18.17.4.1 (1900-01-01 is 1, 9999-12-31 is 2958465) and
// 18.17.4.2 (1904-01-01 is 0).
test.each([
  [1, false, "1900-01-01"],
  [59, false, "1900-02-28"],
  [61, false, "1900-03-01"],
  [25_569, false, "1970-01-01"],
  [45_383.75, false, "2024-04-01"],
  [45_351, false, "2024-02-29"],
  [2_958_465, false, "9999-12-31"],
  [0, true, "1904-01-01"],
  [2_957_003, true, "9999-12-31"],
])("day %d of the count (since 1904: %s) is %s", (serial, is1904, shown) => {
  for (const id of [14, 15, 16, 17, 22]) {
    expect(showNumber(serial, builtInFormat(id), is1904)).toBe(shown);
  }
  expect(showNumber(serial, "[$-407]TT.MM.YYYY", is1904)).toBe(shown);
});

test("columns are named as spreadsheets name them", () => {
  for (const [column, name] of [
    [0, "A"],
    [25, "Z"],
    [26, "AA"],
    [701, "ZZ"],
    [702, "AAA"],
    [16_383, "XFD"],
  ] as const) {
    expect(columnName(column)).toBe(name);
    expect(columnOf(`${name}12`)).toBe(column);
  }
  expect(columnOf("12")).toBeUndefined();
  expect(columnOf("")).toBeUndefined();
});
