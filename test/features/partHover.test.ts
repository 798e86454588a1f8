import { describe, expect, test } from "vitest";
import { hoverInGuide, hoverInList } from "../../server/src/features/hover.ts";
import { Service } from "../../server/src/service.ts";
import { MemoryFiles } from "../memoryFiles.ts";
import { atCursor } from "./cursor.ts";

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
    ["C1,4p7,,,,", "Printed: 4p7, 4.7."],
    ["C1,12p,,,,", "Printed: 120, 12, 12p."],
    ["L1,100uH,,,,", "Printed: 101, 100µ."],
    ["L1,1mH,10 %,,,L_Axial_L9.5mm", "Bands: brown black red, silver (10 %). Printed: 1m0."],
  ])("%s", async (line, says) => {
    expect(await hover(line)).toContain(says);
  });

  test("but not for chips without a mark, nor for parts without a value", async () => {
    const lines = ["C1,100n,10 %,,50 V,C_0805", "Q1,BC547,,,,TO-92", "C1,470u,20 %,,25 V,"];
    for (const line of [...lines, "C1,30p trimmer,,,,", "C1,30p,,,,C_Trimmer_D7.5mm"]) {
      const told = await hover(line);
      expect(told.some((one) => /Printed|Bands/.test(one))).toBe(false);
    }
  });
});

describe("The hover on a line of the list says of", () => {
  const LIST = `--- file: parts.csv
Board,Designator,Quantity,Value,Description,DNP,Optional
main,R3,1,2k,,x,
main,R4,1,2k,,,yes
,,820 mm,CuL 1.0,Enamelled wire,,
,,4,M3x10,Screw,,`;

  /** The paragraphs where the list has the text. */
  async function told(text: string, head = ""): Promise<readonly string[]> {
    const steps = "1. Fit [R4, 4 × M3x10].\n2. Fit [R4].\n3. Wind [80 mm × CuL 1.0].";
    const rows = LIST.replace(text, `¦${text}`);
    const { guide, list, offset } = await atCursor(
      `---\nparts: parts.csv\n${head}---\n\n## A\n\n${steps}\n${rows}`,
    );
    return hoverInList(guide, list!, offset)!.markdown.replaceAll("\\", "").split("\n\n");
  }

  test("parts that are left out, optional, or off the board", async () => {
    const out = await told("R3");
    expect(out[0]).toBe("**main/R3** 2k on board main");
    expect(out.slice(-2)).toEqual([
      "Not to be fitted, says the parts list.",
      "No step uses it yet.",
    ]);
    const optional = await told("R4", "off-board: [R4]\n");
    expect(optional).toContain("Off the board: no place in the height order.");
    expect(optional.slice(-2)).toEqual(["Optional.", "Fitted in steps 1.1, 1.2."]);
  });

  test("wire its length, and screws their number", async () => {
    expect(await told("CuL")).toEqual([
      "**CuL 1.0**",
      "Enamelled wire · 820 mm in the kit",
      "Fitted in step 1.3.",
    ]);
    expect(await told("Screw")).toEqual([
      "**M3x10**",
      "Screw · 4 in the kit",
      "Fitted in step 1.1.",
    ]);
  });

  test("a set that runs over many lines the first of them", async () => {
    const rows = Array.from({ length: 10 }, (_, i) => `R${i + 1},${i + 1}k`).join("\n");
    const { guide, uri, offset } = await atCursor(
      `---\nparts: parts.csv\n---\n\n1. Fit [all ¦R].\n--- file: parts.csv\nDesignator,Value\n${rows}`,
    );
    const blocks = hoverInGuide(guide, uri, offset)!.markdown.split("\n\n---\n\n");
    expect(blocks).toHaveLength(9);
    expect(blocks.at(-1)).toBe("… and 2 more lines of the parts list.");
  });
});
