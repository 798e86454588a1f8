/** Parts lists in workbooks, written by LibreOffice from an invented kit (workbooks/make.py). */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { loadPartsList } from "../../server/src/model/list/load.ts";
import type { PartsList } from "../../server/src/model/list/partsList.ts";
import { tell } from "../../server/src/model/list/tellSheet.ts";
import { Service } from "../../server/src/service.ts";
import { MemoryFiles } from "../memoryFiles.ts";
import { lineOf, lines } from "./reading.ts";

const FOLDER = `${import.meta.dirname}/workbooks`;
const KINDS = ["xlsx", "ods"];

function bytesOf(file: string): Uint8Array {
  return new Uint8Array(readFileSync(`${FOLDER}/${file}`));
}

function load(file: string, sheet?: string): Promise<PartsList> {
  return loadPartsList(`file:///kit/${file}`, bytesOf(file), sheet === undefined ? {} : { sheet });
}

/** Findings as the guide shows them. */
function told(list: PartsList): string[] {
  return list.problems.map(({ code, span, message }) =>
    list.places ? `${code} ${tell(list.places, span, message)}` : `${code} ${message}`,
  );
}

describe.each(KINDS)("a workbook of the kind %s", (kind) => {
  test("is read below its merged title, hidden rows and the second list included", async () => {
    const list = await load(`wren.${kind}`, "Main board");
    expect(list.format).toBe("workbook");
    expect(lines(list)).toEqual([
      "R1 R2 R3 R4",
      "R5 R6",
      "C1",
      "C2",
      "D1",
      "Q1",
      "R7",
      "(Screw M3x10)",
      "(Nut M3)",
    ]);
    expect(list.lines.map(({ row }) => row)).toEqual([4, 5, 6, 7, 8, 9, 10, 16, 17]);
    expect(told(list)).toEqual([]);
  });

  test("gives stored results of formulas, numbers and texts that are numbers", async () => {
    const list = await load(`wren.${kind}`, "Main board");
    const quantities = list.lines.map(({ quantity }) => quantity);
    expect(quantities).toEqual([4, 2, 1, 1, 1, 1, 1, 4, 4]);
    expect(lineOf(list, "R5").height).toBe(2.5);
    expect(lineOf(list, "R7").value).toEqual({ amount: 680, unit: "Ω" });
  });

  test("shows numbers as their formats do where that says more", async () => {
    const list = await load(`wren.${kind}`, "Main board");
    expect(lineOf(list, "R1").tolerance).toBe("5 %");
    expect(lineOf(list, "R1").cells.package?.text).toBe("0207");
    const beside = await load(`beside.${kind}`);
    expect(lineOf(beside, "L1").cells.value?.text).toBe("4.7 µH");
    expect(lineOf(beside, "R12").cells.value?.text).toBe("2024-04-01");
    expect(lineOf(beside, "R11").value).toEqual({ amount: 0.47, unit: "Ω" });
  });

  test("keeps line breaks of a cell and leaves comments out", async () => {
    const list = await load(`wren.${kind}`, "Main board");
    expect(lineOf(list, "C1").cells.notes?.text).toBe("two lines\nin one cell");
    expect(lineOf(list, "R7").cells.designator?.text).toBe("R7");
  });

  test("has two lists side by side told apart", async () => {
    const list = await load(`beside.${kind}`);
    expect(lines(list)).toEqual(["R1 R2", "C1", "R11", "R12", "L1"]);
    expect(list.places?.cellAt(lineOf(list, "L1").designators[0]!.span)).toBe("E5");
  });

  test("tells which sheets hold lists when none is named; hidden ones do not count", async () => {
    const list = await load(`wren.${kind}`);
    expect(lines(list)).toContain("R1 R2 R3 R4");
    expect(told(list)).toEqual([
      expect.stringMatching(
        /^unreadable-list Sheet `Main board`: Only this sheet is read, but `Keyboard` holds designators, too\./,
      ),
    ]);
  });

  test("finds a sheet by its name, whatever the case, hidden ones too", async () => {
    expect(lines(await load(`wren.${kind}`, "keyboard"))).toEqual(["R1 R2", "S1 S2 S3"]);
    expect(lines(await load(`wren.${kind}`, "Old list"))).toEqual(["R1 R2 R3 R4 R5 R6 R7 R8 R9"]);
  });

  test("says so when the named sheet is none or holds no list", async () => {
    expect(told(await load(`wren.${kind}`, "Mainboard"))).toEqual([
      "unreadable-list This workbook has no sheet `Mainboard`. Did you mean `Main board`? It has `Main board`, `Keyboard`, `Old list` and `Prices`.",
    ]);
    expect(told(await load(`wren.${kind}`, "Prices"))).toEqual([
      expect.stringContaining("Sheet `Prices` has no column of designators"),
    ]);
  });

  test("is read with letters of any script", async () => {
    const list = await load(`long.${kind}`);
    expect(list.lines).toHaveLength(200);
    expect(list.places?.sheet).toBe("Überblick & <Teile>");
    expect(lineOf(list, "R200").cells.description?.text).toBe("Widerstand „Größe 199“ 抵抗");
    expect(lineOf(list, "R200").value).toEqual({ amount: 4700, unit: "Ω" });
  });

  test("gives one finding when it is locked with a password", async () => {
    expect(told(await load(`locked.${kind}`))).toEqual([
      expect.stringContaining("locked with a password"),
    ]);
  });

  test("gives one finding wherever it is cut off", async () => {
    const whole = bytesOf(`wren.${kind}`);
    for (let length = 4; length < whole.length; length += 97) {
      const list = await loadPartsList("file:///cut", whole.subarray(0, length));
      expect(told(list)).toEqual([expect.stringContaining("damaged or cut off")]);
    }
  });

  test("never breaks on bytes that are changed", async () => {
    const whole = bytesOf(`wren.${kind}`);
    let seed = 7;
    const random = (below: number) => {
      seed = (seed * 1_103_515_245 + 12_345) % 2 ** 31;
      return seed % below;
    };
    for (let i = 0; i < 300; i++) {
      const bytes = whole.slice();
      for (let j = 0; j < 5; j++) bytes[random(bytes.length)] = random(256);
      const list = await loadPartsList("file:///changed", bytes);
      if (list.format === "unreadable") expect(list.problems).toHaveLength(1);
    }
  });
});

