/**
 * Do-not-fit and optional marks in the spellings people use: common practice, from public lists and
 * the usual words of the trade in five languages.
 */
import { describe, expect, test } from "vitest";
import { lineOf, names, readList } from "./reading.ts";

/** R1's line, with the cell in the named column. */
const fittedWith = (column: string, cell: string) =>
  lineOf(readList(`Ref,Value,Description,Notes\n${row(column, cell)}\nR2,22k,film,\n`), "R1");

function row(column: string, cell: string): string {
  const cells = ["R1", "10k", "film", ""];
  cells[["Ref", "Value", "Description", "Notes"].indexOf(column)] = `"${cell}"`;
  return cells.join(",");
}

describe("do not fit", () => {
  test.each([
    ..."DNP DNF DNI DNM D.N.P. Empty omit".split(" "),
    "Do not place",
    "Don't place",
    "Dont fit",
    "do not populate",
    "Not populated",
    "not fitted",
    "no stuff",
    "NoPop",
    "unpopulated",
    "(DNP)",
    "10k DNP",
    "nicht bestückt",
    "nicht bestuecken",
    "entfällt",
    "non monté",
    "ne pas monter",
    "no montar",
    "sin poblar",
    "niet plaatsen",
    "niet geplaatst",
  ])("%j for a value", (cell) => {
    expect(fittedWith("Value", cell).fitted).toBe(false);
  });

  test.each([
    "do not fit",
    "Left empty by default; see page 3",
    "DNP on this board",
    "film resistor, do not populate, see errata",
    "nicht bestücken",
  ])("%j in a remark", (cell) => {
    expect(fittedWith("Notes", cell).fitted).toBe(false);
    expect(fittedWith("Description", cell).fitted).toBe(false);
  });

  test.each([
    "do not fit before the first test",
    "do not place near R5",
    "do not overheat",
    "can be left out",
    "may be left empty",
    "none",
    "optional",
    "not too long",
  ])("is not said by %j in a remark", (cell) => {
    expect(fittedWith("Notes", cell).fitted).toBe(true);
  });

  test.each(["R1 DNP", "R1 (do not fit)", "R1, not fitted"])("%j beside the designator", (cell) => {
    const list = readList(`Ref,Value\n"${cell}",10k\nR2,22k\n`);
    expect(list.lines.map((line) => [names(line), line.fitted])).toEqual([
      ["R1", false],
      ["R2", true],
    ]);
    expect(list.problems).toEqual([]);
  });

  test("stands in a column of another meaning", () => {
    const list = readList(
      "Ref,Value,Package,Order no\nR1,10k,0207,DNP\nR2,22k,DNP,X1\nC1,1n,RM5,X2\n",
    );
    expect(list.lines.map((line) => line.fitted)).toEqual([false, false, true]);
  });

  test("a starred word stands for no value, but not where the value is found on test", () => {
    for (const cell of ["*XYZ*", "**OPEN**"]) expect(fittedWith("Value", cell).fitted).toBe(false);
    for (const cell of ["*SOT*", "*select*", "10k*"]) {
      expect(fittedWith("Value", cell).fitted, cell).toBe(true);
    }
  });
});

describe("optional", () => {
  test.each([
    "optional",
    "(optional)",
    "Optional, see text",
    "can be left out",
    "may be omitted",
    "wahlweise",
    "kann entfallen",
    "optionnel",
    "opcional",
    "puede omitirse",
    "optioneel",
  ])("is said by %j", (cell) => {
    expect(fittedWith("Notes", cell)).toMatchObject({ optional: true, fitted: true });
  });

  test.each(["not optional", "nicht optional", "adoption", "options: none"])(
    "is not said by %j",
    (cell) => {
      expect(fittedWith("Notes", cell).optional).toBe(false);
    },
  );

  test("holds for the parts that the remark names", () => {
    const list = readList(
      'Ref,Value,Notes\n"R1, R2, R3",10k,R2 is optional (second channel)\nR4-R9,1k,R4 - R6 optional. R9 must be flat\n"C1, C2",1n,C9 is optional\n',
    );
    const optional = list.lines.flatMap(({ designators }) =>
      designators.filter((one) => one.optional).map(({ name }) => name),
    );
    expect(optional).toEqual(["R2", "R4", "R5", "R6"]);
    expect(list.lines.every((line) => !line.optional)).toBe(true);
  });
});
