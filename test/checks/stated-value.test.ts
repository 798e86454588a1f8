import { describe, expect, test } from "vitest";
import { applyFix, checkFixture } from "../fixture.ts";
import { kit, messages } from "./kit.ts";

const CODE = "stated-value";

async function found(mark: string, list: string): Promise<string[]> {
  const head = list.startsWith("Designator") ? "" : "Designator,Value\n";
  return messages(kit(`## Board\n\n1. Solder [${mark}].`, head + list), CODE);
}

describe("A stated value agrees with the list's", () => {
  // Letter-and-digit code, IEC 60062: 4K7 is 4.7 kΩ, 2R2 is 2.2 Ω, p33 is 0.33 pF, 4n7 is 4.7 nF.
  test.each([
    ["R1 = 4k7", "R1,4K7"],
    ["R1 = 4.7 kΩ", "R1,4k7"],
    ["R1 = 4,7k", "R1,4700"],
    ["R1 = 2.2 Ω", "R1,2R2"],
    ["R1 = 4k7", "R1,4k7 1% 0.25W"],
    ["C1 = 0.33 pF", "C1,p33"],
    ["C1 = 100n", "C1,0.1uF"],
    ["C1 = 100 nF", "C1,104"],
    ["C1 = 100n", "C1,100n/50V"],
    ["R1 = 5k1", "R1,4k7 or 5k1"],
  ])("as a quantity: [%s] and %s", async (mark, list) => {
    expect(await found(mark, list)).toEqual([]);
  });

  test.each([
    ["Q1 = BC547", "Q1,BC547B"],
    ["Q1 = BC547B", "Q1,BC547"],
    ["Q1 = bc 547 b", "Q1,BC547B"],
    ["U1 = TL072", "U1,TL072CP"],
    ["D1 = 1N4148", "D1,1N4148"],
    ["LED1 = red", "LED1,LED red 3mm"],
    ["LED1 = red", "LED1,red 3mm"],
    ["Q1 = BD139", "Designator,Value,Part number\nQ1,NPN,BD139-16"],
  ])("as a type: [%s] and %s", async (mark, list) => {
    expect(await found(mark, list)).toEqual([]);
  });

  test("where the list gives no value at all", async () => {
    expect(await found("R1 = 4k7", "R1,")).toEqual([]);
  });

  test("where it means the socket that shares the designator", async () => {
    expect(await found("U1 = DIP-8 socket", "U1,TL072\nU1,DIP-8 socket")).toEqual([]);
  });
});

describe("A stated value differs from the list's", () => {
  test.each([
    ["R1 = 4k7", "R1,47k"],
    ["R1 = 10", "R1,10 k"],
    ["C1 = 100n", "C1,10n"],
    ["Q1 = BC557", "Q1,BC547B"],
    ["U1 = LM31", "U1,LM317"],
    ["LED1 = red", "LED1,green 3mm"],
  ])("[%s] and %s", async (mark, list) => {
    expect(await found(mark, list)).toHaveLength(1);
  });

  test("for some of the parts: those are named with their values", async () => {
    expect(await found("R1–R5 = 4k7", "R1,4k7\nR2,47k\nR3,47k\nR4,4k7\nR5,470")).toEqual([
      "warning: This step says 4k7, but the parts list says 47k for R2; 47k for R3; 470 for R5. The builder believes one of the two: correct the wrong one.",
    ]);
  });

  test("and the fix writes the list's, unless the list gives several", async () => {
    const one = await checkFixture(
      kit("## Board\n\n1. Solder [R1, R2 = 4k7].", 'Designator,Value\n"R1, R2",47k'),
      CODE,
    );
    const fixes = one.diagnoses.flatMap((diagnosis) => diagnosis.fixes());
    expect(fixes.map((fix) => applyFix(one.files, fix).get("guide.md"))).toEqual([
      one.files.get("guide.md")!.replace("4k7", "47k"),
    ]);
    const several = await checkFixture(
      kit("## Board\n\n1. Solder [R1, R2 = 4k7].", "Designator,Value\nR1,47k\nR2,10k"),
      CODE,
    );
    expect(several.diagnoses.map((diagnosis) => diagnosis.fixes())).toEqual([[]]);
  });
});
