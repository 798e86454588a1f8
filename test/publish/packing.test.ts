/** The packing list, by what it says: every line of the parts list once, and sums that agree. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { load } from "cheerio";
import { parse } from "csv-parse/sync";
import { HtmlValidate } from "html-validate";
import { beforeAll, describe, expect, test } from "vitest";
import { PACK_BY, type PackBy } from "../../server/src/publish/packing/packingList.ts";
import { fixture } from "../fixture.ts";
import { type Published, publishFiles, publishFixture, publishSample, seen } from "./published.ts";

interface Row {
  readonly group: string;
  readonly status: "packed" | "made" | "unfitted";
  readonly pieces: string;
  readonly spare: string;
  readonly lengthMm: string;
  readonly name: string;
  readonly details: string;
  readonly parts: string;
  readonly kind: string;
  readonly board: string;
  readonly notes: string;
  readonly listLine: string;
}

/** As a program that is not ours reads them. */
function rowsOf(published: Published): Row[] {
  return parse(published.text("packing-list.csv"), { columns: true, bom: true }) as Row[];
}

function sum(rows: readonly Row[], field: "pieces" | "spare" | "lengthMm"): number {
  return rows.reduce((total, row) => total + Number(row[field]), 0);
}

function pack(text: string, packBy?: PackBy): Promise<Published> {
  return publishFiles(fixture(text).files, "guide.md", ["packing"], { ...(packBy && { packBy }) });
}

function kit(steps: string, list: string, head = ""): string {
  return `---\ntitle: Wren\nparts: parts.csv\n${head}---\n${steps}\n--- file: parts.csv\n${list}\n`;
}

/** The numbers in `2, 5–7`. */
function linesIn(listLine: string): number[] {
  return listLine.split(", ").flatMap((run) => {
    const [first, last = first] = run.split("–").map(Number) as [number, number?];
    return Array.from({ length: last - first + 1 }, (_, index) => first + index);
  });
}

