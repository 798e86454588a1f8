import { describe, expect, test } from "vitest";
import { rename } from "../../server/src/features/rename/rename.ts";
import { renameTarget, renameTargetInList } from "../../server/src/features/rename/target.ts";
import type { Part } from "../../server/src/model/parts.ts";
import { applyEdits, type Span } from "../../server/src/text/span.ts";
import { type AtCursor, atCursor, FOLDER } from "./cursor.ts";

function targetAt({ guide, uri, offset, list }: AtCursor) {
  return list ? renameTargetInList(guide, list, offset) : renameTarget(guide, uri, offset);
}

/** What the rename makes of each file, or why it refuses. */
async function renamed(kit: string, to: string): Promise<Map<string, string> | string> {
  const at = await atCursor(kit);
  const target = targetAt(at);
  if (!target) return "nothing to rename";
  if ("problem" in target) return target.problem;
  const result = rename(at.guide, target, to);
  if ("problem" in result) return result.problem;
  const after = new Map(at.files);
  for (const [name, text] of at.files) {
    const edits = new Map(
      result.edits
        .filter(({ uri }) => uri === FOLDER + name)
        .map((edit) => [edit.span.start, edit]),
    );
    after.set(name, applyEdits(text, [...edits.values()]));
  }
  return after;
}

const LIST = `--- file: parts.csv
Designator,Quantity,Value
"R1,R2,R3",3,1k
R4-R7,4,2k
C1,1,1u
C2,1,2u
C3,1,3u
C4,1,4u
U3,1,LM358
Q1,1,BC547
Q2,1,BC547`;

function kit(body: string, head = ""): string {
  return `---\nparts: parts.csv\n${head}---\n\n## A\n\n${body}\n${LIST}`;
}

/** The body of the guide after a rename, or the refusal. */
async function body(text: string, to: string, head = ""): Promise<string> {
  const after = await renamed(kit(text, head), to);
  if (typeof after === "string") return after;
  return after.get("guide.md")!.split("## A\n\n")[1]!.trimEnd();
}

/** The list after a rename, or the refusal. */
async function list(rows: string, to: string): Promise<string> {
  const head = "---\nparts: parts.csv\n---\n\n1. Nothing.\n--- file: parts.csv\n";
  const after = await renamed(`${head}${rows}`, to);
  return typeof after === "string" ? after : after.get("parts.csv")!.trimEnd();
}

