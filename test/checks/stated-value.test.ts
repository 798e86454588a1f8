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

const LIST = `Designator,Value,Tolerance,Power,Voltage,Current,Description
"R1, R2",4k7,1 %,0.25 W,,,metal film
R3,10k,5 %,0.5 W,,,carbon film
C1,100n,10 %,,50 V,,ceramic
LED1,green,,,,,LED 3 mm
Q1,BC547B,,,,,NPN
F1,slow,,,,1 A,fuse
,M3x6,,,,,screw`;

function inTable(header: string, ...rows: string[]): Promise<string[]> {
  const cells = header.split("|").length;
  const lines = [header, "---|".repeat(cells).slice(0, -1), ...rows].map((line) => `| ${line} |`);
  return messages(kit(`## Board\n\n${lines.join("\n")}\n`, LIST), CODE);
}

describe("A table agrees with the list", () => {
  test.each<[string, string]>([
    ["Value | Fit", "4.7 kΩ | [R1, R2]"],
    ["Wert | Teil", "4,7k | [R1, R2]"],
    ["Value | Fit", "BC547 | [Q1]"],
    ["Value | Tolerance | Fit", "100 nF | 10 % | [C1]"],
    ["Power | Fit", "1/4 W | [R1, R2]"],
    ["Voltage | Fit", "50 V | [C1]"],
    ["Bands | Fit", "yellow violet black brown, brown | [R1, R2]"],
    ["Colour | Fit", "green | [LED1]"],
    ["Farbe | Fit", "grün | [LED1]"],
    ["Qty | Fit", "2 | [R1, R2]"],
    ["Anzahl | Fit", "4 × | [4 × M3x6]"],
    ["Qty | Fit", "1 | [R1 or R2]"],
    ["Part | Value", "R1, R2 | 4700 Ω"],
    ["Current | Fit", "1000 mA | [F1]"],
    ["Tolerance | Fit", "n/a | [C1]"],
    ["Power | Fit", "– | [R1, R2]"],
    // Readings, places and figures are no values of the part.
    ["Part | Voltage", "C1 | 8 V"],
    ["Part | Value", "Q1 | 8 V"],
    ["Part | Where", "R3 | 47k"],
    ["Part | Value", "R77 | 1k"],
    ["Value | See", "4 V | [see: power]"],
    ["Value | Fit", "{Iq = 4 mA} | [R3]"],
    ["Value | Fit", " | [R3]"],
  ])("%s: %s", async (header, row) => {
    expect(await inTable(header, row)).toEqual([]);
  });
});

describe("A table contradicts the list", () => {
  test.each<[string, string, string]>([
    ["Value | Fit", "47 kΩ | [R1, R2]", "4k7 for R1 and R2"],
    ["Wert | Teil", "47k | [R1, R2]", "4k7 for R1 and R2"],
    ["Value | Fit", "BC557 | [Q1]", "BC547B for Q1"],
    ["Value | Tolerance | Fit", "100 nF | 5 % | [C1]", "10 % for C1"],
    ["Power | Fit", "1/2 W | [R1, R2]", "0.25\u00a0W for R1 and R2"],
    ["Voltage | Fit", "25 V | [C1]", "50\u00a0V for C1"],
    ["Bands | Fit", "brown black orange gold | [R1, R2]", "yellow violet black brown brown"],
    ["Rings | Fit", "gold orange black brown | [R3]", "wrong way round"],
    ["Colour | Fit", "red | [LED1]", "green for LED1"],
    ["Qty | Fit", "3 | [R1, R2]", "it names 2 parts"],
    ["Qty | Fit", "3 | [4 × M3x6]", "it names 4 parts"],
    ["Part | Value", "R1, R2 | 47k", "4k7 for R1 and R2"],
    ["Qty | Fit", "2 | [R1 or R2]", "it names 1 part."],
    ["Current | Fit", "2 A | [F1]", "1\u00a0A for F1"],
    ["Part | Value", "Q1 | BC557", "BC547B for Q1"],
    ["Part | Value | Qty", "R1, R2 | 4k7 | 3", "it names 2 parts"],
  ])("%s: %s", async (header, row, says) => {
    const found = await inTable(header, row);
    expect(found).toHaveLength(1);
    expect(found[0]).toContain(says);
  });

  test("in that row alone", async () => {
    expect(await inTable("Value | Fit", "4.7 kΩ | [R1, R2]", "1 kΩ | [R3]")).toEqual([
      "warning: This row says 1 kΩ, but the parts list says 10k for R3. The builder believes one of the two: correct the wrong one.",
    ]);
  });
});