describe.each(PACK_BY)("Heron by %s", (by) => {
  let published: Published;
  let rows: Row[];
  /** The parts list as an independent reader has it. */
  const list = parse(
    readFileSync(join(import.meta.dirname, "../../samples/heron/heron-parts.csv"), "utf8"),
    { columns: true },
  ) as { Reference: string; Qty: string; DNP: string; Spare: string; Value: string }[];

  beforeAll(async () => {
    published = await publishSample("heron", "heron.md", ["packing"], { packBy: by });
    rows = rowsOf(published);
  });

  test("holds of each line, or of those of one kind, what the parts list says", () => {
    const told = new Set(rows.map(({ listLine }) => listLine));
    const numbers = [...told].flatMap(linesIn);
    expect(numbers.sort((a, b) => a - b)).toEqual(list.map((_, index) => index + 2));
    for (const listLine of told) {
      const lines = linesIn(listLine).map((number) => list[number - 2]!);
      const [line] = lines as [(typeof list)[number]];
      const own = rows.filter((row) => row.listLine === listLine);
      const length = /^(\d+) mm$/.exec(line.Qty);
      // The leads W2 and W3 are made of cable that has a line of its own.
      const isPacked = line.DNP === "" && line.Reference !== "W2, W3";
      if (length) expect(sum(own, "lengthMm")).toBe(Number(length[1]));
      else
        expect(sum(own, "pieces"), line.Value).toBe(
          isPacked ? lines.reduce((total, { Qty }) => total + Number(Qty), 0) : 0,
        );
    }
  });

  test("has the same sums on paper", () => {
    const page = load(published.text("packing-list.html"));
    const packed = rows.filter(({ status }) => status === "packed");
    const pieces = sum(packed, "pieces");
    expect(pieces).toBe(249);
    const lengths = packed.filter(({ lengthMm }) => lengthMm !== "");
    expect(seen(page(".total").text())).toBe(
      `Total: 112 lines · ${pieces} pieces · ${sum(packed, "spare")} of them spare · ${lengths.length} lengths of wire or cable`,
    );
    const quantities = page("tbody tr")
      .toArray()
      .map((row) => seen(page(row).find("td.right").first().text()))
      .filter((text) => /^\d+$/.test(text));
    expect(quantities.reduce((total, text) => total + Number(text), 0)).toBe(pieces);
  });

  test("names each part once", () => {
    const names = rows.flatMap((row) => {
      return row.parts.split(", ").flatMap((name) => {
        const ends = /^(\D+)(\d+)–\D+(\d+)$/.exec(name);
        if (!ends) return name === "" ? [] : [name];
        const [, letters, from, to] = ends;
        const count = Number(to) - Number(from) + 1;
        return Array.from({ length: count }, (_, index) => `${letters}${Number(from) + index}`);
      });
    });
    expect(names).toHaveLength(new Set(names).size);
    expect(new Set(names)).toEqual(new Set(published.guide.parts.map(({ name }) => name)));
  });

  test("has a box with a name of its own for each row, and no fault", () => {
    const page = load(published.text("packing-list.html"));
    const labels = page("input[type=checkbox]")
      .toArray()
      .map((one) => page(one).attr("aria-label"));
    expect(labels).toHaveLength(rows.filter(({ status }) => status === "packed").length);
    expect(labels.every((label) => /^Packed: ./.test(label ?? ""))).toBe(true);
    expect(published.faults).toEqual([]);
  });

  test("is valid HTML that runs and fetches nothing", async () => {
    const text = published.text("packing-list.html");
    const validator = new HtmlValidate({
      extends: ["html-validate:recommended"],
      rules: { "no-trailing-whitespace": "off" },
    });
    const { results } = await validator.validateString(text);
    expect(results.flatMap(({ messages }) => messages)).toEqual([]);
    expect(text).not.toMatch(/<script|https?:|url\(/);
  });
});

test("screws are shared out to the stages that need them, the rest and the spares with the last", async () => {
  const published = await publishSample("heron", "heron.md", ["packing"], { packBy: "stage" });
  const screws = rowsOf(published).filter(({ name }) => name === "M3x6");
  expect(screws.map(({ group, pieces, spare }) => [group, pieces, spare])).toEqual([
    ["12 Fit the relay and the panels", "20", "0"],
    ["14 Close the case", "6", "2"],
  ]);
});

test("what the steps use beyond the list is told once, by its line", async () => {
  const list = 'Designator,Quantity,Value\n,4,M3x10\n,820 mm,CuL 1.0\n"C1, C2",1,1u';
  const steps =
    "## A\n1. Fit [2 × M3x10, C1, C2].\n\n## B\n1. Fit [3 × M3x10], [900 mm × CuL 1.0].";
  const { faults } = await pack(kit(steps, list), "stage");
  expect(faults.map((one) => one.split(". ")[0])).toEqual([
    "The guide uses 5 of M3x10, but line 2 of the parts list supplies 4",
    "The guide uses 900 mm of CuL 1.0, but line 3 of the parts list supplies 820 mm",
    "Line 4 of the parts list supplies 1 of C1 and C2, which are 2 parts",
  ]);
});

test("what is lent to a stage lies with it, and what no step uses by itself", async () => {
  const list =
    "Designator,Quantity,Value,Optional,Spare\nR1,1,1k,yes,\n,5,M4x10,,1\n,4,M5x10,,\n,,M6x10,,";
  const steps =
    "## A\n1. Try [try: 2 × M4x10].\n2. Take out [remove: 2 × M4x10].\n\n## B\n1. Fit [3 × M4x10], [R1].";
  const rows = rowsOf(await pack(kit(steps, list), "stage"));
  expect(rows.map(({ group, name, pieces, spare }) => [group, name, pieces, spare])).toEqual([
    ["1 A", "M4x10", "2", "0"],
    ["2 B", "1 kΩ", "1", "0"],
    ["2 B", "M4x10", "3", "1"],
    ["Used in no step", "M5x10", "4", "0"],
    ["Used in no step", "M6x10", "", "0"],
  ]);
  expect(rows[1]!.notes).toBe("optional");
});

test("a lot to pick from stays together where it is picked", async () => {
  const published = await publishSample("heron", "heron.md", ["packing"], { packBy: "stage" });
  const [lot] = rowsOf(published).filter(({ name }) => name === "IRF510");
  expect(lot).toMatchObject({ group: "1 Sort and pick the parts", pieces: "4" });
  expect(lot!.notes).toContain("2 more than places");
});

test("wire says what becomes of it, and what is made of it is not packed as such", async () => {
  const published = await publishSample("heron", "heron.md", ["packing"]);
  const rows = rowsOf(published);
  expect(rows.find(({ name }) => name === "CuL 0.4")).toMatchObject({
    lengthMm: "2600",
    notes: "for L1–L4, T1, T101",
  });
  expect(rows.find(({ parts }) => parts === "W2, W3")).toMatchObject({
    status: "made",
    pieces: "0",
  });
  // Wound on a core that its line supplies.
  expect(rows.find(({ parts }) => parts === "L1–L4")).toMatchObject({
    status: "packed",
    pieces: "4",
  });
  const page = load(published.text("packing-list.html"));
  const made = page("h2:contains('Made by the builder') + div tr").toArray();
  const t101 = made.map((row) => seen(page(row).text())).find((text) => text.startsWith("T101"));
  expect(seen(page(made.at(-1)!).text())).toBe("W2, W3300 mm × RG-174");
  expect(t101).toBe("T101core only: toroid 12.7 mm, ferrite, black + 500 mm × CuL 0.4");
});

test("what the list leaves empty, and what the builder brings, stand apart", async () => {
  const published = await publishSample("heron", "heron.md", ["packing"]);
  const page = load(published.text("packing-list.html"));
  const apart = page("h2:contains('Not in the kit') + ul li").toArray();
  const texts = apart.map((one) => seen(page(one).text()));
  expect(texts).toContain("R27 10 kΩ 1 %: The place stays empty");
  expect(texts).toContain("dummy load 50 Ω, 10 W");
});

const BAGS = `Designator,Quantity,Value,Bag
R1-R3,3,1k,10
C1,1,100n,2
D1,1,1N4148,
,4,M3x6,Bag A`;

test("bags of the list come in the order of their names, what has none last", async () => {
  const text = kit("## A\n1. Fit [R1–R3, C1, D1] and [4 × M3x6].", BAGS);
  const rows = rowsOf(await pack(text));
  expect(rows.map(({ group, parts }) => [group, parts])).toEqual([
    ["Bag 2", "C1"],
    ["Bag 10", "R1–R3"],
    ["Bag A", ""],
    ["Without a bag", "D1"],
  ]);
});

test("without bags and steps the kinds of parts are the groups", async () => {
  const list = "Designator,Quantity,Value\nR1,1,1k\nC1,1,100n\nQ1,1,BC547";
  const rows = rowsOf(await pack(kit("Nothing yet.", list)));
  expect(rows.map(({ group }) => group)).toEqual([
    "Resistors and potentiometers",
    "Capacitors",
    "Semiconductors and crystals",
  ]);
});

test("each line is packed under a name, also one that repeats a designator", async () => {
  const list = [
    "Designator,Quantity,Value,Description,Footprint",
    "R1,1,1k,,",
    "R1,1,2k,,",
    "W1,1,link,,",
    "JP1,1,,Jumper,",
    "XTAL,1,,,HC-49",
  ].join("\n");
  const published = await pack(kit("## A\n1. Fit [R1], [W1], [JP1], [XTAL].", list), "kind");
  expect(published.faults).toEqual([]);
  const rows = rowsOf(published).map(({ name, parts, kind }) => [name, parts, kind]);
  expect(rows).toEqual([
    ["1 kΩ", "R1", "resistors"],
    ["2 kΩ", "R1", "resistors"],
    ["HC-49", "XTAL", "semiconductors"],
    ["Jumper", "JP1", "electrical"],
    ["link", "W1", "wire"],
  ]);
  const staged = rowsOf(await pack(kit("## A\n1. Fit [R1].", list), "stage"));
  expect(staged.find(({ name }) => name === "2 kΩ")).toMatchObject({
    group: "Used in no step",
    pieces: "1",
  });
});

test("a socket that shares its designator with the chip is packed too", async () => {
  const list =
    "Designator,Quantity,Value,Footprint\nU1,1,TL072,DIP-8\nU1,1,DIP-8 socket,DIP-8_Socket";
  const rows = rowsOf(await pack(kit("## A\n1. Fit the socket, then [insert: U1].", list)));
  expect(rows.map(({ name, parts, pieces }) => [name, parts, pieces])).toEqual([
    ["TL072", "U1", "1"],
    ["DIP-8 socket", "U1", "1"],
  ]);
});

describe("a list with a row for each part", () => {
  const list = [
    "Designator,Quantity,Value,Tolerance,Voltage,Package,Bag,Spare",
    "R1,1,4k7,1 %,,DIN0207,A,",
    "C1,1,100n,,50 V,5 mm,A,",
    "R2,1,4.7k,1 %,,DIN0207,A,1",
    "R3,1,4k7,5 %,,DIN0207,A,",
    "R4,1,4k7,1 %,,DIN0411,A,",
    "R5,1,4k7,1 %,,DIN0207,B,",
    "C2,1,100n,,100 V,5 mm,A,",
    "R6,1,4k7,1 %,,DIN0207,A,",
  ].join("\n");
  const steps = "## A\n1. Fit [R1–R3].\n\n## B\n1. Fit [R4–R6, C1, C2].";

  test("has equal parts of a bag in one row, and no others", async () => {
    const published = await pack(kit(steps, list), "bag");
    expect(published.faults).toEqual([]);
    const rows = rowsOf(published).map(({ parts, pieces, spare, listLine }) =>
      [parts, pieces, spare, listLine].join(" | "),
    );
    expect(rows).toEqual([
      "R1, R2, R6 | 4 | 1 | 2, 4, 9",
      "C1 | 1 | 0 | 3",
      "R3 | 1 | 0 | 5",
      "R4 | 1 | 0 | 6",
      "C2 | 1 | 0 | 8",
      "R5 | 1 | 0 | 7",
    ]);
    const page = load(published.text("packing-list.html"));
    expect(seen(page("tbody tr").first().text())).toContain("44.7 kΩ 1 % DIN0207R1, R2, R6");
    expect(seen(page(".total").text())).toBe("Total: 6 lines · 9 pieces · 1 of them spare");
  });

  test("is shared out by stage, with its spare at the last", async () => {
    const published = await pack(kit(steps, list), "stage");
    expect(published.faults).toEqual([]);
    const own = rowsOf(published).filter(({ listLine }) => listLine === "2, 4, 9");
    expect(own.map(({ group, parts, pieces }) => [group, parts, pieces])).toEqual([
      ["1 A", "R1, R2", "2"],
      ["2 B", "R6", "2"],
    ]);
  });

  test("has its lines in few words, however many they are", async () => {
    const rows = [...Array(40)].map((_, index) => `R${index + 1},1,4k7`);
    const many = `Designator,Quantity,Value\n${rows.join("\n")}`.replace("R20,1,4k7", "R20,1,10k");
    const published = await pack(kit("## A\n1. Fit [R1–R40].", many), "kind");
    expect(rowsOf(published).map(({ listLine }) => listLine)).toEqual(["2–20, 22–41", "21"]);
  });

  test("that lacks a piece is told of by its line", async () => {
    const lacking = list.replace("R2,1,", '"R2, R7",1,');
    const { faults } = await pack(kit(steps, lacking), "bag");
    expect(faults.join()).toMatch(/Line 4 of the parts list supplies 1 of R2 and R7/);
  });

  test("has equal parts of a stage in one row of its table", async () => {
    const published = await publishFixture(kit(steps, list), ["guide"]);
    const rows = published.page()("#stage-1 table.parts tbody tr").toArray();
    const first = rows.map((row) => seen(published.page()(row).children().first().text()));
    expect(first).toEqual(["R1, R2", "R3"]);
  });
});

// ASME Y14.44-2008 2.1.3: U3A and U3B are sections of one U3.
test.each(PACK_BY)("sections of one chip are one piece, by %s", async (by) => {
  const list = 'Designator,Quantity,Value\n"U3A, U3B",1,TL072\n"U4A, U4B",2,TL072';
  const published = await pack(
    kit("## A\n1. Fit [U3A, U4A].\n\n## B\n1. Fit [U3B, U4B].", list),
    by,
  );
  expect(published.faults).toEqual([]);
  const rows = rowsOf(published);
  expect(
    sum(
      rows.filter(({ listLine }) => listLine === "2"),
      "pieces",
    ),
  ).toBe(1);
  expect(
    sum(
      rows.filter(({ listLine }) => listLine === "3"),
      "pieces",
    ),
  ).toBe(2);
});

describe("amounts that disagree are told and stop it", () => {
  test.each<[string, string, string, RegExp]>([
    [
      "the steps use more screws than there are",
      "## A\n1. Use [4 × M3x6].\n\n## B\n1. Use [4 × M3x6].",
      "Designator,Quantity,Value\n,6,M3x6",
      /8 of M3x6, but line 2 of the parts list supplies 6/,
    ],
    [
      "fewer pieces than designators",
      "## A\n1. Fit [R1–R4].",
      "Designator,Quantity,Value\nR1-R4,3,1k",
      /Line 2 of the parts list supplies 3 of R1–R4, which are 4 parts/,
    ],
    [
      "more wire than supplied",
      "## A\n1. Cut [300 mm × CuL 0.5].",
      "Designator,Quantity,Value\n,200 mm,CuL 0.5",
      /300 mm of CuL 0.5, but line 2 of the parts list supplies 200 mm/,
    ],
  ])("%s", async (_, steps, list, told) => {
    for (const by of PACK_BY) {
      const published = await pack(kit(steps, list), by);
      expect(published.faults.join("\n")).toMatch(told);
      expect(published.text("packing-list.html")).toContain("Do not pack by this list.");
    }
  });
});

test.each([
  ["de", "Packliste", "Beutel 2", "Summe"],
  ["fr", "Liste de colisage", "Sachet 2", "Total"],
  ["nl", "Paklijst", "Zakje 2", "Totaal"],
  ["es", "Lista de embalaje", "Bolsa 2", "Total"],
])("in %s the list speaks the language of its guide", async (language, title, bag, total) => {
  const text = kit("## A\n1. [R1–R3, C1, D1] [4 × M3x6].", BAGS, `language: ${language}\n`);
  const page = load((await pack(text)).text("packing-list.html"));
  expect(page("html").attr("lang")).toBe(language);
  expect(page("h1").text()).toBe(`Wren: ${title}`);
  expect(page("h2").first().text()).toBe(bag);
  expect(page("tfoot th").first().text()).toBe(total);
});

test("a list's texts are never taken for formulas or for HTML", async () => {
  const list = `Designator,Quantity,Value,Description\nR1,1,=1+1,"=HYPERLINK(""x"")"\nR2,1,<b>x</b>,@a`;
  const published = await pack(kit("## A\n1. Fit [R1, R2].", list));
  const [first, second] = rowsOf(published);
  expect([first!.name, first!.details]).toEqual(["'=1+1", `'=HYPERLINK("x")`]);
  expect(second!.details).toBe("'@a");
  expect(load(published.text("packing-list.html"))("b").length).toBe(0);
});