describe("a guide whose list is in a workbook", () => {
  async function check(parts: string, steps: string) {
    const files = new MemoryFiles();
    for (const name of ["wren.xlsx", "wren.ods"]) files.set(`file:///kit/${name}`, bytesOf(name));
    files.set("file:///kit/guide.md", `---\nparts: ${parts}\n---\n\n## Board\n\n${steps}\n`);
    const service = new Service(files);
    service.follow("file:///kit/guide.md");
    await service.settle();
    return { service, found: service.takeChanges() };
  }

  test("shows findings on its key, with sheet and cell, and related places too", async () => {
    const { found } = await check("wren.xlsx#Keyboard", "1. Fit [R1, R2].\n2. Fit [R2].");
    expect(found.map(({ uri }) => uri)).toEqual(["file:///kit/guide.md"]);
    const shown = found[0]!.diagnoses.map(({ code, message, start, end }) => ({
      code,
      message,
      at: `${start.line}:${start.column}-${end.column}`,
    }));
    expect(shown).toContainEqual({
      code: "missing-part",
      message: expect.stringMatching(/^Sheet `Keyboard`, cell A3: No step of the guide fits S1–S3/),
      at: "1:7-25",
    });
    const missing = found[0]!.diagnoses.find(({ message }) => message.startsWith("3 parts"));
    expect(missing?.related[0]).toMatchObject({
      uri: "file:///kit/guide.md",
      message: "Sheet `Keyboard`, cell A3: S1 is listed here.",
    });
  });

  test("may take a sheet for each board", async () => {
    const parts = "{ main: wren.ods#Main board, keys: wren.ods#Keyboard }";
    const { service, found } = await check(parts, "1. Fit [main/R1–R4] and [keys/R1, R2].");
    const guide = service.guidesOf("file:///kit/guide.md")[0]!;
    expect(guide.boards).toEqual(["main", "keys"]);
    expect(guide.parts.filter(({ name }) => name === "R1").map(({ board }) => board)).toEqual([
      "main",
      "keys",
    ]);
    expect(found[0]!.diagnoses.map(({ code }) => code)).not.toContain("repeated-designator");
    expect(service.lists()).toEqual([]);
    expect(service.text("file:///kit/wren.ods")).toBeUndefined();
  });

  test("names the sheet that is missing, once, and reports no part as unknown", async () => {
    const { found } = await check("wren.xlsx#Bord", "1. Fit [R1, R2].");
    expect(found[0]!.diagnoses.map(({ code, message }) => [code, message])).toEqual([
      ["unreadable-list", expect.stringContaining("no sheet `Bord`")],
    ]);
  });

  test("reads a workbook again that an editor shows as text", async () => {
    const { service } = await check("wren.xlsx#Keyboard", "1. Fit [R1, R2].");
    service.open("file:///kit/wren.xlsx", 1, "PK\u0003\u0004\uFFFD\uFFFD");
    await service.settle();
    expect(service.guidesOf("file:///kit/guide.md")[0]!.parts).toHaveLength(5);
  });
});
