import { describe, expect, test } from "vitest";
import { applyFix, checkFixture } from "../fixture.ts";
import { kit, messages } from "./kit.ts";

const CODE = "duplicate-part";
const LIST = "Designator,Quantity,Value\nR1–R4,4,10k\nQ1,1,BC547B\nU1,1,TL072";
const SOCKETED = `${LIST}\nU1,1,socket DIP-8`;

async function found(steps: string, list = LIST): Promise<string[]> {
  return messages(kit(`## Board\n\n${steps}`, list), CODE);
}

describe("Fitting a part twice", () => {
  test("in one mark is told as such", async () => {
    expect(await found("1. Solder [R1, R1–R4].")).toEqual([
      expect.stringContaining("R1 is named twice in step 1.1"),
    ]);
  });

  test("by insert twice, or by a plain mark after insert, is an error", async () => {
    expect(await found("1. Push in [insert: U1].\n2. Push in [insert: U1].")).toHaveLength(1);
    expect(await found("1. Push in [insert: U1].\n2. Solder [U1].")).toHaveLength(1);
  });

  test("links to the first place", async () => {
    const { diagnoses } = await checkFixture(
      kit("## Board\n\n1. Solder [R1].\n2. Solder [R1].", LIST),
      CODE,
    );
    expect(diagnoses).toHaveLength(1);
    expect(diagnoses[0]!.related.map((one) => one.message)).toEqual(["First fitted in step 1.1."]);
    expect(diagnoses[0]!.fixes()).toEqual([]);
  });

  test("by a set is mended by taking only the rest", async () => {
    const { files, diagnoses } = await checkFixture(
      kit("## Board\n\n1. Solder [R2].\n2. Solder [all R].", LIST),
      CODE,
    );
    const [fix] = diagnoses[0]!.fixes();
    expect(applyFix(files, fix!).get("guide.md")).toContain("2. Solder [rest of R].");
  });
});

describe("Naming a part twice is right", () => {
  test.each([
    ["placed, then soldered", "1. Put [place: Q1] in.\n2. Solder [Q1]."],
    ["put aside, then soldered", "1. Keep [later: Q1].\n2. Solder [Q1]."],
    ["tried, taken out, soldered", "1. Try [try: Q1].\n2. Take [remove: Q1] out.\n3. Solder [Q1]."],
    ["made, then soldered", "1. Make [make: Q1].\n2. Solder [Q1]."],
    ["soldered, taken out, soldered", "1. Fit [R1].\n2. Undo [remove: R1].\n3. Fit [R1]."],
    ["a socket, then its chip", "1. Solder [U1].\n2. Push in [insert: U1]."],
    ["one of a choice", "1. Solder [R1 or R2].\n2. For 12 V solder [R1]."],
    ["empty in one option", "1. For 12 V solder [R1].\n2. For 24 V leave [empty: R1] free."],
    ["sections of one part", "1. Solder [U1A, U1B]."],
    ["bridged later", "1. Solder [R1].\n2. Close [bridge: R1]."],
  ])("where it is %s", async (_, steps) => {
    expect(await found(steps)).toEqual([]);
  });

  test("where socket and chip share a designator in the list", async () => {
    expect(await found("1. Solder [U1].\n2. Solder [U1].", SOCKETED)).toEqual([]);
    expect(await found("1. Push in [insert: U1].\n2. Solder [U1].", SOCKETED)).toEqual([]);
    expect(await found("1. Fit [U1].\n2. Fit [U1].\n3. Fit [U1].", SOCKETED)).toHaveLength(1);
  });

  test("on two boards", async () => {
    const list = "Designator,Value,Board\nR1,1k,main\nR1,1k,relay";
    expect(await found("1. Solder [main/R1].\n2. Solder [relay/R1].", list)).toEqual([]);
  });
});
