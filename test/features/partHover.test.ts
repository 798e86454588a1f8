import { describe, expect, test } from "vitest";
import { hoverInGuide } from "../../server/src/features/hover.ts";
import { Service } from "../../server/src/service.ts";
import { MemoryFiles } from "../memoryFiles.ts";

const GUIDE = "---\nparts: parts.csv\n---\n\n## Board\n\n1. Fit [X].\n";
const HEAD = "Designator,Value,Tolerance,Power,Voltage,Package";

/** The paragraphs of the hover on the one part of a list. */
async function hover(line: string, figures = ""): Promise<readonly string[]> {
  const files = new MemoryFiles();
  const name = line.split(",", 1)[0]!;
  const text = `${GUIDE.replace("X", name)}${figures}`;
  files.set("file:///kit/guide.md", text);
  files.set("file:///kit/parts.csv", `${HEAD}\n${line}\n`);
  const service = new Service(files);
  service.follow("file:///kit/guide.md");
  await service.settle();
  const [guide] = service.guidesOf("file:///kit/guide.md");
  const found = hoverInGuide(guide!, "file:///kit/guide.md", text.indexOf("[") + 1);
  return found!.markdown.replaceAll("\\", "").replaceAll("\u00a0", " ").split("\n\n");
}

describe("The hover on a part says what it stands", () => {
  // Ohm's law; derating from 70 °C to 155 °C as in makers' data sheets of film resistors.
  test("for a quarter-watt resistor of 4.7 kΩ", async () => {
    expect(await hover("R1,4k7,1 %,0.25 W,,")).toContain(
      "Stands 0.25 W up to 70 °C: at most 34.3 V, 7.29 mA; less above, nothing at 155 °C (film resistors).",
    );
  });

  // Above 250 kΩ the working voltage of the quarter-watt type, 250 V, limits it.
  test("for one of 1 MΩ", async () => {
    expect(await hover("R1,1M,1 %,0.25 W,,")).toContain(
      "Stands 0.25 W up to 70 °C, and at most 250 V, the working voltage of such resistors; less above, nothing at 155 °C (film resistors).",
    );
  });

  // C V² / 2: 4700 µF at 63 V hold 9.33 J.
  test("for a capacitor", async () => {
    expect(await hover("C1,4700u,20 %,,63 V,")).toContain(
      "Stands 63 V; charged to that it holds 9.33 J.",
    );
    expect(await hover("C1,100n,10 %,,50 V,")).toContain("Stands 50 V.");
  });

  test("and the share of it that figures declare", async () => {
    const line = "R1,4k7,1 %,0.25 W,,";
    expect(await hover(line, "   {P(R1) = 0.1 W}\n")).toContain(
      "Bears P up to 0.1 W, 40 % of 0.25 W.",
    );
    expect(await hover(line, "   {P(R1) = 1 mW}\n")).toContain(
      "Bears P up to 1 mW, less than 1 % of 0.25 W.",
    );
  });

  test("and nothing where the list gives no rating", async () => {
    const told = await hover("R1,4k7,,,,");
    expect(told.some((one) => one.startsWith("Stands"))).toBe(false);
  });
});

describe("The hover on a part says how it is marked", () => {
  // IEC 60062: bands and letter code; EIA-96 marks in its annex A.
  test.each([
    ["R1,4k7,1 %,,,", "Bands: yellow violet black brown, brown (1 %). Printed: 4K7."],
    ["R1,4k7,5 %,,,", "Bands: yellow violet red, gold (5 %). Printed: 4K7."],
    [
      "R1,4k7,,,,",
      "Bands: yellow violet red, or yellow violet black brown, and one for the tolerance. Printed: 4K7.",
    ],
    ["R1,0R47,5 %,,,", "Bands: yellow violet silver, gold (5 %). Printed: R47."],
    ["R1,0,,,,", "Bands: one, black."],
    ["R1,10k,1 %,,,R_0805", "Printed: 103, 1002, 01C (EIA-96)."],
    ["R1,4R7,1 %,,,R_0805", "Printed: 4R7."],
    ["C1,100n,10 %,,50 V,", "Printed: 104, 100n."],
    ["C1,4p7,,,,", "Printed: 4p7."],
    ["L1,100uH,,,,", "Printed: 101, 100µ."],
  ])("%s", async (line, says) => {
    expect(await hover(line)).toContain(says);
  });

  test("but not for chips without a mark, nor for parts without a value", async () => {
    for (const line of ["C1,100n,10 %,,50 V,C_0805", "Q1,BC547,,,,TO-92", "C1,470u,20 %,,25 V,"]) {
      const told = await hover(line);
      expect(told.some((one) => /Printed|Bands/.test(one))).toBe(false);
    }
  });
});