describe("a part is renamed in marks and prose", () => {
  test.each([
    ["itself", "[R¦2]", "R9", "[R9]"],
    ["its mentions", "[R¦2], R2; R12, `R2`, R2A", "R9", "[R9], R9; R12, `R2`, R9A"],
    ["in the middle of a range", "[R1–R3] R¦2", "R9", "[R1, R9, R3] R9"],
    ["at the end of a range", "[R4–R¦7]", "R9", "[R4–R6, R9]"],
    ["at the start of a range", "[R¦4–R7]", "R9", "[R9, R5–R7]"],
    ["within a range, from the prose", "[R4–R7] as R¦6", "R9", "[R4, R5, R9, R7] as R9"],
    ["a range that is short", "[R4–7] as R¦7", "R9", "[R4–6, R9] as R9"],
    ["with the range's own sign", "[R4 to R7] as R¦4", "R9", "[R9, R5 to R7] as R9"],
    ["a group and a choice", "[Q¦1+Q2, C1] [Q1 or Q2]", "Q9", "[Q9+Q2, C1] [Q9 or Q2]"],
    ["a section", "[U3A, B] U¦3C and U3", "U7", "[U7A, U7B] U7C and U7"],
    ["what a set leaves out", "[all R except R¦2, R3]", "R9", "[all R except R9, R3]"],
    [
      "a range that a set leaves out",
      "[all R except R1–R3] R¦2",
      "R9",
      "[all R except R1, R9, R3] R9",
    ],
    ["what follows it and was short", "[C¦1, 2, 3–4] C2", "L1", "[L1, C2, 3–4] C2"],
    ["short itself", "[C1, ¦2, 3]", "L2", "[C1, L2, C3]"],
    ["short, of the same class", "[C1, ¦2, 3]", "C9", "[C1, C9, 3]"],
    [
      "ranges of the prose",
      "R4–R7 and R4-R7, R¦5; C1–C2",
      "R9",
      "R4, R9, R6, R7 and R4, R9, R6, R7, R9; C1–C2",
    ],
    ["with a value and a role", "[later: R¦2 = 1k]", "R9", "[later: R9 = 1k]"],
    [
      "in a table and a note",
      "| a | b |\n|---|---|\n| R2 | [R¦2] |\n\n> R2",
      "R9",
      "| a | b |\n|---|---|\n| R9 | [R9] |\n\n> R9",
    ],
  ])("%s", async (_, before, to, after) => {
    expect(await body(before, to)).toBe(after);
  });

  test("also where it ends a range", async () => {
    const rows = "--- file: parts.csv\nDesignator,Value\nR1–R3,1k\nR6–R8,1k\nX1,1k";
    const head = "---\nparts: parts.csv\n---\n\n";
    const behind = (await renamed(`${head}[R1–R3, X¦1]\n${rows}`, "R4")) as Map<string, string>;
    expect(behind.get("guide.md")).toContain("[R1–R4]");
    const before = (await renamed(`${head}[X¦1, R6–R8]\n${rows}`, "R5")) as Map<string, string>;
    expect(before.get("guide.md")).toContain("[R5–R8]");
    const apart = (await renamed(`${head}[X¦1, R6–R8]\n${rows}`, "R4")) as Map<string, string>;
    expect(apart.get("guide.md")).toContain("[R4, R6–R8]");
  });

  test("in figures and in the front matter", async () => {
    const head =
      "heights: { R1–R3: 2 mm, C1: 5 mm }\noff-board: [R1–R3, C2]\nfigures: { A: 2 * R2 }\n";
    const text = kit("{P(R2) = 1 mA^2 * R2} {read V(R¦2) = 1 V ± 5 %} {R(R2)} [R2]", head);
    const after = (await renamed(text, "R9")) as Map<string, string>;
    const guide = after.get("guide.md")!;
    expect(guide).toContain("heights: { R1: 2 mm, R9: 2 mm, R3: 2 mm, C1: 5 mm }");
    expect(guide).toContain("off-board: [R1, R9, R3, C2]");
    expect(guide).toContain("figures: { A: 2 * R9 }");
    expect(guide).toContain("{P(R9) = 1 mA^2 * R9} {read V(R9) = 1 V ± 5 %} {R(R9)} [R9]");
  });

  test("on lines of their own in the front matter", async () => {
    const head = "heights:\n  R1–R3: 2 mm\noff-board:\n  - R1–R3\n";
    const after = (await renamed(kit("[R¦2]", head), "R9")) as Map<string, string>;
    expect(after.get("guide.md")).toContain(
      "heights:\n  R1: 2 mm\n  R9: 2 mm\n  R3: 2 mm\noff-board:\n  - R1\n  - R9\n  - R3\n",
    );
  });

  test("on its own board only", async () => {
    const rows =
      "--- file: parts.csv\nBoard,Designator,Value\nmain,R1,1k\nrelay,R1,2k\nrelay,R2,2k";
    const text = `---\nparts: parts.csv\n---\n\n## A\n\n<!-- board relay -->\n\n[R¦1] R1 [main/R1, relay/R1, R2]\n\n## B\n\n<!-- board main -->\n\n[R1]\n${rows}`;
    const after = (await renamed(text, "R9")) as Map<string, string>;
    expect(after.get("guide.md")).toContain("[R9] R9 [main/R1, relay/R9, R2]\n\n## B");
    expect(after.get("guide.md")).toContain("[R1]\n");
    expect(after.get("parts.csv")).toContain("main,R1,1k\nrelay,R9,2k");
  });
});

