import { describe, expect, test } from "vitest";
import { applyFix, checkFixture } from "../fixture.ts";
import { kit, messages } from "./kit.ts";

const CODE = "value-marking";
const LIST = `Designator,Value,Tolerance,Description
R1,4k7,5 %,
R2,10k,1 %,
R3,4k7,,
L1,100uH,10 %,choke
C1,100n,,ceramic
C2,22p,,ceramic
C3,100u,,electrolytic
Q1,BC547,,`;

function found(step: string, more = ""): Promise<string[]> {
  return messages(kit(`## Board\n\n1. ${step}`, LIST, more), CODE);
}

describe("Bands agree with the list", () => {
  test.each([
    "Solder R1 (yellow violet red gold). [R1]",
    "Solder [R1]: yellow, violet, red and gold.",
    "Solder [R1], yellow-violet-red.",
    "Solder [R2] (brown black black red, brown).",
    "Solder [R2]; its rings are brown, black, orange, brown.",
    "Solder [R3] (yellow violet black brown brown) or any other tolerance.",
    "Solder [R1, R2], the first yellow violet red gold.",
    // A choke wears bands in microhenry: 10 × 10¹ µH.
    "Fit the choke [L1] (brown black brown silver).",
  ])("%s", async (step) => {
    expect(await found(step)).toEqual([]);
  });

  test.each([
    ["de", "Löte R1 ein (gelb-violett-rot-gold). [R1]"],
    ["fr", "Souder R1 (jaune, violet, rouge, or). [R1]"],
    ["nl", "Soldeer R1 (geel paars rood goud). [R1]"],
    ["es", "Soldar R1 (amarillo, violeta, rojo y oro). [R1]"],
  ])("in %s: %s", async (language, step) => {
    expect(await found(step, `language: ${language}\n`)).toEqual([]);
  });

  test("where other things have colours", async () => {
    for (const step of [
      "Solder [R1] between the red, black and white wires.",
      "Fit [Q1] (red, yellow, green).",
      "Connect the red, green, blue and white leads to [R1].",
      "Fit [C1] yellow violet red gold.",
    ]) {
      expect(await found(step)).toEqual([]);
    }
  });
});

