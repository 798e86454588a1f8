import { describe, expect, test } from "vitest";
import { chosen, offered } from "./completing.ts";
import { atCursor } from "./cursor.ts";

const LIST = `--- file: parts.csv
Designator,Quantity,Value,Footprint,Height
"R1,R2,R3,R4",4,4k7,DIN0207,2.5
"R5,R6",2,10k,DIN0207,2.5
"C1,C2,C4",3,100n,DISC,5
C3,1,470u,RADIAL,16
D1,1,1N4148,DO-35,1.9
Q1,1,BC547,TO-92,5.2
Q2,1,BC547,TO-92,5.2
,8,M3x10,,
,4,M3x6,,
,2 m,CuL 1.0,,`;

function kit(body: string, head = ""): string {
  return `---\nparts: parts.csv\n${head}---\n\n## A\n\n${body}\n${LIST}`;
}

describe("offered in a mark are", () => {
  test("parts not yet fitted, lowest body first, neighbours of a value as ranges", async () => {
    const { labels, found } = await offered(kit("1. Solder [C3].\n2. Solder [¦]."));
    expect(labels.slice(0, 5)).toEqual(["D1", "R1–R4", "R5, R6", "C1, C2, C4", "Q1, Q2"]);
    expect(labels).not.toContain("C3");
    const range = found!.items[1]!;
    expect(range).toMatchObject({ detail: "4k7", description: "DIN0207 · 2.5 mm" });
    expect(range.documentation!()).toContain("Body height 2.5 mm");
    expect(labels).toContain("C1, C2");
    expect(labels).toContain("R3");
    expect(found!.complete).toBe(true);
  });

  test("then hardware with the count left, sets and role words", async () => {
    const { labels, found } = await offered(kit("1. Screw [3 × M3x10].\n2. Solder [¦]."));
    const rest = labels.slice(labels.indexOf("5 × M3x10"));
    expect(rest.slice(0, 5)).toEqual(["5 × M3x10", "4 × M3x6", "2 m × CuL 1.0", "all R", "all C"]);
    expect(rest).toContain("later:");
    expect(found!.items.find(({ label }) => label === "5 × M3x10")?.detail).toBe("5 of 8 left");
  });

  test.each([
    ["half-typed, not closed", "1. Solder [R¦ and go on.", "R1–R4", "1. Solder [R1–R4 and go on."],
    ["at the end of the text", "1. Solder [¦", "R1–R4", "1. Solder [R1–R4"],
    ["behind a comma", "1. Solder [D1, ¦]", "R1–R4", "1. Solder [D1, R1–R4]"],
    ["in the middle of a range", "1. Solder [R1–R¦2, D1]", "R1–R4", "1. Solder [R1–R4, D1]"],
    ["at the start of an item", "1. Solder [¦R1, D1]", "R1–R4", "1. Solder [R1–R4, D1]"],
    ["to end a range", "1. Solder [R2–¦]", "R2–R4", "1. Solder [R2–R4]"],
    ["in a range that is not closed", "1. Fit [R1–R¦4 flush.", "R1–R4", "1. Fit [R1–R4 flush."],
    ["before a word", "1. Fit [¦the part.", "D1", "1. Fit [D1the part."],
    ["a member of a pair", "1. Fit [Q1+¦]", "Q1+Q2", "1. Fit [Q1+Q2]"],
    ["by its value", "1. Fit [4k¦]", "R1–R4", "1. Fit [R1–R4]"],
    ["with a role", "1. Keep [later: ¦]", "C3", "1. Keep [later: C3]"],
    ["in a table", "| a | b |\n|---|---|\n| x | [¦ |", "D1", "| x | [D1 |"],
    ["a screw, by its count", "1. Use [3 ×¦]", "3 × M3x10", "1. Use [3 × M3x10]"],
    ["a screw, by its name", "1. Use [M3¦]", "8 × M3x10", "1. Use [8 × M3x10]"],
    ["a length", "1. Wind [0,5 m × ¦]", "0,5 m × CuL 1.0", "1. Wind [0,5 m × CuL 1.0]"],
    ["the value", "1. Fit [R1–R4 = ¦]", "4k7", "1. Fit [R1–R4 = 4k7]"],
    ["what a set leaves out", "1. [all R except R1, ¦]", "R2", "1. [all R except R1, R2]"],
    ["a role word", "1. Use [to¦]", "tool:", "1. Use [tool: ]"],
    ["a tool used before", "1. [tool: hex key]\n2. [tool: ¦]", "hex key", "2. [tool: hex key]"],
    ["a label", "1. [#bend] Bend.\n2. See [see: ¦]", "bend", "2. See [see: bend]"],
    ["the label that is referred to", "1. [see: test]\n2. [#¦] Test.", "test", "2. [#test] Test."],
  ])("%s", async (_, body, label, line) => {
    const result = await offered(kit(body));
    expect(result.labels).toContain(label);
    expect(chosen(result, label)).toBe(line);
  });

  test("on the board of the stage only, named without it", async () => {
    const list =
      "--- file: parts.csv\nBoard,Designator,Value\nmain,R1,1k\nrelay,R1,2k\nrelay,R2,2k";
    const head = "---\nparts: parts.csv\n---\n\n## A\n\n";
    const named = await offered(`${head}<!-- board relay -->\n\n1. Fit [R¦].\n${list}`);
    expect(named.labels).toEqual(["R1, R2", "R1", "R2", "remove:"]);
    const open = await offered(`${head}1. Fit [R¦].\n${list}`);
    expect(open.labels).toEqual(["main/R1", "relay/R1, R2", "relay/R1", "relay/R2", "remove:"]);
    const own = await offered(`${head}1. Fit [relay/R¦].\n${list}`);
    expect(own.labels).toEqual(["relay/R1, R2", "relay/R1", "relay/R2"]);
  });

  test("on the board of the stage's first part where no note names one", async () => {
    const list =
      "--- file: parts.csv\nBoard,Designator,Value\nmain,R1,1k\nrelay,R1,2k\nrelay,R3,3k";
    const body = "1. Fit [relay/R1].\n2. Fit [R¦].";
    const { labels } = await offered(`---\nparts: parts.csv\n---\n\n## A\n\n${body}\n${list}`);
    expect(labels).toEqual(["R3", "remove:"]);
  });

  test("chips for `insert`, optional parts among the others", async () => {
    const rows =
      "Designator,Value,Optional\nR1,1k,yes\nR2,2k,\nU1,LM358,\nU1,DIP-8 socket,\nU2,TL072,";
    const head = `---\nparts: parts.csv\n---\n\n## A\n\n`;
    const list = `--- file: parts.csv\n${rows}`;
    const insert = await offered(`${head}1. Push in [insert: ¦].\n${list}`);
    expect(insert.labels).toEqual(["U1"]);
    const fit = await offered(`${head}1. Fit [R¦].\n${list}`);
    expect(fit.labels.slice(0, 2)).toEqual(["R1", "R2"]);
  });

  test("of wire what is left, and screws without a number by ones", async () => {
    const list =
      "--- file: parts.csv\nDesignator,Quantity,Value\nR1,1,1k\n,820 mm,CuL 1.0\n,2 m,PTFE\n,,M4x10";
    const body = "1. Wind [820 mm × CuL 1.0], [500 mm × PTFE].\n2. Fit [¦].";
    const { found } = await offered(`---\nparts: parts.csv\n---\n\n## A\n\n${body}\n${list}`);
    const hardware = found!.items.filter(({ kind }) => kind === "hardware");
    expect(hardware.map(({ label, detail }) => [label, detail])).toEqual([
      ["1.5 m × PTFE", "1.5 m of 2 m left"],
      ["1 × M4x10", ""],
    ]);
    expect(hardware[0]!.documentation!()).toContain("2 m in the kit");
  });

  test("parts that the list does not fit for `empty`, parts on trial for `remove`", async () => {
    const list = "--- file: parts.csv\nDesignator,Value,Fitted\nR1,1k,yes\nR2,1k,no\nQ1,BC547,yes";
    const head = "---\nparts: parts.csv\n---\n\n## A\n\n1. Try [try: Q1].\n";
    const empty = await offered(`${head}2. Leave [empty: ¦].\n${list}`);
    expect(empty.labels).toContain("R2");
    const remove = await offered(`${head}2. Take out [remove: ¦].\n${list}`);
    expect(remove.labels).toEqual(["Q1"]);
  });
});

