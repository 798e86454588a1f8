/** Designators that a revised list numbers anew, carried through the guide. The kits are inventions. */
import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { compareLists } from "../../server/src/model/compare/compareLists.ts";
import { readPartsList } from "../../server/src/model/list/read.ts";
import { Service } from "../../server/src/service.ts";
import { lineEdits } from "../../server/src/text/lineEdits.ts";
import { applyEdits } from "../../server/src/text/span.ts";
import { MemoryFiles } from "../memoryFiles.ts";
import { FOLDER, type Texts } from "./revision.ts";

async function serviceOn(kit: Texts) {
  const files = new MemoryFiles();
  for (const [name, text] of Object.entries(kit)) files.set(FOLDER + name, text);
  const service = new Service(files);
  service.follow(FOLDER + Object.keys(kit)[0]!);
  await service.settle();
  const findings = service.takeChanges().flatMap(({ diagnoses }) => diagnoses);
  return { service, guide: service.guides()[0]!, codes: findings.map(({ code }) => code).sort() };
}

/** The pages of the kit once the renumbered designators of the new list are carried through. */
async function carried(kit: Texts, list: string, fresh: string): Promise<Texts> {
  const { service, guide } = await serviceOn({ ...kit, [list]: fresh });
  const read = (text: string) => readPartsList(FOLDER + list, text);
  const { renumbered } = compareLists(read(kit[list]!), read(fresh));
  const pairs = renumbered.map(({ from, to }) => ({
    from: from.name,
    board: from.board,
    to: to.name,
  }));
  const texts = await service.renumber(guide, FOLDER + list, { content: kit[list]! }, pairs);
  const pages = [...texts].map(([uri, text]) => [uri.slice(FOLDER.length), text]);
  return { ...kit, ...Object.fromEntries(pages), [list]: fresh };
}

const LIST = 'Designator,Value,Package\nR1-R4,4k7,R_0207\nR5,10k,R_0207\n"C1,C2,C3",100n,C_5mm\n';
const guide = (body: string, more = "") =>
  `---\nparts: parts.csv\n${more}---\n\n## Board\n\n${body}\n`;

describe("renumbered designators", () => {
  test.each([
    ["a mark", "1. Fit [R5].", "1. Fit [R9]."],
    ["a whole range stays one", "1. Fit [R1–R4].", "1. Fit [R11–R14]."],
    ["a range in the text, too", "1. Fit R1–4 flat.", "1. Fit R11–14 flat."],
    ["several of one mark", "1. Fit [R1, R3, R5 = 4k7].", "1. Fit [R11, R13, R9 = 4k7]."],
    ["short designators", "1. Fit [C1, 2, 3].", "1. Fit [C21, C22, C23]."],
    ["figures", "1. It takes {P(R5) = 2 mA * R5}.", "1. It takes {P(R9) = 2 mA * R9}."],
    ["a table", "| a | b |\n|---|---|\n| R5 | [R5] |", "| a | b |\n|---|---|\n| R9 | [R9] |"],
    ["sets leave out what they did", "1. Fit [all R except R5].", "1. Fit [all R except R9]."],
  ])("%s", async (_, before, after) => {
    const fresh = LIST.replace("R1-R4", "R11-R14")
      .replace("R5", "R9")
      .replace("C1,C2,C3", "C21,C22,C23");
    const kit = { "guide.md": guide(before), "parts.csv": LIST };
    const { "guide.md": text } = await carried(kit, "parts.csv", fresh);
    expect(text).toBe(guide(after));
  });

  test("the front matter", async () => {
    const notes = "heights: { R5: 3 mm }\noff-board: [C2]\n";
    const kit = { "guide.md": guide("1. Fit [R5].", notes), "parts.csv": LIST };
    const { "guide.md": text } = await carried(kit, "parts.csv", LIST.replace("R5", "R9"));
    expect(text).toBe(guide("1. Fit [R9].", notes.replace("R5", "R9")));
  });

  const heron: Texts = Object.fromEntries(
    ["heron.md", ...readdirSync("samples/heron").filter((name) => name !== "heron.md")].map(
      (name) => [name, readFileSync(`samples/heron/${name}`, "utf8")],
    ),
  );

  test("of any parts of the sample leave it with the findings that it had", async () => {
    const before = await serviceOn(heron);
    const names = before.guide.parts
      .map(({ name }) => name)
      // A socket is known by the name of its chip.
      .filter((name) => /^(?:R|C|L|D|J|RV)\d+$/.test(name));
    await fc.assert(
      fc.asyncProperty(fc.subarray(names, { minLength: 1, maxLength: 40 }), async (chosen) => {
        const wanted = new Set(chosen);
        const list = heron["heron-parts.csv"]!.replace(
          /\b([RCLDJ]V?)(\d+)-\1(\d+)\b/g,
          (_, letters, first, last) =>
            Array.from({ length: last - first + 1 }, (_, i) => letters + (Number(first) + i)).join(
              ", ",
            ),
        )
          .split("\n")
          .map((row) => {
            const [item, cell, rest] = /^(\d+,)("[^"]*"|[^,]*)(.*)$/.exec(row)?.slice(1) ?? [
              row,
              "",
              "",
            ];
            const renamed = cell!.replace(/\b([RCLDJ]V?)(\d+)\b/g, (name, letters, number) =>
              wanted.has(name) ? `${letters}${Number(number) + 500}` : name,
            );
            return item + renamed + rest;
          })
          .join("\n");
        const after = await carried(heron, "heron-parts.csv", list);
        expect((await serviceOn(after)).codes).toEqual(before.codes);
      }),
      { numRuns: 5 },
    );
  });
});

test("edits by line make the one text of the other", () => {
  const text = fc.string({ unit: fc.constantFrom("a", "b", " ", "\n", "\r\n"), maxLength: 40 });
  fc.assert(
    fc.property(text, text, (before, after) => {
      expect(applyEdits(before, lineEdits(before, after))).toBe(after);
    }),
  );
  expect(lineEdits("one R5\ntwo\nR5", "one R9\ntwo\nR9")).toEqual([
    { span: { start: 5, end: 6 }, text: "9" },
    { span: { start: 12, end: 13 }, text: "9" },
  ]);
});
