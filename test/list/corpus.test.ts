/**
 * Real parts lists of public projects, read where they lie beside the project. Expected numbers
 * were found by reading the files; rows and n (designators after expanding lists and ranges,
 * repeats counted) agree with the SOURCES.md beside them, but for the differences that are noted.
 */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import { describe, expect, test } from "vitest";
import { loadPartsList } from "../../server/src/model/list/load.ts";
import { cellsOf, type ListLine, type PartsList } from "../../server/src/model/list/partsList.ts";

import type { Unit } from "../../server/src/quantity/value.ts";
import { LineIndex } from "../../server/src/text/lines.ts";

const FOLDER = "../shared/bom-corpus";
const present = existsSync(FOLDER);
if (!present) console.log(`skipped: counts and cells of real lists, ${FOLDER} is not here`);

const known = new Map<string, PartsList>();
if (present) {
  for (const file of readdirSync(FOLDER)) {
    const bytes = new Uint8Array(readFileSync(join(FOLDER, file)));
    known.set(file, await loadPartsList(`file:///${file}`, bytes));
  }
}

function read(file: string): PartsList {
  return known.get(file)!;
}

interface Expected {
  readonly file: string;
  readonly encoding?: string;
  /** Lines of the list with or without designators; totals and titles are none. */
  readonly rows: number;
  readonly n: number;
  /** Headers of the columns; none where the list has no such column. */
  readonly columns: { readonly [meaning: string]: string };
  /** File lines marked do-not-fit. */
  readonly leftOut?: readonly number[];
  /** File lines whose parts are all optional. */
  readonly optional?: readonly number[];
  /** File lines without designators. */
  readonly hardware?: readonly number[];
  /** Findings as `code line`. */
  readonly findings?: readonly string[];
}

function lines(first: number, last: number): number[] {
  return Array.from({ length: last - first + 1 }, (_, i) => first + i);
}

/** The one that has no columns at all: `C1 to C6: 100nf, 0603`. */
const PROSE = "42-micropico.txt";

