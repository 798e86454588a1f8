/** Rows that say the same are read once: each must come out as if it stood alone in its list. */
import { describe, expect, test } from "vitest";
import type { ListLine } from "../../server/src/model/list/partsList.ts";
import { readPartsList } from "../../server/src/model/list/read.ts";

const HEADER = "Item,Ref,Qty,Value,Rating,Side,Notes\n";
const ROWS = [
  "1,R1,1,1m,,top,",
  "2,C1,1,1m,,top,",
  "3,L1,1,1m,,top,",
  "4,,1,1m,,top,",
  "5,R2,1,1m,1 W,top,",
  "6,C2,1,1m,63 V,top,",
  "7,R3,0,1m,,top,",
  "8,R4,1,1m,,bottom,",
  '9,"R5, R6",2,1m,,top,R6 is optional',
  '10,"R7, R8",2,1m,,top,R6 is optional',
  "11,R9,1,1m,,top,DNP",
  "12,R10 optional,1,1m,,top,",
  "13,R11,1,1m,,top,",
  '14,R12,1,"1m\n1 W",,top,high',
  '15,R13,1,1m,1 W,,"top\nhigh"',
];

function said(line: ListLine) {
  const { fitted, optional, quantity, value, power, voltage, side } = line;
  const names = line.designators.map((one) => [one.name, one.optional]);
  return { names, fitted, optional, quantity, value, power, voltage, side };
}

const linesOf = (rows: readonly string[]) =>
  readPartsList("file:///a.csv", HEADER + rows.join("\n")).lines;

describe("rows that say the same", () => {
  test.each([
    [
      "in turn",
      [...ROWS, ...ROWS.map((row) => row.replace(/[A-Z](?=\d)/g, (letter) => `${letter}9`))],
    ],
    ["backwards", [...ROWS].reverse()],
  ])("%s are each read as alone", (_, rows) => {
    const together = linesOf(rows).map(said);
    const alone = rows.flatMap((row) => linesOf([row, "99,Q1,1,BC547,,,"]).slice(0, 1).map(said));
    expect(together).toEqual(alone);
    expect(new Set(together.map(({ value }) => value?.unit))).toEqual(
      new Set([undefined, "F", "H"]),
    );
    expect(together.filter(({ fitted }) => !fitted).length).toBeGreaterThanOrEqual(2);
  });
});

describe("a designator that comes twice", () => {
  const repeats = (names: readonly string[]) =>
    readPartsList("file:///a.csv", `Ref,Value\n${names.map((name) => `${name},1k`).join("\n")}`)
      .problems.filter(({ code }) => code === "repeated-designator")
      .map(({ message }) => message.split(" ")[0]);

  test("is found wherever it stands in lists that otherwise rise", () => {
    const rising = ["C1", "R1", "C2", "R2", "R03", "R10", "U3A", "U3B", "r11"];
    expect(repeats(rising)).toEqual([]);
    for (const name of rising) {
      for (let at = 0; at <= rising.length; at++) {
        const names = [...rising.slice(0, at), name, ...rising.slice(at)];
        expect(repeats(names), names.join(" ")).toEqual([name]);
      }
    }
  });

  test("is none where only the zeros before its number differ", () => {
    expect(repeats(["R1", "R01"])).toEqual([]);
  });
});
