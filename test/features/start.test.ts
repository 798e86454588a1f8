/** New guides begun from parts lists. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { startGuide } from "../../server/src/features/start/skeleton.ts";
import { readPartsList } from "../../server/src/model/list/read.ts";
import { Service } from "../../server/src/service.ts";
import { LANGUAGES } from "../../server/src/text/language.ts";
import { MemoryFiles } from "../memoryFiles.ts";

const CORPUS = join(import.meta.dirname, "../../../shared/bom-corpus");
const HERON = join(import.meta.dirname, "../../samples/heron/heron-parts.csv");

function begin(bytes: Uint8Array, path = "parts.csv", language: (typeof LANGUAGES)[number] = "en") {
  const list = readPartsList(`file:///kit/${path}`, bytes, { columns: {} });
  return startGuide({ title: "Wren", language, lists: [{ board: undefined, list, path }] });
}

const text = (list: string) => begin(new TextEncoder().encode(list));

/** What the checks find in the guide itself, as `severity code message`. */
async function faults(guide: string, bytes: Uint8Array, path = "parts.csv"): Promise<string[]> {
  const files = new MemoryFiles({
    "file:///kit/guide.md": guide,
    [`file:///kit/${path}`]: bytes,
  });
  const service = new Service(files);
  service.follow("file:///kit/guide.md");
  await service.settle();
  expect(service.guidesOf("file:///kit/guide.md")[0]!.stages.length).toBeGreaterThan(0);
  return service
    .takeChanges()
    .flatMap(({ diagnoses }) => diagnoses)
    .filter(({ code }) => !OF_THE_LIST.has(code))
    .filter(({ severity }) => severity === "error" || severity === "warning")
    .map(({ severity, code, message }) => `${severity} ${code} ${message}`);
}

/** Findings about the list are there before any guide is. */
const OF_THE_LIST = new Set(["repeated-designator", "designator-syntax", "count-mismatch"]);

