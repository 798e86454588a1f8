/** Lists of which nothing can be read give one finding that says why and what to do. */
import { describe, expect, test } from "vitest";
import { kit } from "../checks/kit.ts";
import { checkFixture, show } from "../fixture.ts";
import { findings, lines, readList, readMarkdown } from "./reading.ts";

const message = (text: string, name?: string) =>
  readList(text, {}, name).problems.map((problem) => problem.message);

describe("a header without lines", () => {
  test.each([
    ["Designator,Value", "Designator,Value"],
    ["Designator,Quantity,Value\n", "Designator,Quantity,Value"],
    ["Bezeichner;Anzahl;Wert\n\n\n", "Bezeichner;Anzahl;Wert"],
    ["Ref\tQty\tValue\n\t\t\n", "Ref\tQty\tValue"],
    ["Heron 40\n,,\nRef,Qty,Value\n", "Ref,Qty,Value"],
    ["Ref,Qty,Value\nTotal,0,\n", "Ref,Qty,Value"],
    ["Qty,Description\n", "Qty,Description"],
  ])("%j is one finding at the header", (text, header) => {
    const list = readList(text);
    expect(list.format).toBe("unreadable");
    expect(list.lines).toEqual([]);
    expect(list.problems.map(({ code, span }) => [code, text.slice(span.start, span.end)])).toEqual(
      [["unreadable-list", header]],
    );
    expect(list.problems[0]!.message).toContain("no lines of parts below it");
  });

  test("is told in Markdown, too", () => {
    const list = readMarkdown("# Parts\n\n| Ref | Value |\n|--|--|\n\nMore to come.\n");
    expect(findings(list)).toEqual(["unreadable-list 3: | Ref | Value |"]);
    expect(list.problems[0]!.message).toContain("no lines of parts below it");
  });

  test("is none as soon as there is one line, of hardware even", () => {
    expect(lines(readList("Ref,Qty,Value\nR1,1,10k\n"))).toEqual(["R1"]);
    expect(lines(readList("Ref,Qty,Value\n,4,screw\n"))).toEqual(["(screw)"]);
  });
});

test("a guide whose list has only its header is told so once", async () => {
  const { found } = await checkFixture(kit("## A\n\n1. [R1–R4] [C1]", "Ref,Qty,Value"));
  expect(show(found)).toEqual(["parts.csv:1:0-13 unreadable-list"]);
});

describe("a text that is no list", () => {
  test.each([
    ["", "is empty"],
    [" \n\n\t\n", "is empty"],
    ["Solder the resistors first.\nThen the rest.\n", "plain text without columns"],
    ["R1   10k   0207\n   R2   22k   0207\nC1   1n    RM5\n", "fixed width"],
    ['<?xml version="1.0"?>\n<parts/>', "an XML file"],
    ["<!DOCTYPE html><html></html>", "an HTML page"],
    ['{ "parts": [] }', "a JSON file"],
    ['[{"ref": "R1"}]', "a JSON file"],
    ["{\\rtf1 R1}", "a rich text document"],
    ["Name,Town\nJones,Ely\nSmith,Ayr\n", "no parts can be told"],
  ])("%j", (text, says) => {
    expect(message(text)).toEqual([expect.stringContaining(says)]);
  });

  test("a table without designators says what column is missing", () => {
    expect(message("Value,Package\n10k,0207\n1n,RM5\n")).toEqual([
      expect.stringContaining("No column of this table holds designators"),
    ]);
    expect(message("# Kit\n\n| Pin | Use |\n|--|--|\n| 1 | GND |\n", "kit.md")).toEqual([
      expect.stringContaining("No table of this Markdown file has a column of designators"),
    ]);
  });

  test("bytes that are no text are named, and nothing is read", () => {
    const list = readList(Uint8Array.from("PK\x03\x04xl/workbook.xml", (c) => c.charCodeAt(0)));
    expect(list.text).toBe("");
    expect(list.problems.map(({ message }) => message)).toEqual([
      "This is a spreadsheet workbook (.xlsx), not text, so nothing in it can be read. Save the parts list as CSV, .xlsx or .ods, or write it as a table in a Markdown file.",
    ]);
  });

  test("a text of more than 20 MB is not read", () => {
    expect(message("R1,10k\n".repeat(3_100_000))).toEqual([
      expect.stringContaining("longer than 20 MB"),
    ]);
  });
});

describe("a list that goes too far", () => {
  test("a range of more than 10,000 parts is a finding, and none of it is read", () => {
    const list = readList("Ref,Value\nR1-R999999999,10k\nC1,1n\n");
    expect(findings(list)).toEqual(["designator-syntax 2: R1-R999999999"]);
    expect(list.problems[0]!.message).toContain("999999999 parts");
    const most = readList("Ref,Value\nR1-R10000,10k\n");
    expect(most.lines[0]!.designators).toHaveLength(10_000);
    expect(findings(most)).toEqual([]);
    expect(findings(readList("Ref,Value\nR1-R10001,10k\n"))).toHaveLength(1);
  });

  test("a list of more than 200,000 parts is cut with a finding", () => {
    const rows = Array.from({ length: 21 }, (_, i) => `R${i + 1}0001-R${i + 2}0000,10k`);
    const list = readList(`Ref,Value\n${rows.join("\n")}\nC1,1n\n`);
    expect(list.lines.flatMap(({ designators }) => designators)).toHaveLength(200_000);
    expect(findings(list)).toEqual(["unreadable-list 22: R210001-R220000"]);
  });

  test("more than 200,000 rows are cut with a finding", () => {
    const list = readList(`Ref,Value\n${"R1,10k\n".repeat(200_010)}`);
    expect(list.problems.some(({ message }) => message.includes("only 200000 rows"))).toBe(true);
  });

  test("a quote that is never closed is told where it opens", () => {
    const list = readList('Ref,Value\n"R1,10k\nR2,22k\n"R3, R4",47k\n');
    expect(findings(list)[0]).toBe('unreadable-list 2: "');
    expect(lines(list)).toContain("R2");
    expect(lines(list)).toContain("R3 R4");
  });
});
