/** Parts lists in columns of blanks: read where the columns are certain, else one finding. */
import { describe, expect, test } from "vitest";
import { cellsOf } from "../../server/src/model/list/partsList.ts";
import { columns, findings, lineOf, lines, readList } from "./reading.ts";

const quantities = (text: string) => readList(text).lines.map(({ quantity }) => quantity);

describe("a list in columns of blanks", () => {
  test("is read below its header, titles and empty lines aside", () => {
    const text =
      "Partlist of the Wren metronome\r\n\r\nPrinted 1 May\r\n\r\n" +
      "Part  Value       Package    Position (mm)  Turn\r\n\r\n" +
      "R1    4k7         R_0207     (12.5 3)       R0\r\n" +
      "U1    timer chip  DIP-8      (3 4)          R90\r\n" +
      "J1                PINS_2     (100.25 70.5)  R0\r\n";
    const list = readList(text, {}, "parts.txt");
    expect(list.format).toBe("fixed width");
    expect(columns(list)).toEqual({ designator: "Part", value: "Value", package: "Package" });
    expect(list.columns.map(({ header }) => header)).toContain("Position (mm)");
    expect(lines(list)).toEqual(["R1", "U1", "J1"]);
    expect(list.lines.map(({ row }) => row)).toEqual([7, 8, 9]);
    expect(lineOf(list, "R1").value).toEqual({ amount: 4700, unit: "Ω" });
    expect(lineOf(list, "U1").cells.value?.text).toBe("timer chip");
    expect(lineOf(list, "J1").cells.value?.text).toBe("");
    expect(findings(list)).toEqual([]);
  });

  test("has cells and designators at their places in the file", () => {
    const text = "Qty  Parts       Value\n  2  R1, R2      10k\n 12  C1-C12      100n\n";
    const list = readList(text);
    for (const line of list.lines) {
      const { designators } = line;
      for (const { text: shown, span } of cellsOf(line)) {
        expect(text.slice(span.start, span.end)).toBe(shown);
      }
      for (const { span } of designators) {
        expect(text.slice(span.start, span.end)).toMatch(/^(?:R\d|C1-C12)$/);
      }
    }
    expect(list.lines.map(({ quantity }) => quantity)).toEqual([2, 12]);
  });

  test("may have numbers that stand flush right, wider than their name", () => {
    const text =
      "Ref        Qty  Value\nR1–R120    120  10k\nC1           1  1n\nW1        1000  wire\n";
    expect(quantities(text)).toEqual([120, 1, 1000]);
  });

  test("may have names parted by one blank", () => {
    const list = readList("Part Value  Package\nR1   1k     0207\nC12  10n    RM5\n");
    expect(columns(list)).toEqual({ designator: "Part", value: "Value", package: "Package" });
    expect(lineOf(list, "C12").value).toEqual({ amount: 10e-9, unit: "F" });
  });

  test("may draw its columns by a rule, wrap its lists and end in a footer", () => {
    const rule = "------------ --- ------------------";
    const text = `Bill of Materials   wren.pcb\n${"=".repeat(35)}\n\nRefDes       Qty Value\n${rule}\n\nC1           1   100uF x 10V\n\nR1, R2, R3,\nR4           4   4K7 film\n\n${"=".repeat(35)}\n1-May-24  20:08              Page 1\n${"=".repeat(35)}\n`;
    const list = readList(text, {}, "parts.txt");
    expect(lines(list)).toEqual(["C1", "R1 R2 R3 R4"]);
    expect(list.lines.map(({ quantity, row }) => [quantity, row])).toEqual([
      [1, 7],
      [4, 9],
    ]);
    expect(findings(list)).toEqual([]);
  });

  test("may be drawn with bars", () => {
    const rule = "+--------+-----+-------+\n";
    const text = `${rule}| Ref    | Qty | Value |\n${rule}| R1, R2 | 2   | 10k   |\n| C1     | 1   | 1n    |\n${rule}`;
    const list = readList(text, {}, "parts.txt");
    expect(lines(list)).toEqual(["R1 R2", "C1"]);
    expect(list.lines.map(({ quantity }) => quantity)).toEqual([2, 1]);
    expect(findings(list)).toEqual([]);
  });

  test("may have no header where all cells stand below one another", () => {
    const list = readList("R1   10k   0207\nR2   22k   0207\nC1   1n    RM5\n", {}, "parts.txt");
    expect(lines(list)).toEqual(["R1", "R2", "C1"]);
    expect(list.lines.map(({ value }) => value?.amount)).toEqual([10e3, 22e3, 1e-9]);
  });

  test("that is printed again by value is read once", () => {
    const first = "| C1     100n   \n| C2     10n    \n| R1     4k7    \n| D1     1N4148 \n";
    const second = "| 100n   C1\n| 10n    C2\n| 1N4148 D1\n| 4k7    R1\n";
    const list = readList(`#Cmp ( order = Reference )\n${first}#End\n\n${second}#End\n`);
    expect(lines(list)).toEqual(["C1", "C2", "R1", "D1"]);
    expect(lineOf(list, "R1").value).toEqual({ amount: 4700, unit: "Ω" });
    expect(findings(list)).toEqual(["repeated-designator 8: | 100n   C1"]);
  });

  test("tells lines that may go on with the one above", () => {
    const text =
      "Ref    Qty  Description\nR1,R2  2    resistor, metal film,\n            one per cent\nC1     1    ceramic\n       4    rubber feet\n";
    const list = readList(text);
    expect(lines(list)).toEqual(["R1 R2", "C1", "(rubber feet)"]);
    expect(findings(list)).toEqual(["unreadable-list 3:             one per cent"]);
  });
});