const EXPECTED: readonly Expected[] = [
  {
    file: "02-ac-timer.csv",
    rows: 25,
    n: 22,
    columns: { designator: "Part #", quantity: "Qty", description: "Description" },
    hardware: lines(21, 30),
  },
  {
    file: "04-isa-video.csv",
    rows: 29,
    n: 92,
    columns: { designator: "Reference(s)", quantity: "Qty", value: "Value", item: "Item" },
    leftOut: [12],
  },
  {
    file: "06-m68k-r2-fab.csv",
    rows: 22,
    n: 80,
    columns: { designator: "Designator", value: "Comment", package: "Footprint" },
  },
  {
    file: "09-pinball-sys7.csv",
    rows: 50,
    n: 50,
    // Its Footprint cells are 1, its Datasheet cells 2.
    columns: { designator: "Reference", value: "Value" },
  },
  {
    file: "11-opfm-fab.csv",
    rows: 29,
    n: 63,
    columns: { designator: "Designator", value: "Comment", package: "Footprint" },
    leftOut: [4],
  },
  {
    // SOURCES.md counts line 68, the total, as a row: 67.
    file: "12-usb-charger.csv",
    rows: 66,
    n: 66,
    columns: { designator: "RefDes", quantity: "Quantity", value: "Value", package: "Pattern" },
  },
  {
    file: "14-librecal.csv",
    rows: 32,
    n: 123,
    columns: {
      designator: "Ref",
      quantity: "Qnty",
      value: "Value",
      package: "Footprint",
      description: "Description",
      fitted: "DNP",
    },
  },
  {
    file: "15-banana-rng.csv",
    rows: 27,
    n: 82,
    columns: {
      designator: "Ref",
      quantity: "Qty",
      value: "Value",
      package: "Package",
      item: "Id",
    },
  },
  {
    file: "16-gcplus.csv",
    rows: 21,
    n: 21,
    columns: { designator: "Part", value: "Value", package: "Package" },
  },
  {
    file: "19-nixie-spectrum.csv",
    rows: 111,
    n: 111,
    columns: {
      designator: "Designator",
      quantity: "Quantity",
      value: "Comment",
      package: "Footprint",
    },
  },
  {
    file: "21-nboard.csv",
    rows: 13,
    n: 28,
    columns: {
      designator: "Reference(s)",
      quantity: "Qty",
      value: "Value",
      package: "Footprint",
      fitted: "DNP",
    },
  },
  {
    file: "22-stereo-mix.csv",
    rows: 30,
    n: 197,
    columns: { designator: "Designator", value: "Comment", package: "Footprint" },
  },
  {
    // SOURCES.md counts the four unnumbered REF** of line 46 as designators: 336. Lines 2, 44 and 45
    // hold commas only: its three count differences.
    file: "24-stochastic-seq.csv",
    rows: 45,
    n: 332,
    columns: {
      designator: "Designator",
      quantity: "Quantity",
      value: "Designation",
      package: "Package",
      item: "Id",
    },
    hardware: [2, 44, 45, 46],
    findings: [2, 44, 45, 46].map((line) => `designator-syntax ${line}`),
  },
  {
    file: "25-sasha.csv",
    rows: 38,
    n: 124,
    columns: {
      designator: "Parts",
      quantity: "Qty",
      value: "Value",
      package: "Package",
      description: "Description",
    },
  },
  { file: "28-o2p-designators.csv", rows: 17, n: 17, columns: { designator: "", quantity: "" } },
  {
    file: "29-geiger.csv",
    encoding: "utf-16le",
    rows: 26,
    n: 50,
    columns: {
      designator: "Designator",
      quantity: "Quantity",
      value: "Name",
      package: "Footprint",
      "part number": "Manufacturer Part",
    },
  },
  {
    file: "30-wspr.csv",
    encoding: "utf-16le",
    rows: 31,
    n: 47,
    columns: {
      designator: "Designator",
      quantity: "Quantity",
      value: "Name",
      package: "Footprint",
      "part number": "Manufacturer Part",
    },
  },
  {
    file: "31-fan-controller.tsv",
    encoding: "utf-16le",
    rows: 14,
    n: 15,
    columns: { designator: "Designator", quantity: "Quantity", value: "Name" },
  },
  {
    file: "34-transistor-tester.tsv",
    encoding: "utf-16le",
    rows: 19,
    n: 25,
    columns: {
      designator: "Designator",
      quantity: "Quantity",
      value: "Name",
      package: "Footprint",
      item: "ID",
    },
  },
  {
    file: "37-m68k-r0.txt",
    rows: 69,
    n: 69,
    columns: {
      designator: "Part",
      value: "Value",
      package: "Package",
      description: "Description",
      "part number": "MPN",
    },
  },
  {
    file: "38-ac-timer-parts.txt",
    rows: 22,
    n: 22,
    columns: { designator: "Part", value: "Value", package: "Package" },
  },
  {
    // SOURCES.md has 14 rows; the file lists 13 kinds of parts, two of them on two lines.
    file: "40-sd-mapper.txt",
    rows: 13,
    n: 29,
    columns: { designator: "RefDes", quantity: "Qty", value: "Value" },
  },
  {
    // SOURCES.md gives its 8 + 8 rows for n; the first variant has 11 designators, the second 10 and
    // a `*` that is hardware.
    file: "41-joydivision.txt",
    rows: 16,
    n: 21,
    columns: {
      designator: "Parts",
      quantity: "Qty",
      value: "Value",
      package: "Package",
      description: "Description",
    },
    hardware: [18],
    findings: [19, 20, 21, 21, 22, 22, 23, 23, 24].map((line) => `repeated-designator ${line}`),
  },
  {
    file: "43-multikernal.txt",
    rows: 15,
    n: 15,
    columns: { designator: "Part", value: "Value", package: "Package", description: "Device" },
  },
  {
    file: "47-zeta-list.txt",
    rows: 74,
    n: 74,
    columns: { designator: "", value: "" },
    findings: ["repeated-designator 80"],
  },
  {
    file: "50-precadsr.md",
    rows: 44,
    n: 76,
    columns: {
      designator: "Refs",
      quantity: "Qty",
      value: "Component",
      description: "Description",
    },
    optional: [22],
    hardware: lines(50, 54),
  },
  {
    // The second J2 is a slip for J3 in the list itself; chips and sockets share their designators.
    file: "52-omega-es.md",
    rows: 104,
    n: 286,
    columns: {
      designator: "Reference",
      quantity: "Quantity",
      description: "Description",
      notes: "Possible sources and notes",
    },
    optional: [271, 282, 288, 289, 302, 311, 315, 316, 322, 326, 332, 334, 338, 339],
    hardware: [252],
    findings: ["repeated-designator 330"],
  },
  {
    // SOURCES.md counts the board (line 11) and the jumpers (line 27: its one count difference) as
    // designators: 31. Both are hardware.
    file: "54-dw-link.md",
    rows: 19,
    n: 29,
    columns: { designator: "ID", quantity: "Number", value: "Value" },
    hardware: [11, 27],
  },
  {
    file: "56-wooden-clock.xml",
    rows: 149,
    n: 149,
    columns: { designator: "ref", value: "value", package: "footprint" },
  },
  {
    file: "57-led-shield.xlsx",
    rows: 12,
    n: 47,
    columns: {
      designator: "Designator",
      quantity: "Quantity",
      value: "Comment",
      package: "Footprint",
      description: "Description",
    },
    hardware: lines(12, 14),
  },
  {
    // SOURCES.md counts the three titles and two headers below the first header as rows: 62, and
    // these and the four remarks of the first column as designators: 74.
    file: "59-o2p-controller.xlsx",
    rows: 57,
    n: 65,
    columns: { designator: "Designator*", quantity: "Qty", value: "Name" },
    hardware: [...lines(3, 10), ...lines(14, 30), ...lines(32, 36)],
  },
  {
    file: "60-synth-ribbon.csv",
    rows: 62,
    n: 165,
    columns: {
      designator: "Reference",
      quantity: "Qty",
      value: "Value",
      package: "Footprint",
      fitted: "DNP",
      item: "#",
    },
    leftOut: [7, 22],
  },
];