describe("a part is renamed in its list", () => {
  test.each([
    [
      "a cell of its own",
      "Designator,Value\nR¦1,1k\nR2,2k",
      "R9",
      "Designator,Value\nR9,1k\nR2,2k",
    ],
    [
      "a quoted cell",
      'Designator,Value\n"R1, R¦2,R3",1k\nC1,1u',
      "R9",
      'Designator,Value\n"R1, R9,R3",1k\nC1,1u',
    ],
    [
      "in a range without quotes",
      "Designator,Value\nR¦1-R4,1k\nC1,1u",
      "R9",
      "Designator,Value\nR9 R2-R4,1k\nC1,1u",
    ],
    [
      "in a range with quotes",
      'Designator,Value\n"R1-R¦4",1k\nC1,1u',
      "R9",
      'Designator,Value\n"R1-R3, R9",1k\nC1,1u',
    ],
    [
      "with semicolons",
      "Designator;Value\nR1,R¦2;1k\nC1;1u",
      "R9",
      "Designator;Value\nR1,R9;1k\nC1;1u",
    ],
    [
      "short ones",
      'Designator,Value\n"C¦1,2,3",1u\nR1,1k',
      "X1",
      'Designator,Value\n"X1,C2,3",1u\nR1,1k',
    ],
    [
      "parted by spaces",
      "Designator,Value\nR1 R¦2 R3,1k\nC1,1u",
      "R9",
      "Designator,Value\nR1 R9 R3,1k\nC1,1u",
    ],
    [
      "a table of Markdown",
      "| Designator | Value |\n|---|---|\n| R1, R¦2 | 1k |\n| C1 | 1u |",
      "R9",
      "| Designator | Value |\n|---|---|\n| R1, R9 | 1k |\n| C1 | 1u |",
    ],
    [
      "CRLF and a title row",
      "Wren\r\nDesignator,Value\r\nR¦1,1k\r\nC1,1u\r",
      "R9",
      "Wren\r\nDesignator,Value\r\nR9,1k\r\nC1,1u",
    ],
    [
      "both lines of a chip and its socket",
      "Designator,Value\nU¦3,LM358\nU3,DIP-8 socket\nC1,1u",
      "U7",
      "Designator,Value\nU7,LM358\nU7,DIP-8 socket\nC1,1u",
    ],
    [
      "both lines from the second, too",
      "Designator,Value\nU3,LM358\nU¦3,DIP-8 socket\nC1,1u",
      "U7",
      "Designator,Value\nU7,LM358\nU7,DIP-8 socket\nC1,1u",
    ],
    [
      "behind a range in a way of its own",
      'Designator,Value\n"R1toR3, C¦1, R7",1k\nC2,1u',
      "R9",
      'Designator,Value\n"R1toR3, R9, R7",1k\nC2,1u',
    ],
    [
      "the words of its socket's line",
      "Designator,Value,Description\nU¦3,LM358,\nX1,DIP-8,Socket for U3\nC1,1u,",
      "U7",
      "Designator,Value,Description\nU7,LM358,\nX1,DIP-8,Socket for U7\nC1,1u,",
    ],
  ])("%s", async (_, before, to, after) => {
    expect(await list(before, to)).toBe(after);
  });

  test("from the guide as from the list", async () => {
    const after = (await renamed(kit("[R¦6]"), "R9")) as Map<string, string>;
    expect(after.get("parts.csv")).toContain('"R1,R2,R3",3,1k\nR4 R5 R9 R7,4,2k\n');
    expect(after.get("guide.md")).toContain("[R9]");
  });
});

