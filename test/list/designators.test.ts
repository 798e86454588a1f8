/** What is told of the designator column: half ranges, names without numbers, rows out of step. */
import { describe, expect, test } from "vitest";
import { findings, lines, readList } from "./reading.ts";

/** Reads the cell as the designators of the second of three lines. */
const listOf = (cell: string) => readList(`Ref,Value\nR1,10k\n"${cell}",22k\nR2,1k\n`);

describe("a range that is none", () => {
  test.each([
    ["R3-", "R3", "R3-"],
    ["R3–", "R3", "R3–"],
    ["-R3", "R3", "-R3"],
    ["R3..", "R3", "R3.."],
    ["R3…", "R3", "R3…"],
    ["R3-R", "R3", "R3-R"],
    ["R3 -", "R3", "-"],
    ["R3, R5-", "R3 R5", "R5-"],
    ["R3-, R5", "R3 R5", "R3-"],
    ["LED3-", "LED3", "LED3-"],
    ["R3-5-7", "R3 R5 R7", "R3-5-7"],
    ["R3-R5-R7", "R3 R5 R7", "R3-R5-R7"],
    ["R3/", "R3", "R3/"],
    ["R3.", "R3", "R3."],
  ])("%s is a finding, and its designators are read", (cell, expected, shown) => {
    const list = listOf(cell);
    expect(lines(list).map((line) => line.split(" ").sort().join(" "))).toEqual([
      "R1",
      expected,
      "R2",
    ]);
    expect(findings(list)).toEqual([`designator-syntax 3: ${shown}`]);
  });

  test("says what is missing", () => {
    expect(listOf("R3-").problems[0]!.message).toBe(
      '"R3-" looks like a range, but has only one end, so only R3 is read. Write both ends, or R3 alone.',
    );
    expect(listOf("R3-5-7").problems[0]!.message).toContain(
      "R3, R5 and R7 are read as single parts",
    );
  });

  test("is not counted against the quantity", () => {
    const list = readList("Ref,Qty,Value\nR1,1,10k\nR3-,3,22k\n");
    expect(findings(list)).toEqual(["designator-syntax 3: R3-"]);
  });

  test.each(["IN1-", "BUS-OUT", "D-", "V+", "J1-PWR", "!RESET!"])("%s is a name", (cell) => {
    const list = listOf(cell);
    expect(lines(list)).toEqual(["R1", cell, "R2"]);
    expect(findings(list)).toEqual([]);
  });
});

describe("a text that is no designator", () => {
  test.each([
    ["R?", "R?", "has no number yet"],
    ["R**", "R**", "has no number yet"],
    ["10k", "10k", "is no designator"],
    ["R1/0207", "R1/0207", "is no designator"],
    ["R3:R5", "R3:R5", "is no designator"],
    ["R3to R5", "R3to R5", "is no designator"],
    ["R3, page 4", "page 4", "is no designator"],
    ["R3-C5", "R3-C5", "not of one series"],
    ["R5-R3", "R5-R3", "runs backwards"],
  ])("%s", (cell, shown, says) => {
    const list = listOf(cell);
    expect(findings(list)).toEqual([`designator-syntax 3: ${shown}`]);
    expect(list.problems[0]!.message).toContain(says);
  });

  test.each([
    "R3 (optional)",
    "R3*",
    "R3 DNP",
    "1x R3",
    "1 x R3",
    "1 × R3",
    "R3 (1x)",
    "R3 (do not fit)",
  ])("%j is R3 without a finding", (cell) => {
    expect(lines(listOf(cell))).toEqual(["R1", "R3", "R2"]);
    expect(findings(listOf(cell))).toEqual([]);
  });

  test.each(["-", "n/a", "*", ""])("%j is a part without a designator", (cell) => {
    expect(listOf(cell).lines.map(({ designators }) => designators.length)).toEqual([1, 0, 1]);
    expect(findings(listOf(cell))).toEqual([]);
  });
});

describe("a row out of step with its header", () => {
  test("a list of designators without quotes is read as one cell, and told", () => {
    const list = readList("Ref,Qty,Value\nR1, R2, R5,3,10k\nC1,1,1n\n");
    expect(lines(list)).toEqual(["R1 R2 R5", "C1"]);
    expect(list.lines[0]).toMatchObject({ quantity: 3, value: { amount: 10e3, unit: "Ω" } });
    expect(findings(list)).toEqual(["designator-syntax 2: R1, R2, R5,3,10k"]);
    const { start, end } = list.lines[0]!.designators[1]!.span;
    expect(list.text.slice(start, end)).toBe("R2");
  });
});

describe("a count", () => {
  test("that differs is told at its cell, with both numbers", () => {
    const list = readList('Ref,Qty,Value\n"R1, R2",3,10k\nC1,1,1n\n');
    expect(findings(list)).toEqual(["count-mismatch 2: 3"]);
    expect(list.problems[0]).toMatchObject({
      line: 0,
      message:
        "The quantity is 3, but the line has 2 designators, so builder and packer will count differently. Correct the quantity or the designators.",
    });
  });

  test.each(["2 pcs", "2x", "2 Stk.", "2 stuks", "2 pièces", "2 uds", "2,0"])("%s is 2", (cell) => {
    const list = readList(`Ref,Qty,Value\n"R1, R2","${cell}",10k\nC1,1,1n\n`);
    expect(list.lines[0]!.quantity).toBe(2);
    expect(findings(list)).toEqual([]);
  });

  test("with spares agrees when the spares are taken off", () => {
    expect(findings(readList('Ref,Qty,Value\n"R1, R2",2 + 1,10k\nC1,1,1n\n'))).toEqual([]);
    expect(findings(readList('Ref,Qty,Value,Spare\n"R1, R2",3,10k,1\nC1,1,1n,\n'))).toEqual([]);
  });
});