function rowsOf(list: PartsList, chosen: (line: ListLine) => boolean): number[] {
  return list.lines.filter(chosen).map((line) => line.row);
}

function findings(list: PartsList): string[] {
  const index = new LineIndex(list.text);
  return list.problems.map(({ code, span }) => {
    const place = list.places?.cellAt(span) ?? index.positionAt(span.start).line + 1;
    return `${code} ${place}`;
  });
}

describe.skipIf(!present)("real parts lists", () => {
  test("are all in the table", () => {
    const files = readdirSync(FOLDER).filter((file) => /^\d/.test(file) && file !== PROSE);
    expect(files.sort()).toEqual(EXPECTED.map(({ file }) => file));
  });

  test.each(EXPECTED)("$file has $rows lines with $n designators", (expected) => {
    const list = read(expected.file);
    expect(list.encoding).toBe(expected.encoding ?? "utf-8");
    expect(list.lines.length).toBe(expected.rows);
    expect(list.lines.flatMap((line) => line.designators).length).toBe(expected.n);
    expect(findings(list)).toEqual(expected.findings ?? []);
    expect(rowsOf(list, (line) => !line.fitted)).toEqual(expected.leftOut ?? []);
    expect(rowsOf(list, (line) => line.optional)).toEqual(expected.optional ?? []);
    expect(rowsOf(list, (line) => line.designators.length === 0)).toEqual(expected.hardware ?? []);
  });

  test.each(EXPECTED)("$file has its columns taken for what they hold", ({ file, columns }) => {
    const list = read(file);
    const meanings = [...Object.keys(columns), "designator", "quantity", "value", "package"];
    const taken = list.columns
      .filter(({ meaning }) => meaning !== undefined && meanings.includes(meaning))
      .map(({ meaning, header }) => [meaning, header]);
    expect(Object.fromEntries(taken)).toEqual(columns);
  });

  test("name single parts of a line as optional where the remark does", () => {
    const some = read("52-omega-es.md")
      .lines.filter((line) => !line.optional)
      .flatMap((line) => line.designators)
      .filter(({ optional }) => optional)
      .map(({ name }) => name);
    expect(some).toEqual(
      "U24 C62 C63 C64 C71 R11 R12 R14 R18 R19 R20 R31 R32 R33 R42 R46 R47 R48 Q1".split(" "),
    );
  });

  test("have 233 distinct designators in the list that repeats them for sockets", () => {
    const names = read("52-omega-es.md").lines.flatMap((line) => line.designators);
    expect(new Set(names.map(({ name }) => name)).size).toBe(233);
  });

  test("keep what is fitted in columns that mark nothing", () => {
    for (const file of ["14-librecal.csv", "21-nboard.csv"]) {
      expect(read(file).lines.every((line) => line.fitted)).toBe(true);
    }
  });
});