describe("a text whose columns are not certain", () => {
  test.each([
    [
      "a cell that runs over into the next column",
      "Part  Value   Package\nR1    10k     0207\nU1    LM358 in a carrier DIP-8\nC1    1n      RM5\n",
      "U1    LM358 in a carrier DIP-8",
    ],
    [
      "cells that stand in no column",
      "Ref   Qty    Value\nR1    1      10k\nR2  x  1     22k\nC1    1      1n\n",
      "R2  x  1     22k",
    ],
    [
      "a line without header that stands elsewhere",
      "R1   10k   0207\nR2   22k   0207\nC1   1n    RM5\nC2      1n   RM5\n",
      undefined,
    ],
  ])("with %s is one finding", (_, text, at) => {
    const list = readList(text, {}, "parts.txt");
    expect(list.format).toBe("unreadable");
    expect(list.lines).toEqual([]);
    expect(list.problems).toHaveLength(1);
    const { start, end } = list.problems[0]!.span;
    if (at) expect(text.slice(start, end)).toBe(at);
  });

  test("is no list where it is prose", () => {
    const text = "The part value  and the rest\nare told below.  See R1  there.\nOr  not.\n";
    expect(readList(text, {}, "parts.txt").format).toBe("unreadable");
  });

  test("leaves delimited text with blanks for looks alone", () => {
    const text = "Ref,     Qty,  Value\nR1 R2,   2,    10k\nC1,      1,    1n\n";
    const list = readList(text);
    expect(list.format).toBe("csv");
    expect(lines(list)).toEqual(["R1 R2", "C1"]);
  });
});

test("floods of blanks, rules and headers take no time", () => {
  const wide = `Part${" ".repeat(4_000)}Value\n`;
  for (const text of [
    wide.repeat(400),
    `${wide}${"R1\n".repeat(300_000)}`,
    `Part  Value\n${"---  ---\n".repeat(200_000)}`,
    "R1  1k\n\n".repeat(150_000),
    `${"R1  1k  ".repeat(600)}\n`.repeat(300),
    "Part  Value\nR1  x  1k\n".repeat(60_000),
  ]) {
    const start = process.cpuUsage().user;
    readList(text, {}, "parts.txt");
    expect((process.cpuUsage().user - start) / 1000).toBeLessThan(6_000);
  }
});