describe("nothing is offered", () => {
  test.each([
    ["in plain words", "1. Solder R¦"],
    ["behind a mark", "1. Solder [R1]¦"],
    ["in code", "1. Type `[¦`"],
    ["in a fence", "```\n[¦\n```"],
    ["in HTML", "<div>\n[¦\n</div>"],
    ["in a comment", "1. a <!-- [¦ -->"],
    ["in a picture", "1. ![¦](a.png)"],
    ["in a link", "1. [R¦](a.md)"],
    ["in an address", "1. [x](a[¦)"],
    ["in a footnote", "1. a[^¦]"],
    ["behind an escaped bracket", "1. \\[¦"],
    ["behind a word with a colon that is no role", "1. [note: ¦]"],
  ])("%s", async (_, body) => {
    expect((await offered(kit(body))).found?.items ?? []).toEqual([]);
  });
});

test("in Markdown that is no guide nothing is followed", async () => {
  const at = await atCursor("# Notes\n\n1. Solder [¦\n");
  expect(at.guide).toBeUndefined();
});

test("a long list is cut, and tells so", async () => {
  const rows = Array.from({ length: 3000 }, (_, i) => `R${i + 1},${i}k`).join("\n");
  const text = `---\nparts: parts.csv\n---\n\n1. [¦]\n--- file: parts.csv\nDesignator,Value\n${rows}`;
  const { found } = await offered(text);
  expect(found!.complete).toBe(false);
  expect(found!.items.length).toBeLessThan(250);
  const narrowed = await offered(text.replace("[¦]", "[R299¦]"));
  expect(narrowed.labels.slice(0, 2)).toEqual(["R299", "R2990"]);
});