type Value = readonly [file: string, designator: string, amount: number, unit: Unit];

const VALUES: readonly Value[] = [
  ["02", "C7", 100e-9, "F"],
  ["02", "C5", 27e-12, "F"],
  ["02", "L1", 10e-6, "H"],
  ["02", "R1", 10e3, "Ω"],
  ["02", "R4", 330, "Ω"],
  ["02", "Y1", 16e6, "Hz"],
  ["04", "C31", 1e-6, "F"],
  ["04", "C19", 4.7e-6, "F"],
  ["04", "R27", 10e3, "Ω"],
  ["04", "R26", 10, "Ω"],
  ["04", "R29", 237, "Ω"],
  ["04", "RN6", 604, "Ω"],
  ["04", "X2", 14.318e6, "Hz"],
  ["06", "C2", 7e-12, "F"],
  ["06", "R21", 1200, "Ω"],
  ["06", "R28", 270, "Ω"],
  ["06", "R5", 5100, "Ω"],
  ["09", "U$24", 6800, "Ω"],
  ["09", "C1", 4700e-6, "F"],
  ["11", "C20", 100e-9, "F"],
  ["11", "C14", 100e-12, "F"],
  ["11", "R26", 60.04e3, "Ω"],
  ["12", "C19", 4.7e-6, "F"],
  ["12", "L2", 110e-9, "H"],
  ["12", "R9", 0.01, "Ω"],
  ["12", "R16", 2210, "Ω"],
  ["12", "R7", 73.2e3, "Ω"],
  ["14", "C32", 2.2e-6, "F"],
  ["14", "R6", 5100, "Ω"],
  ["14", "R9", 6.2, "Ω"],
  ["14", "R24", 330, "Ω"],
  ["15", "C30", 100e-6, "F"],
  ["15", "C12", 22e-12, "F"],
  ["15", "L1", 15e-3, "H"],
  ["15", "R1", 10e6, "Ω"],
  ["15", "R18", 220, "Ω"],
  ["16", "C2", 100e-9, "F"],
  ["16", "R9", 10e3, "Ω"],
  ["16", "R10", 100, "Ω"],
  ["19", "R44", 820e3, "Ω"],
  ["19", "R22", 820, "Ω"],
  ["19", "C5", 22e-6, "F"],
  ["19", "R43", 0.05, "Ω"],
  ["19", "R26", 2200, "Ω"],
  ["19", "L1", 56e-6, "H"],
  ["19", "C25", 100e-9, "F"],
  ["21", "C4", 22e-6, "F"],
  ["21", "R8", 1000, "Ω"],
  ["22", "C70", 1e-9, "F"],
  ["22", "R92", 100, "Ω"],
  ["22", "R87", 47e3, "Ω"],
  ["24", "R109", 4700, "Ω"],
  ["24", "R83", 67e3, "Ω"],
  ["24", "C19", 10e-6, "F"],
  ["24", "C36", 100e-12, "F"],
  ["25", "C48", 4.7e-9, "F"],
  ["25", "R83", 180, "Ω"],
  ["25", "R46", 1000, "Ω"],
  ["25", "R4", 10e3, "Ω"],
  ["29", "R20", 1800, "Ω"],
  ["29", "R21", 499e3, "Ω"],
  ["29", "C11", 4.7e-6, "F"],
  ["29", "L3", 4.7e-6, "H"],
  ["30", "C18", 100e-9, "F"],
  ["30", "L1", 47e-9, "H"],
  ["30", "R5", 3300, "Ω"],
  ["30", "R1", 1e6, "Ω"],
  ["31", "R2", 470, "Ω"],
  ["31", "C2", 10e-9, "F"],
  ["34", "R5", 470e3, "Ω"],
  ["34", "R10", 2200, "Ω"],
  ["34", "R2", 1500, "Ω"],
  ["34", "C4", 47e-6, "F"],
  ["37", "C2", 100e-6, "F"],
  ["37", "R1", 10e3, "Ω"],
  ["38", "C5", 27e-12, "F"],
  ["38", "R2", 330, "Ω"],
  ["40", "R9", 4700, "Ω"],
  ["40", "C7", 100e-9, "F"],
  ["41", "R3", 1500, "Ω"],
  ["41", "C2", 27e-12, "F"],
  ["43", "R1", 6700, "Ω"],
  ["47", "C1", 100e-9, "F"],
  ["50", "C9", 100e-9, "F"],
  ["50", "R12", 4700, "Ω"],
  ["50", "R27", 1e6, "Ω"],
  ["50", "R31", 10e3, "Ω"],
  ["52", "C58", 100e-9, "F"],
  ["52", "C94", 4.7e-12, "F"],
  ["52", "RR7", 4700, "Ω"],
  ["52", "R1", 1e6, "Ω"],
  ["52", "R48", 75, "Ω"],
  ["52", "L3", 5.7e-6, "H"],
  ["52", "Y3", 4.433618e6, "Hz"],
  ["54", "R11", 10e6, "Ω"],
  ["54", "C4", 100e-6, "F"],
  ["54", "R8", 680, "Ω"],
  ["56", "R7", 47, "Ω"],
  ["60", "C213", 4.3e-12, "F"],
  ["60", "C905", 2.2e-6, "F"],
  ["60", "R312", 1.2e6, "Ω"],
  ["60", "R201", 22, "Ω"],
  ["60", "RV204", 10e3, "Ω"],
  ["60", "D303", 5.1, "V"],
  ["60", "FB1002", 100, "Ω"],
];

