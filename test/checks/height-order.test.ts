import { describe, expect, test } from "vitest";
import { drawn, kit, messages } from "./kit.ts";

/** Class letters tell the height: W 1 mm, R 2.5, D 2.7, U 4, Q 8, C 11, K 15.5, T 22. */
const LIST = `
Designator,Quantity,Value,Height
"W1, W2",2,link,1
"R1, R2, R3, R4, R5, R6, R7, R8",8,10k,2.5
"D1, D2, D3",3,1N4001,2.7
"U1, U2",2,TL072,4
"Q1, Q2, Q3",3,BC547B,8
"C1, C2, C3, C4",4,470u,11
"K1, K2",2,12 V relay,15.5
"T1, T2",2,2 x 9 V transformer,22
"A1, A2",2,module,`;

const BOARDS = `
Designator,Quantity,Value,Height,Board,Side
R1,1,10k,2.5,main,top
C1,1,470u,11,main,top
R2,1,10k,2.5,relay,top
K1,1,12 V relay,15.5,relay,top
R3,1,10k,2.5,main,bottom
C2,1,470u,11,main,bottom`;

function found(body: string, list = LIST, more = ""): Promise<string[]> {
  return messages(kit(body, list, more), "height-order");
}

async function count(body: string, list = LIST, more = ""): Promise<number> {
  return (await found(body, list, more)).length;
}

