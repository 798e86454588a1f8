/** Real parts lists of public projects: their values and packages are read sensibly. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import { describe, expect, test } from "vitest";
import { readValue } from "../../server/src/quantity/readValue.ts";
import { bodyHeight } from "../../server/src/trade/bodyHeight.ts";
import { type PartClass, type PartHints, partClass } from "../../server/src/trade/partClass.ts";

const FOLDER = "../shared/bom-corpus";
const present = existsSync(FOLDER);
if (!present) console.log(`skipped: values and packages of real lists, ${FOLDER} is not here`);

interface Row extends PartHints {
  readonly file: string;
  readonly designator: string;
  readonly letters: string;
  readonly partNumber: string;
}

const HEADERS = {
  designator: /^(designator|ref(des|erence)?(\(s\))?s?|parts?|part #)$/i,
  value: /^(value|comment|designation|name|component)$/i,
  package: /^(footprint|package|pattern)$/i,
  description: /^description$/i,
  partNumber: /^manufacturer part$/i,
};

/** Rows with a designator of all lists in the folder, read as plainly as their headers allow. */
function rows(): Row[] {
  return readdirSync(FOLDER)
    .filter((file) => /\.(csv|tsv|md)$/.test(file))
    .flatMap((file) => rowsOf(file, cellsOf(file)));
}

function cellsOf(file: string): string[][] {
  const bytes = readFileSync(join(FOLDER, file));
  const wide = bytes[0] === 0xff && bytes[1] === 0xfe;
  const text = new TextDecoder(wide ? "utf-16le" : "utf-8").decode(bytes);
  if (file.endsWith(".md")) {
    return text
      .split("\n")
      .filter((line) => /\|.*\|/.test(line))
      .map((line) =>
        line
          .replace(/^\s*\|/, "")
          .split("|")
          .map((cell) => cell.trim()),
      );
  }
  const delimiter = wide ? "\t" : /^(24|25)/.test(file) ? ";" : ",";
  return parse(text, { delimiter, relax_column_count: true, relax_quotes: true });
}

function rowsOf(file: string, cells: string[][]): Row[] {
  let at: { [key in keyof typeof HEADERS]?: number } = {};
  const found: Row[] = [];
  for (const row of cells) {
    const header = Object.entries(HEADERS).map(([key, words]) => [
      key,
      row.findIndex((cell) => words.test(cell.trim())),
    ]);
    if (header.filter(([, column]) => column !== -1).length >= 2) {
      at = Object.fromEntries(header.filter(([, column]) => column !== -1));
      continue;
    }
    const cell = (key: keyof typeof HEADERS) => row[at[key] ?? -1]?.trim() ?? "";
    const first = /^[\s]*([A-Za-z$]+)\d+/.exec(cell("designator"));
    if (!first) continue;
    found.push({
      file,
      designator: first[0].trim(),
      letters: first[1]!,
      value: cell("value"),
      package: cell("package"),
      description: cell("description"),
      partNumber: cell("partNumber"),
    });
  }
  return found;
}

/** Texts that give no value on purpose: order numbers, remarks, values that may be meant twice. */
const NO_VALUE = new Set([
  "DNI",
  "DNF",
  "*RST*",
  "ESD",
  "CH0402-50RGFTA",
  "NFM21PC475B1A3D",
  "NFM18CC223R1C3D",
  "RV09AF-40-20K-B10K",
  "PTA2053-2015DPB103",
  "LED",
  "Wurth 742792664",
  "SMD EMI Suppression Ferrite Beads",
]);

describe.skipIf(!present)("real parts lists", () => {
  const all = present ? rows() : [];

  test("are there", () => {
    expect(all.length).toBeGreaterThan(700);
  });

  test("have their resistors', capacitors' and coils' values read", () => {
    // Two lists keep the value in the description.
    const passive = all
      .filter(({ letters }) => /^(R|C|L|RV|RN|RR)$/.test(letters))
      .map((row) => ({ ...row, text: row.value || row.description || "" }))
      .filter(({ text }) => text !== "");
    const unread = passive
      .filter(({ letters, text }) => !readValue(text, letters).value)
      .map(({ text }) => text);
    expect(unread.filter((text) => !NO_VALUE.has(text))).toEqual([]);
    expect(unread.length / passive.length).toBeLessThan(0.05);
    expect(passive.length).toBeGreaterThan(400);
  });

  test("have the values that the makers' order numbers code", () => {
    // 0603WAF4703T5E holds 470 × 10³ Ω, CL10B104KB8NNNC 10 × 10⁴ pF. One list (30) names wrong parts.
    const coded = all
      .filter(({ file }) => !file.startsWith("30"))
      .flatMap((row) => {
        const code = /(?:WAF|TC)(\d{3})(\d)(?:T5E)?$|^CL\d\d[A-Z](\d\d)(\d)/.exec(row.partNumber);
        if (!code) return [];
        const [, ohms, tens, figures, zeros] = code;
        return [
          { row, amount: ohms ? Number(`${ohms}e${tens}`) : Number(`${figures}e${zeros}`) * 1e-12 },
        ];
      });
    expect(coded.length).toBeGreaterThanOrEqual(14);
    for (const { row, amount } of coded) {
      const read = readValue(row.value ?? "", row.letters).value?.amount;
      expect(read! / amount, `${row.file} ${row.value} ${row.partNumber}`).toBeCloseTo(1, 6);
    }
  });

  test("have no value read from type numbers", () => {
    const typed = all.filter(({ letters }) => /^(U|IC|Q)$/.test(letters));
    const read = typed
      .filter(({ value, letters }) => readValue(value ?? "", letters).value)
      .map(({ value }) => value);
    expect(read).toEqual(["25MHz TCXO"]);
  });

  test("have parts of the class that their letters and words tell", () => {
    const expected: { [letters: string]: PartClass[] } = {
      R: ["resistor", "potentiometer"],
      C: ["capacitor", "electrolytic", "resistor"],
      D: ["diode", "led"],
      Q: ["transistor", "crystal"],
      IC: ["ic"],
      Y: ["crystal"],
      TP: ["test point"],
      LED: ["led"],
      SW: ["switch"],
      L: ["inductor", "led"],
    };
    const odd = all
      .filter(
        (row) =>
          expected[row.letters] && !expected[row.letters]!.includes(partClass(row.letters, row)),
      )
      .map((row) => `${row.file} ${row.designator} ${row.value}: ${partClass(row.letters, row)}`);
    expect(odd).toEqual([]);
  });

  test("have plausible heights for most parts on the board that have a package", () => {
    const packaged = all.filter(({ package: name }) => name);
    const heights = packaged.map((row) => bodyHeight(row)?.mm);
    const known = heights.filter((mm) => mm !== undefined);
    expect(known.length / packaged.length).toBeGreaterThan(0.75);
    expect(Math.min(...known)).toBeGreaterThan(0.2);
    expect(Math.max(...known)).toBeLessThan(30);
  });
});