function lineOf(list: PartsList, designator: string): ListLine {
  return list.lines.find((line) => line.designators.some(({ name }) => name === designator))!;
}

function fileNumbered(number: string): string {
  return EXPECTED.find(({ file }) => file.startsWith(`${number}-`))!.file;
}

describe.skipIf(!present)("values of real parts lists", () => {
  test.each(VALUES)("%s: %s has %d %s", (number, designator, amount, unit) => {
    const { value } = lineOf(read(fileNumbered(number)), designator);
    expect(value?.unit).toBe(unit);
    expect(value!.amount / amount).toBeCloseTo(1, 9);
  });

  test("are none where the cell holds a type number, an order number or a mark", () => {
    const none = [
      ["04", "R11"],
      ["09", "IC5"],
      ["11", "C9"],
      ["11", "R9"],
      ["14", "C33"],
      ["14", "R1"],
      ["25", "C6"],
      ["50", "L1"],
      ["60", "R202"],
    ] as const;
    for (const [number, designator] of none) {
      expect(lineOf(read(fileNumbered(number)), designator).value, designator).toBeUndefined();
    }
  });

  test("come with the ratings and tolerances in the same cell", () => {
    const timer = read("02-ac-timer.csv");
    expect(lineOf(timer, "C4")).toMatchObject({
      tolerance: "2 %",
      voltage: { amount: 25, unit: "V" },
    });
    const nixie = read("19-nixie-spectrum.csv");
    expect(lineOf(nixie, "R45")).toMatchObject({
      power: { amount: 0.25, unit: "W" },
      voltage: { amount: 200, unit: "V" },
    });
    expect(lineOf(nixie, "R26").power).toEqual({ amount: 0.25, unit: "W" });
    expect(lineOf(nixie, "C5").voltage).toEqual({ amount: 10, unit: "V" });
    expect(lineOf(read("52-omega-es.md"), "R9").tolerance).toBe("1 %");
  });
});

/** A list as the oracle is told to read it. */
interface Sheet {
  readonly number: string;
  readonly delimiter?: string;
  readonly encoding?: string;
  /** Line of the header. */
  readonly header?: number;
  readonly designator: string;
  readonly quantity?: string;
  readonly value?: string;
}

