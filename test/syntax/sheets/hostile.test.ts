/** Workbooks made to break a reader: each gives one finding, soon and in bounded memory. */
import { strToU8, type Zippable, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { loadPartsList } from "../../../server/src/model/list/load.ts";
import type { PartsList } from "../../../server/src/model/list/partsList.ts";
import { Archive } from "../../../server/src/syntax/sheets/zip.ts";
import { lines } from "../../list/reading.ts";
import { ods, xlsx } from "./packing.ts";

function load(bytes: Uint8Array): Promise<PartsList> {
  return loadPartsList("file:///kit/hostile", bytes);
}

async function messages(bytes: Uint8Array): Promise<string[]> {
  return (await load(bytes)).problems.map(({ message }) => message);
}

/** The headers of the archive's directory. */
function* directory(bytes: Uint8Array): Generator<{ view: DataView; at: number }> {
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  for (let at = 0; at < bytes.length - 4; at++) {
    if (view.getUint32(at, true) === 0x02014b50) yield { view, at };
  }
}

function claimSize(bytes: Uint8Array, size: number): void {
  for (const { view, at } of directory(bytes)) view.setUint32(at + 24, size, true);
}

const ROW = (number: number, name: string) =>
  `<row r="${number}"><c r="A${number}" t="inlineStr"><is><t>${name}</t></is></c></row>`;
const LIST = `${ROW(1, "Ref")}${ROW(2, "R1")}`;

describe("bombs", () => {
  test("a sheet that says that it unpacks to 100 MB is not unpacked", async () => {
    const bytes = xlsx(`${LIST}${" ".repeat(100 * 2 ** 20)}`);
    expect(bytes.length).toBeLessThan(200_000);
    const start = performance.now();
    expect(await messages(bytes)).toEqual([expect.stringContaining("more than 40 MB")]);
    expect(performance.now() - start).toBeLessThan(20_000);
  });

  test("what an entry claims of its size is not believed", async () => {
    const bytes = xlsx(`${LIST}${" ".repeat(41 * 2 ** 20)}`);
    claimSize(bytes, 10);
    expect(await messages(bytes)).toEqual([expect.stringContaining("more than 40 MB")]);
  });

  test("no more is unpacked than a budget allows", () => {
    const bytes = zipSync({ a: strToU8(Array.from({ length: 50_000 }, (_, i) => i).join(" ")) });
    claimSize(bytes, 10);
    const budget = { bytes: 100_000, text: 0 };
    let unpacked = 0;
    const unpack = () => {
      for (const { length } of new Archive(bytes).unpack("a", budget)) unpacked += length;
    };
    expect(unpack).toThrow("more than 40 MB");
    expect(unpacked).toBeLessThanOrEqual(100_000);
    expect(unpacked).toBeGreaterThan(30_000);
  });

  test("declared entities expand to nothing, in workbooks of both kinds", async () => {
    const laughs = `<!DOCTYPE x [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;&a;">]>`;
    expect(await messages(xlsx(LIST, { doctype: laughs }))).toEqual([
      expect.stringContaining("declares entities"),
    ]);
    expect(await messages(ods("<table:table/>", laughs))).toEqual([
      expect.stringContaining("declares entities"),
    ]);
  });

  test("entities without declaration make the file a damaged one", async () => {
    expect(await messages(xlsx(ROW(1, "&lol;")))).toEqual([
      expect.stringContaining("damaged or cut off"),
    ]);
  });

  test("elements nested a million deep are refused", async () => {
    expect(await messages(xlsx("<a>".repeat(1_000_000)))).toEqual([
      expect.stringContaining("damaged or cut off"),
    ]);
  });

  test("a million attributes are refused", async () => {
    const many = Array.from({ length: 1_000_000 }, (_, i) => `a${i}=""`).join(" ");
    expect(await messages(xlsx(`<row ${many}/>`))).toEqual([
      expect.stringContaining("damaged or cut off"),
    ]);
  });

  test("one long text that a million cells refer to is read until the limit", async () => {
    const cells = '<c t="s"><v>0</v></c>'.repeat(200);
    const rows = Array.from({ length: 2000 }, (_, i) => ROW(i + 3, `R${i + 2}`));
    const filled = rows.map((row) => row.replace("</row>", `${cells}</row>`));
    const list = await load(xlsx(LIST + filled.join(""), { texts: ["x".repeat(30_000)] }));
    expect(list.text.length).toBeLessThan(22 * 2 ** 20);
    expect(list.problems.map(({ message }) => message)).toContainEqual(
      expect.stringContaining("The sheet goes on"),
    );
  });

  test("cells and rows that claim to be repeated a billion times are not written out", async () => {
    const cell = (name: string, count: number) =>
      `<table:table-cell table:number-columns-repeated="${count}" office:value-type="string"><text:p>${name}</text:p></table:table-cell>`;
    const rows = `<table:table-row>${cell("Ref", 1)}${cell("Value", 1)}</table:table-row><table:table-row table:number-rows-repeated="1000000000">${cell("R1", 1)}${cell("x", 1_000_000_000)}</table:table-row>`;
    const start = performance.now();
    const list = await load(ods(`<table:table table:name="A">${rows}</table:table>`));
    expect(performance.now() - start).toBeLessThan(10_000);
    expect(list.problems.map(({ message }) => message)).toContainEqual(
      expect.stringContaining("The sheet goes on"),
    );
  });
});

describe("empty rows", () => {
  test("1,048,576 of them and nothing else are one finding", async () => {
    const rows = Array.from({ length: 1_048_576 }, (_, i) => `<row r="${i + 1}"/>`).join("");
    expect(await messages(xlsx(rows, { level: 0 }))).toEqual([
      expect.stringContaining("Sheet `Kit` has no column of designators"),
    ]);
  });

  test("1,048,576 formatted ones behind a list, 50 MB of them, are left out", async () => {
    const rows = Array.from(
      { length: 1_048_574 },
      (_, i) => `<row r="${i + 3}"><c r="A${i + 3}" s="1"/></row>`,
    );
    const list = await load(xlsx(LIST + rows.join(""), { level: 0 }));
    expect(lines(list)).toEqual(["R1"]);
    expect(list.problems).toEqual([]);
  });

  test("behind a list they are no part of it", async () => {
    const rows = Array.from({ length: 200_000 }, (_, i) => `<row r="${i + 3}" s="1"/>`).join("");
    const list = await load(xlsx(LIST + rows));
    expect(lines(list)).toEqual(["R1"]);
    expect(list.problems).toEqual([]);
  });
});

describe("archives that are none of a workbook", () => {
  const none = (files: Zippable) => messages(zipSync(files));

  test("are named", async () => {
    expect(await none({ "a.txt": strToU8("a") })).toEqual([
      "This zip archive holds no spreadsheet, so nothing in it is read.",
    ]);
    const text = ods("", "", "text");
    expect(await messages(text)).toEqual([expect.stringContaining("is no spreadsheet")]);
  });

  test("with missing parts are damaged ones", async () => {
    expect(
      await none({ "[Content_Types].xml": strToU8("<a/>"), "_rels/.rels": strToU8("<a/>") }),
    ).toEqual([expect.stringContaining("damaged or cut off")]);
  });

  test("with entries locked by a password are told so", async () => {
    const bytes = xlsx(LIST);
    for (const { view, at } of directory(bytes)) view.setUint16(at + 8, 1, true);
    expect(await messages(bytes)).toEqual([expect.stringContaining("locked with a password")]);
  });
});

test("formulas without stored results are told once, by their cells", async () => {
  const rows = `${ROW(1, "Ref")}<row r="2"><c r="A2" t="inlineStr"><is><t>R1</t></is></c><c r="B2"><f>1+1</f></c></row>`;
  expect(await messages(xlsx(rows))).toEqual([
    "The formulas in B2 have no stored results, so these cells are read as empty. Open the file in a spreadsheet program and save it.",
  ]);
});

test("cells and rows without names count on from those before", async () => {
  const cell = (text: string) => `<c t="inlineStr"><is><t>${text}</t></is></c>`;
  const list = await load(
    xlsx(
      `<row>${cell("Ref")}${cell("Value")}</row><row r="5">${cell("R1")}${cell("1k")}</row><row>${cell("R2")}</row>`,
    ),
  );
  expect(list.lines.map(({ row }) => row)).toEqual([5, 6]);
  expect(list.places?.cellAt(list.lines[0]!.cells.value!.span)).toBe("B5");
});
