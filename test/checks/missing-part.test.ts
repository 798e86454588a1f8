import { describe, expect, test } from "vitest";
import { kit, messages } from "./kit.ts";

const CODE = "missing-part";
const LIST = "Designator,Quantity,Value\nR1–R4,4,10k\nC1,1,100n";

describe("A missing part", () => {
  test("is information while the last stage is still empty, an error after that", async () => {
    const draft = await messages(kit("## Board\n\n1. Solder [R1–R4].\n\n## Test\n", LIST), CODE);
    expect(draft).toHaveLength(2);
    for (const one of draft) expect(one).toMatch(/^information: /);
    const done = await messages(kit("## Board\n\n1. Solder [R1–R4].", LIST), CODE);
    expect(done).toHaveLength(2);
    for (const one of done) expect(one).toMatch(/^error: /);
  });

  test("is named once in the guide and once at each line of the list", async () => {
    const found = await messages(kit("## Board\n\n1. Solder [R2].", LIST), CODE);
    expect(found).toEqual([
      expect.stringContaining("4 parts of the list are fitted in no step: C1, R1, R3 and R4."),
      expect.stringContaining("No step of the guide fits R1, R3 and R4"),
      expect.stringContaining("No step of the guide fits C1"),
    ]);
  });

  test.each([
    ["put aside", "1. Keep [later: C1]."],
    ["placed", "1. Put [place: C1] in."],
    ["tried", "1. Try [try: C1]."],
    ["declared empty", "1. Leave [empty: C1] free."],
  ])("that is %s and then forgotten is told of once", async (_, step) => {
    const found = await messages(kit(`## Board\n\n${step}\n2. Solder [all R].`, LIST), CODE);
    expect(found).toEqual([]);
  });

  test.each([
    ["tried and taken out", "1. Try [try: C1].\n2. Take [remove: C1] out."],
    ["matched", "1. Pick [match: C1+R1]."],
    ["only mentioned", "1. C1 is not soldered."],
  ])("that is %s and never fitted is missing", async (_, steps) => {
    const found = await messages(kit(`## Board\n\n${steps}\n3. Solder [all R].`, LIST), CODE);
    expect(found).toHaveLength(2);
  });

  test("is none where it is bridged, inserted, or one of a choice", async () => {
    const list = "Designator,Value\nJP1,jumper\nU1,TL072\nR1,1k\nR2,2k";
    const body =
      "## Board\n\n1. Close [bridge: JP1].\n2. Push in [insert: U1].\n3. Fit [R1 or R2].";
    expect(await messages(kit(body, list), CODE)).toEqual([]);
  });

  test("is not told of again where a mark names it by a slip of the pen", async () => {
    const list = "Designator,Value\nC26,47n\nC1,100n\nR1,1k";
    const slip = kit("## Board\n\n1. Solder [C62, R1].", list);
    expect(await messages(slip, "unknown-part")).toEqual([expect.stringContaining("C26?")]);
    expect(await messages(slip, CODE)).toEqual([
      expect.stringContaining("1 part of the list is fitted in no step: C1."),
      expect.stringContaining("No step of the guide fits C1"),
    ]);
  });

  test("bears the name of its board", async () => {
    const list = "Designator,Value,Board\nR1,1k,main\nR1,1k,relay";
    const found = await messages(kit("## Board\n\n1. Solder [main/R1].", list), CODE);
    expect(found[0]).toContain("1 part of the list is fitted in no step: relay/R1.");
  });
});