describe("Height order", () => {
  test("names both parts, both heights with their origin, and both steps", async () => {
    const body = "## Board\n\n1. Solder [K1].\n2. Solder [R1].";
    expect(await found(body, LIST, "heights: { K1: 16 mm }\n")).toEqual([
      "warning: Step 1.2 fits R1 (2.5 mm by the parts list) after K1 (16 mm by the guide's heights) in step 1.1. While the board lies on K1 to be soldered, lower parts drop out of place. Move this step before step 1.1, or put K1 aside with `[later: K1]`.",
    ]);
  });

  test("draws one finding for each item, at the item", async () => {
    const { found, expected } = await drawn(
      kit(
        `## Board

1. Solder [K1, K2, C1–C4].
2. Solder [T1].
3. Solder [D1–D3, all U], [Q1+Q2].
           ^^^^^ height-order
                  ^^^^^ height-order
                           ^^^^^ height-order`,
        LIST,
      ),
      "height-order",
    );
    expect(found).toEqual(expected);
  });

  test("sets no order within one mark", async () => {
    expect(await count("## Board\n\n1. Solder [T1, C1, R1, K1].\n2. Solder [T2].")).toBe(0);
  });

  test("holds between the marks of one step", async () => {
    const [message] = await found("## Board\n\n1. Solder [K1], then [R1].");
    expect(message).toContain("(15.5 mm by the parts list) earlier in step 1.1");
    expect(message).toContain("Name the lower part first");
  });

  test("lets a part be 1 mm lower, and no more", async () => {
    const list = "Designator,Quantity,Value,Height\nX1,1,a,5\nX2,1,b,4\nX3,1,c,3.9";
    expect(await count("## B\n\n1. [X1]\n2. [X2]", list)).toBe(0);
    expect(await count("## B\n\n1. [X1]\n2. [X3]", list)).toBe(1);
  });

  test("runs on from stage to stage", async () => {
    const [message] = await found("## One\n\n1. [K1]\n\n## Two\n\n1. [R1]");
    expect(message).toContain("Step 2.1 fits R1");
    expect(message).toContain("in step 1.1");
  });

  test("begins afresh after a stage with a reading", async () => {
    const body = (reading: string) =>
      `## One\n\n1. [K1]\n2. Measure ${reading}.\n\n## Two\n\n1. [R1]`;
    expect(await count(body("{read V(T1) = 12 V ± 5 %}"))).toBe(0);
    expect(await count(body("the voltage"))).toBe(1);
  });

  test("holds nothing against a part that is itself reported", async () => {
    expect(await count("## Board\n\n1. [T1]\n2. [R1–R8]\n3. [D1, D2]\n\n## Two\n\n1. [C1]")).toBe(
      1,
    );
  });

  test("names the parts of a mixed set that have to move, not all of it", async () => {
    const [message, ...more] = await found(
      "## Board\n\n1. [R1–R8, C1]\n2. [D1]\n3. [D2]\n4. [Q1–Q3]",
    );
    expect(message).toContain("Step 1.1 fits C1 (11 mm");
    expect(message).toContain("before lower parts, such as D1");
    expect(more).toEqual([]);
  });

  describe.each([
    ["put aside before", "1. Keep [later: R1].\n2. [K1]\n3. [R1]"],
    ["placed before", "1. [place: R1]\n2. [K1]\n3. [R1]"],
    ["pushed into a socket", "1. [K1]\n2. [insert: U1]"],
    ["of unknown height", "1. [K1]\n2. [A1]"],
    ["closed as a solder bridge", "1. [K1]\n2. [bridge: W1]"],
    ["left empty", "1. [K1]\n2. [empty: R1]"],
    ["made, not fitted", "1. [K1]\n2. [make: R1]"],
    ["fitted once more", "1. [R1]\n2. [K1]\n3. [R1]"],
    ["tried", "1. [K1]\n2. [try: Q1]\n3. [remove: Q1]"],
  ])("a part %s", (_, steps) => {
    test("is not reported", async () => {
      expect(await count(`## Board\n\n${steps}`)).toBe(0);
    });
  });

  describe.each([
    ["put aside before", "1. Keep [later: K1].\n2. [K1]\n3. [R1]"],
    ["pushed into a socket", "1. [insert: C1]\n2. [R1]"],
    ["of unknown height", "1. [A1]\n2. [R1]"],
    ["tried", "1. [try: K1]\n2. [R1]\n3. [remove: K1]"],
  ])("a tall part %s", (_, steps) => {
    test("is held against no other", async () => {
      expect(await count(`## Board\n\n${steps}`)).toBe(0);
    });
  });

  test("a placed part takes its turn where it is placed", async () => {
    expect(await count("## Board\n\n1. [K1]\n2. [place: R1]\n3. [R1]")).toBe(1);
    expect(await count("## Board\n\n1. [place: K1]\n2. [R1]\n3. [K1]")).toBe(1);
  });

  test("leaves parts out that are off the board", async () => {
    const body = "## Board\n\n1. [K1]\n2. [R1, R2]";
    expect(await count(body, LIST, "off-board: [K1]\n")).toBe(0);
    expect(await count(body, LIST, "off-board: [R1–R2]\n")).toBe(0);
  });

  test("of a choice between parts of one height counts one, of others none", async () => {
    expect(await count("## Board\n\n1. [K1]\n2. [R1 or R2]")).toBe(1);
    expect(await count("## Board\n\n1. [K1]\n2. [R1 or C1]")).toBe(0);
    const [message] = await found("## Board\n\n1. [K1]\n2. [R1 or R2]");
    expect(message).toContain("fits R1 or R2 (2.5 mm");
  });

  test("is kept for each board and each side", async () => {
    expect(await count("## A\n\n1. [C1]\n2. [R2]\n3. [K1]\n4. [R3]\n5. [C2]", BOARDS)).toBe(0);
    const [message, ...more] = await found("## A\n\n1. [C1]\n2. [C2]\n3. [R3]\n4. [K1]", BOARDS);
    expect(message).toContain("fits main/R3");
    expect(message).toContain("after main/C2");
    expect(more).toEqual([]);
  });

  test("takes the reason of an allow-comment, also for a whole stage", async () => {
    const why = "<!-- allow height-order: tested so -->";
    expect(await count(`## Board\n\n1. [K1]\n\n${why}\n\n2. [R1]`)).toBe(0);
    expect(await count(`## Board\n\n${why}\n\n1. [K1]\n2. [R1]\n3. [R2]`)).toBe(0);
  });
});