const SHEETS: readonly Sheet[] = [
  { number: "02", header: 5, designator: "Part #", quantity: "Qty" },
  { number: "04", designator: "Reference(s)", quantity: "Qty", value: "Value" },
  { number: "06", designator: "Designator", value: "Comment" },
  { number: "09", designator: "Reference", value: "Value" },
  { number: "12", designator: "RefDes", quantity: "Quantity", value: "Value" },
  { number: "14", header: 6, designator: "Ref", quantity: "Qnty", value: "Value" },
  { number: "15", designator: "Ref", quantity: "Qty", value: "Value" },
  {
    number: "24",
    delimiter: ";",
    designator: "Designator",
    quantity: "Quantity",
    value: "Designation",
  },
  { number: "25", delimiter: ";", designator: "Parts", quantity: "Qty", value: "Value" },
  {
    number: "29",
    delimiter: "\t",
    encoding: "utf-16le",
    designator: "Designator",
    quantity: "Quantity",
    value: "Name",
  },
  { number: "60", designator: "Reference", quantity: "Qty", value: "Value" },
];

interface Cells {
  readonly line: number;
  readonly designators: readonly string[];
  readonly quantity: number | undefined;
  readonly value: string | undefined;
}

/** The rows as csv-parse reads them, its designators parted at commas and blanks. */
function oracle(sheet: Sheet): Cells[] {
  const { delimiter = ",", encoding = "utf-8", header = 1 } = sheet;
  const bytes = readFileSync(join(FOLDER, fileNumbered(sheet.number)));
  const text = new TextDecoder(encoding).decode(bytes);
  const rows: string[][] = parse(text, { delimiter, relax_column_count: true, trim: true });
  const names = rows[header - 1]!;
  return rows.slice(header).map((row, i) => {
    const cell = (name: string | undefined) => (name ? row[names.indexOf(name)] : undefined);
    const quantity = cell(sheet.quantity);
    return {
      line: header + 1 + i,
      designators: expandCarried(cell(sheet.designator)!),
      quantity: quantity === undefined ? undefined : Number(quantity),
      value: cell(sheet.value),
    };
  });
}

function expandCarried(cell: string): string[] {
  let letters = "";
  return cell
    .split(/[\s,]+/)
    .filter((item) => item !== "" && item !== "REF**")
    .map((item) => {
      if (/^\d/.test(item)) return letters + item;
      letters = item.replace(/\d+$/, "");
      return item;
    });
}

describe.skipIf(!present)("cell by cell", () => {
  test.each(SHEETS)("list $number reads as csv-parse reads it", (sheet) => {
    const list = read(fileNumbered(sheet.number));
    const found = list.lines.map((line) => ({
      line: line.row,
      designators: line.designators.map(({ name }) => name),
      quantity: line.quantity,
      value: line.cells.value?.text,
    }));
    // A total that stands alone is no line of the list.
    const expected = oracle(sheet).filter(({ line }) => sheet.number !== "12" || line !== 68);
    expect(found).toEqual(expected);
  });

  test.each(SHEETS)("list $number has its cells and designators at their places", (sheet) => {
    const list = read(fileNumbered(sheet.number));
    const index = new LineIndex(list.text);
    for (const line of list.lines) {
      for (const { text, span } of cellsOf(line)) {
        expect(list.text.slice(span.start, span.end)).toBe(text);
        expect(index.positionAt(span.start).line + 1).toBe(line.row);
      }
      for (const { name, span } of line.designators) {
        expect(name.endsWith(list.text.slice(span.start, span.end))).toBe(true);
      }
    }
  });
});

test.skipIf(!present)("prose without columns gives one finding that says so", () => {
  const list = read(PROSE);
  expect(list.format).toBe("unreadable");
  expect(list.lines).toEqual([]);
  expect(list.problems.map(({ code }) => code)).toEqual(["unreadable-list"]);
  expect(list.problems[0]!.message).toContain("plain text without columns");
  expect(list.problems[0]!.message).toContain("Save the parts list as CSV");
});
