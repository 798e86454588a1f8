import { describe, expect, test } from "vitest";
import { checkFiles, checkFixture, fixture } from "../fixture.ts";
import { drawn, kit, messages } from "./kit.ts";

describe("Count mismatch", () => {
  const LIST = 'Designator,Quantity,Value,Height\n"Q1, Q2",10,BC547B,8\n"R1, R2",1,10k,2.5';

  test("is told of each line that states another number, at its quantity", async () => {
    const { found, expected } = await drawn(
      `--- file: guide.md
---
parts: parts.csv
---

1. [R1, R2]
2. [Q1, Q2]
--- file: parts.csv
Designator,Quantity,Value,Height
"Q1, Q2",10,BC547B,8
         ^^ count-mismatch
"R1, R2",1,10k,2.5
         ^ count-mismatch
`,
      "count-mismatch",
    );
    expect(found).toEqual(expected);
  });

  test("allows spares where a match draws on the line, and no shortage", async () => {
    const body = "## A\n\n1. [match: Q1+Q2]\n2. [match: R1+R2]\n3. [Q1+Q2] [R1+R2]";
    const [message, ...more] = await messages(kit(body, LIST), "count-mismatch");
    expect(message).toContain("The quantity is 1");
    expect(more).toEqual([]);
  });
});

describe("Repeated designator", () => {
  test("links the first place, and is silent for a chip and its socket", async () => {
    const list =
      'Designator,Quantity,Value,Height\n"R1, R2",2,10k,2.5\nR2,1,47k,2.5\nU1,1,IC socket 8 pins,4\nU1,1,TL072,4';
    const { diagnoses } = await checkFixture(
      kit("## A\n\n1. [R1, R2], [U1]\n2. [insert: U1]", list),
      "repeated-designator",
    );
    expect(diagnoses).toHaveLength(1);
    expect(diagnoses[0]!.start).toEqual({ line: 2, column: 0 });
    expect(diagnoses[0]!.related.map((place) => place.start)).toEqual([{ line: 1, column: 5 }]);
  });

  const lists = (parts: string) => `--- file: guide.md
---
parts: ${parts}
---

1. Fit [all R].
--- file: a.csv
Designator,Quantity,Value,Height
"R1, R2",2,10k,2.5
--- file: b.csv
Designator,Quantity,Value,Height
R9,1,10k,2.5
R1-R2,2,10k,2.5
`;

  test("is told of two lists whose boards the guide does not name", async () => {
    const { found } = await checkFixture(lists("[a.csv, b.csv]"), "repeated-designator");
    expect(found).toEqual([expect.objectContaining({ file: "b.csv", line: 3, start: 0, end: 5 })]);
    expect(found[0]!.message).toContain("R1 and R2 are listed in a.csv already");
  });

  test("is told of one list alone where the boards are named and it repeats itself", async () => {
    const text = `${lists("{ main: a.csv, relay: b.csv }")}R1,1,10k,2.5\n`;
    const { found } = await checkFixture(text, "repeated-designator");
    expect(found.map(({ line, message }) => [line, message.split(".")[0]])).toEqual([
      [4, "R1 is listed on line 3 already"],
    ]);
  });

  test("is told of the designators alone that are listed elsewhere", async () => {
    const text = lists("[a.csv, b.csv]").replace("R1-R2,2,", "R2-R3,2,");
    const { found } = await checkFixture(text, "repeated-designator");
    expect(found.map(({ message }) => message.split(",")[0])).toEqual([
      "R2 is listed in a.csv already",
    ]);
  });

  test("is none where the boards are named", async () => {
    const text = lists("{ main: a.csv, relay: b.csv }");
    expect((await checkFixture(text, "repeated-designator")).found).toEqual([]);
  });
});

describe("Unknown height", () => {
  const LIST = 'Designator,Quantity,Value,Package\n"A1, A2, A3",3,module,MOD-7\nX9,1,module,';

  test("is one finding a line, with the parts that need a height and the key to write", async () => {
    expect(await messages(kit("## A\n\n1. [A1]\n2. [place: A2]", LIST), "unknown-height")).toEqual([
      "information: The body height of A1 and A2 is not known, so the height checks leave them out. Give it in the guide's front matter: `heights: { MOD-7: 5 mm }`, with the real figure; or list the part under `off-board`.",
    ]);
    const [message] = await messages(kit("## A\n\n1. [X9]", LIST), "unknown-height");
    expect(message).toContain("`heights: { X9: 5 mm }`");
  });

  test("is none for parts off the board, with a height, or not fitted", async () => {
    const body = "## A\n\n1. [A1], [A2] [later: A3]";
    const notes = "heights: { A1: 4 mm }\noff-board: [A2]\n";
    expect(await messages(kit(body, LIST, notes), "unknown-height")).toEqual([]);
  });
});

describe("A list that cannot be read", () => {
  test("is told of on the guide where it is missing or no text", async () => {
    const guide = "---\nparts: parts.csv\n---\n\n1. [R1]\n";
    for (const more of [new Map(), new Map([["parts.csv", "\0\0\0"]])]) {
      const { found } = await checkFiles(new Map([["guide.md", guide], ...more]));
      const unread = found.filter((one) => one.code === "unreadable-list");
      expect(unread.map((one) => one.file)).toEqual(["guide.md"]);
    }
  });

  test("is told of in the list where it has text", async () => {
    const text = kit("1. Text.", "no list\nat all");
    const { found } = await checkFiles(fixture(text).files);
    expect(found.filter((one) => one.code === "unreadable-list").map((one) => one.file)).toEqual([
      "parts.csv",
    ]);
  });
});
