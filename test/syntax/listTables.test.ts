import { describe, expect, test } from "vitest";
import { readMarkdownTables } from "../../server/src/syntax/listTables.ts";

/** The row below the header of a table with these cells, and the text of the file. */
function rowOf(...cells: string[]) {
  const line = (texts: readonly string[]) => `| ${texts.join(" | ")} |\n`;
  const text = line(cells.map(() => "a")) + line(cells.map(() => "-")) + line(cells);
  return { text, row: readMarkdownTables(text)[0]![1]! };
}

describe("A cell is read as it is shown, each character at its place", () => {
  test.each([
    ["**R1**, R2", "R1, R2"],
    ["`R1`, R2", "R1, R2"],
    ["R1\\, R2", "R1, R2"],
    ["R1 &amp; R2", "R1 & R2"],
    ["![R1](r1.png) R2", "R1 R2"],
  ])("%s", (written, shown) => {
    const { text, row } = rowOf("x", written, "y");
    expect(row.text(1)).toBe(shown);
    const at = shown.indexOf("R2");
    const { start, end } = row.place(1, at, at + 2);
    expect(text.slice(start, end)).toBe("R2");
  });

  test("code that the source writes otherwise stands where it begins", () => {
    // GFM, tables extension: a bar in code is escaped, and shown without the backslash.
    const { text, row } = rowOf("`R1 \\| R2`");
    expect(row.text(0)).toBe("R1 | R2");
    expect(row.place(0, 5, 7).start).toBe(text.indexOf("`R1"));
  });
});