describe("A new guide", () => {
  test("fits parts that are alike in one step, the lowest first", () => {
    const guide = text(
      'Designator,Value,Package\nC1,100u,CP_Radial_D8.0mm_H11.5mm\n"R1,R2,R3,R7",4k7,R_Axial_DIN0207_L6.3mm_D2.5mm\nR4,4.7k,R_Axial_DIN0207_L6.3mm_D2.5mm\nQ1,BC547,TO-92',
    );
    const steps = guide.split("\n").filter((line) => /^\d/.test(line));
    expect(steps).toEqual([
      "1. Solder the resistors [R1–R4, R7 = 4k7].",
      "2. Solder the transistor [Q1] (BC547).",
      "3. Solder the electrolytic capacitor [C1 = 100u].",
    ]);
  });

  test("tells a value that only the description has, and a type where there is no value", () => {
    const guide = text(
      "Part #,Qty,Description,Mfr. #\n" +
        "R1,1,Film resistor 10k ohms,RN55-1002F\nR2,1,Film resistor 330 ohms,RN55-3300F\n" +
        "C1,1,Ceramic 25V 0.1uF,08053C104\nQ1,1,NPN transistor TO-92,BC547B\n" +
        "Q2,1,PNP transistor TO-92,BC557B\nJ1,1,Terminal block,1935161\n" +
        ',4,"Spacer, nylon, 5 mm",SP-5',
    );
    const steps = guide.split("\n").filter((line) => /^\d/.test(line));
    expect(steps.map((step) => step.replace(/^\d+\. /, "")).sort()).toEqual([
      "Solder the capacitor [C1] (100\u00a0nF).",
      "Solder the connector [J1].",
      "Solder the resistor [R1] (10\u00a0kΩ).",
      "Solder the resistor [R2] (330\u00a0Ω).",
      "Solder the transistor [Q1] (BC547B).",
      "Solder the transistor [Q2] (BC557B).",
      "Use [4 × Spacer].",
    ]);
  });

  test("keeps apart what a builder must not mix up, and says what it is", () => {
    const guide = text(
      "Bezeichner;Bauteil;Wert\nLED1;LED rot;5mm\nLED2;LED grün;5mm\nR1;Widerstand 1 %;4,7k\nR2;Widerstand 1 %;4,7k\n" +
        "R3;Widerstand 5 %;4,7k\nRV1;Poti;10k log\nBZ1;Piezo-Summer;5V\nBT1;Batterieclip;9 V\n",
    );
    const steps = guide.split("\n").filter((line) => /^\d/.test(line));
    expect(steps.map((step) => step.replace(/^\d+\. /, "")).sort()).toEqual([
      "Solder the LED [LED1] (LED rot, 5 mm).",
      "Solder the LED [LED2] (LED grün, 5 mm).",
      "Solder the battery holder [BT1 = 9 V].",
      "Solder the part [BZ1] (Piezo-Summer, 5 V).",
      "Solder the potentiometer [RV1] (10k log).",
      "Solder the resistor [R3 = 4,7k].",
      "Solder the resistors [R1, R2 = 4,7k].",
    ]);
  });

  test("solders sockets with the rest and inserts the chips in a stage of their own", () => {
    const guide = text(
      "Designator,Value,Package\nU1,TL072,DIP-8\nXU1,DIP-8 socket,DIP-8_Socket\nR1,1k,R_Axial_DIN0207_L6.3mm_D2.5mm",
    );
    expect(guide.indexOf("[XU1]")).toBeLessThan(guide.indexOf("## Chips and fuses"));
    expect(guide.indexOf("[insert: U1]")).toBeGreaterThan(guide.indexOf("## Chips and fuses"));
  });

  test("has a stage for each board, and one for screws and cables", () => {
    const guide = text(
      'Designator,Qty,Value,Board\nR1,1,1k,main\nR1,1,2k,psu\nW1,1,ribbon,\n,4,M3x10,\n,2,"nut, M3",',
    );
    const headings = guide.split("\n").filter((line) => line.startsWith("## "));
    expect(headings).toEqual([
      "## Before you begin",
      "## Board main",
      "## Board psu",
      "## Mechanical parts",
    ]);
    expect(guide).toContain("<!-- board psu -->\n\n1. Solder the resistor [R1 = 2k].");
    expect(guide).toContain("1. Put the part [W1] (ribbon) in.\n2. Use [4 × M3x10].");
  });

  test("leaves out what is not to be fitted and says what is optional", () => {
    const guide = text("Designator,Value,Fitted\nR1,1k,yes\nR2,2k,DNP\nR3,3k,optional");
    expect(guide).toContain("[R1 = 1k].");
    expect(guide).not.toContain("R2");
    expect(guide).toContain("[R3 = 3k] (optional).");
  });

  test("keeps what a cell says from being taken for Markdown", async () => {
    const list = 'Designator,Value\nR1,"1k [*selected*] <b> {x}"\n';
    expect(text(list)).toContain("(1k \\[\\*selected\\*\\] \\<b\\> \\{x\\})");
    expect(await faults(text(list), new TextEncoder().encode(list))).toEqual([]);
  });

  test.each(LANGUAGES)(
    "in %s has nothing to complain about for a kit of two boards",
    async (language) => {
      const bytes = readFileSync(HERON);
      const guide = begin(bytes, "parts.csv", language);
      expect(guide).toContain(`language: ${language}`);
      expect(await faults(guide, bytes)).toEqual([]);
    },
  );
});

const present = existsSync(CORPUS);
if (!present) console.log("skipped: new guides from real lists, ../shared/bom-corpus is not here");

describe.skipIf(!present)("From real lists", () => {
  const names = present ? readdirSync(CORPUS).filter((name) => /\.(?:csv|tsv|md)$/.test(name)) : [];
  test.each(names.filter((name) => name !== "SOURCES.md"))(
    "%s makes a guide that fits every part once",
    async (name) => {
      const bytes = readFileSync(join(CORPUS, name));
      expect(await faults(begin(bytes, name), bytes, name)).toEqual([]);
    },
  );
});