describe("labels and figures are renamed", () => {
  test("a label with its references", async () => {
    expect(await body("1. [#c¦ut] Cut.\n2. See [see: cut, #cut], cut.", "trim")).toBe(
      "1. [#trim] Cut.\n2. See [see: trim, #trim], cut.",
    );
  });

  test("a figure's name, from the front matter to its uses", async () => {
    const head = "supply: { VCC: 12 V }\n";
    const text = kit("{2 * V¦CC = 24 V}, {I(VCC)}, {VCC2 = 2 V}, VCC", head);
    const after = (await renamed(text, "VDD")) as Map<string, string>;
    expect(after.get("guide.md")).toContain("supply: { VDD: 12 V }");
    expect(after.get("guide.md")).toContain("{2 * VDD = 24 V}, {I(VDD)}, {VCC2 = 2 V}, VCC");
  });
});

describe("renaming is refused with a reason", () => {
  test.each([
    ["a name that is taken", "[R¦2]", "C1", /^The parts list has a C1 already, in line 4 \(1u\)/],
    ["a name that is taken, in other letters", "[R¦2]", "c1", /no designator|already/],
    ["a name that a figure has", "{R9 = 2 V} [R¦2]", "R9", /A figure is called R9\. Choose/],
    ["no designator", "[R¦2]", "R 2", /`R 2` is no designator/],
    ["a range", "[R¦2]", "R1–R9", /is no designator/],
    ["a role word", "[R¦2]", "later", /is no designator/],
    ["a part that no list has", "[R¦99]", "R9", /The parts list has no R99/],
    [
      "a set that would lose it",
      "1. [all R]\n2. R¦2",
      "X2",
      /The set `all R` in step 1\.1 would no longer hold it/,
    ],
    [
      "a set that would take it in",
      "1. [all C, R¦2]",
      "C9",
      /The set `all C` in step 1\.1 would hold it too/,
    ],
    [
      "what is left of a class, which would take it in",
      "1. [rest of R]\n2. [C¦1]",
      "R9",
      /The set `rest of R` in step 1\.1 would hold it too/,
    ],
    ["a label that is there", "1. [#a] [#¦b]", "a", /There is a label `a` already in step 1\.1/],
    ["no label", "1. [#¦b]", "1b", /`1b` is no label/],
    ["a figure that is there", "{A1a = 2 V} {¦B = 3 V}", "A1a", /A figure is called A1a already/],
    ["no name of a figure", "{¦B = 3 V}", "1x", /`1x` is no name of a figure/],
    ["a figure called as a part", "{¦B = 3 V}", "R2", /R2 is a part of the list/],
    ["a figure called as a function", "{¦B = 3 V}", "sqrt", /is a function/],
    ["a figure called as a unit", "{¦B = 3 V}", "mV", /is a unit/],
    ["a figure with a subject", "{¦P(Q1) = 3 W}", "X", /is named after what it belongs to/],
  ])("%s", async (_, before, to, reason) => {
    expect(await body(before, to)).toMatch(reason);
  });

  test("nothing to rename in plain words, in code, at a set or at hardware", async () => {
    for (const text of ["so¦lder", "`R¦2`", "[all ¦R]", "[2 × M¦3x6]"]) {
      expect(await body(text, "R9")).toBe("nothing to rename");
    }
  });
});

describe("the text that an editor offers to rename is that", () => {
  test.each([
    ["of a range its first end", "[R¦4–R7]", "R4"],
    ["of a range its last end", "[R4–R¦7]", "R7"],
    ["short, by its whole name", "[C1, ¦2]", "C2"],
    ["a label without its sign", "[#c¦ut]", "cut"],
  ])("%s", async (_, text, name) => {
    expect(targetAt(await atCursor(kit(text)))).toMatchObject({ name });
  });

  test("and of a name with its board the part's alone", async () => {
    const rows = "--- file: parts.csv\nBoard,Designator,Value\nmain,R1,1k\nrelay,R1,2k";
    const at = await atCursor(`---\nparts: parts.csv\n---\n\n[relay/R¦1]\n${rows}`);
    const { span, part } = targetAt(at) as { span: Span; part: Part };
    expect(at.files.get("guide.md")!.slice(span.start, span.end)).toBe("R1");
    expect(part.board).toBe("relay");
  });
});