describe("Bands contradict the list", () => {
  test("in value", async () => {
    expect(await found("Solder R1 (yellow violet orange gold). [R1]")).toEqual([
      "warning: The bands yellow violet orange gold say 47\u00a0kΩ ±5 %, but the parts list says 4k7 for R1. A builder who goes by the colours fits the wrong part. Correct the bands to yellow violet red gold, or the list.",
    ]);
  });

  test("of an inductor in microhenry", async () => {
    expect(await found("Fit the choke [L1] (brown black red).")).toEqual([
      "warning: The bands brown black red say 1\u00a0mH ±20 %, but the parts list says 100uH for L1. A builder who goes by the colours fits the wrong part. Correct the bands to brown black brown, or the list.",
    ]);
  });

  test("of a part whose tolerance the list leaves open: the run's own stays", async () => {
    const [message] = await found("Solder [R3] (brown brown black red gold).");
    expect(message).toContain("Correct the bands to yellow violet black brown gold, or the list.");
    const [four] = await found("Solder [R3] (brown brown red silver).");
    expect(four).toContain("Correct the bands to yellow violet red silver, or the list.");
  });

  test("in tolerance", async () => {
    expect(await found("Solder R2 (brown black orange gold). [R2]")).toEqual([
      "warning: The tolerance band says ±5 %, but the parts list says 1 % for R2. The builder looks for bands that are not on the part. Correct the bands to brown black black red brown, or the list.",
    ]);
  });

  test("in direction", async () => {
    expect(await found("Solder R1, its bands gold red violet yellow. [R1]")).toEqual([
      "warning: The bands gold red violet yellow stand the wrong way round: read from the other end they say 4k7 for R1. Correct the bands to yellow violet red gold, or the list.",
    ]);
  });

  test.each([
    ["de", "Löte R1 ein (gelb-violett-orange-gold). [R1]", "gelb violett rot gold"],
    ["fr", "Souder R1 (jaune violet orange or). [R1]", "jaune violet rouge or"],
    ["nl", "Soldeer R1 (geel violet oranje goud). [R1]", "geel violet rood goud"],
    ["es", "Soldar R1 (amarillo violeta naranja oro). [R1]", "amarillo violeta rojo oro"],
  ])("in %s: %s", async (language, step, right) => {
    const [message] = await found(step, `language: ${language}\n`);
    expect(message).toContain("47\u00a0kΩ");
    expect(message).toContain(`Correct the bands to ${right}`);
  });

  test("the sixth band, of which no list tells, stays in the fix", async () => {
    const [message] = await found("Solder [R2] (brown black black brown brown red).");
    // IEC 60062: red as the sixth band is 50 ppm/K.
    expect(message).toContain("Correct the bands to brown black black red brown red,");
  });

  test("when two marks have their bands exchanged", async () => {
    const both = "[R1] is brown black black red brown, [R2] is yellow violet red gold.";
    expect(await found(both)).toHaveLength(2);
  });

  test("and the fix keeps the signs between the words", async () => {
    const step = "Solder R1 (yellow-violet-orange, gold). [R1]";
    const one = await checkFixture(kit(`## Board\n\n1. ${step}`, LIST), CODE);
    const [fix] = one.diagnoses.flatMap((diagnosis) => diagnosis.fixes());
    expect(fix?.safe).toBe(false);
    const after = applyFix(one.files, fix!).get("guide.md")!;
    expect(after).toContain("(yellow-violet-red, gold)");
    expect(
      await messages(`--- file: guide.md\n${after}--- file: parts.csv\n${LIST}\n`, CODE),
    ).toEqual([]);
  });
});

describe("A printed mark", () => {
  test.each([
    "Fit the capacitor marked 104. [C1]",
    "Fit the capacitor marked 104K. [C1]",
    "Fit the capacitor marked 0.1. [C1]",
    "Fit the capacitor marked 100 nF. [C1]",
    "Fit the capacitor marked u1 or 104. [C1]",
    "Fit the capacitor marked 220. [C2]",
    "Fit the capacitor marked 22. [C2]",
    "Fit the capacitor marked 100 µF. [C3]",
    "Fit the chips marked 103 or 01C. [R2]",
    "Fit the choke marked 101. [L1]",
    "Fit [C1] into the hole marked 1, its value side up.",
    "Fit [C1] at the place marked C1 on the board.",
    "Fit [C3] marked 25 V.",
    "Fit [Q1], marked C547.",
    "Fit the capacitors marked 104 and 22. [C1, C2]",
  ])("agrees: %s", async (step) => {
    expect(await found(step)).toEqual([]);
  });

  test.each([
    ["Fit the capacitor marked 103. [C1]", "10\u00a0nF"],
    ["Fit the capacitor marked 100 pF. [C1]", "100\u00a0pF"],
    ["Fit the capacitor labelled “473”. [C1]", "47\u00a0nF"],
    ["Fit the chip marked 102. [R2]", "102\u00a0Ω or 1\u00a0kΩ"],
    ["Bestücke den Kondensator mit dem Aufdruck 103. [C1]", "10\u00a0nF"],
    ["Souder le condensateur marqué 103. [C1]", "10\u00a0nF"],
    ["Soldeer de condensator met opschrift 103. [C1]", "10\u00a0nF"],
    ["Soldar el condensador marcado con 103. [C1]", "10\u00a0nF"],
  ])("contradicts: %s", async (step, says) => {
    const messagesFound = await found(step);
    expect(messagesFound).toHaveLength(1);
    expect(messagesFound[0]).toContain(says);
  });
});
