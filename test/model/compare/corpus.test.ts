/**
 * Real parts lists against themselves as other programs would write them: no change is found. With
 * 1,000 scripted edits a list: exactly those.
 */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { compareLists, type ListChanges } from "../../../server/src/model/compare/compareLists.ts";
import { loadPartsList } from "../../../server/src/model/list/load.ts";
import { otherFormats } from "./formats.ts";
import { type Random, type Row, randomFrom, reexport, rowsOf, shuffled } from "./reexport.ts";

const FOLDER = "../shared/bom-corpus";
const present = existsSync(FOLDER);
if (!present) console.log(`skipped: real lists compared, ${FOLDER} is not here`);

/** Prose without columns, which is not read; and one that has two variants with the same designators. */
const UNREAD = /^4[12]-/;
const FILES = present
  ? readdirSync(FOLDER).filter((file) => /^\d/.test(file) && !UNREAD.test(file))
  : [];
const EDITS = 1000;
const EDITS_A_ROUND = 20;

function read(name: string, bytes: Uint8Array) {
  return loadPartsList(`file:///${name}`, bytes);
}

/** One text a change, sorted. */
function told({ added, removed, changed, renumbered, hardware }: ListChanges): string[] {
  return [
    ...added.map(({ name }) => `added ${name}`),
    ...removed.map(({ name }) => `removed ${name}`),
    ...changed.flatMap(({ part, changes }) =>
      changes.map(({ quality }) => `${quality} of ${part.name}`),
    ),
    ...renumbered.map(({ from, to }) => `renumbered ${from.name} ${to.name}`),
    ...hardware.map(({ name, before, after }) => `${name}: ${before} ${after}`),
  ].sort();
}

/** Edits some rows, each of another kind of part, and says what a comparison must find. */
function edit(rows: Row[], random: Random): string[] {
  const counts = new Map<string, number>();
  for (const { designator } of rows) counts.set(designator, (counts.get(designator) ?? 0) + 1);
  const kinds = new Set<string>();
  const expected: string[] = [];
  const chosen = shuffled(rows, random).filter((row) => {
    const { designator, kind } = row;
    const isPlain = counts.get(designator) === 1 && /^[A-Z]{1,3}\d+$/.test(designator);
    if (!isPlain || kinds.has(kind) || kinds.size >= 1 + random(EDITS_A_ROUND)) return false;
    kinds.add(kind);
    return true;
  });
  const hasValues = rows.some(({ cells }) => cells.value ?? cells.description);
  for (const [index, row] of chosen.entries()) {
    const name = row.designator;
    const at = rows.indexOf(row);
    const other = `${name.replace(/\d+$/, "")}${90_000 + index}`;
    const kind = random(6);
    // Nor is one whose value cell says optional made obligatory by another cell.
    if (kind === 0 || (kind === 5 && row.optional)) {
      rows.splice(at, 1);
      expected.push(`removed ${name}`);
    } else if (kind === 1) {
      rows.push(revalued(row, `new${index}`, other));
      expected.push(`added ${other}`);
    } else if (kind === 2 && hasValues) {
      rows[at] = { ...row, designator: other };
      expected.push(
        (row.cells.value ?? row.cells.description)
          ? `renumbered ${name} ${other}`
          : `removed ${name}`,
      );
      if (!(row.cells.value ?? row.cells.description)) expected.push(`added ${other}`);
    } else if (kind === 3 && row.fitted) {
      // One whose value cell says DNP cannot be fitted by another cell.
      rows[at] = { ...row, fitted: false };
      expected.push(`fitted of ${name}`);
    } else if (kind === 4 && hasValues) {
      // What is appended leaves the ratings that the cell holds.
      const text = row.cells.value ?? row.cells.description ?? "";
      rows[at] = revalued(row, `${text} other${index}`, name);
      expected.push(`value of ${name}`);
    } else {
      rows[at] = { ...row, optional: !row.optional };
      expected.push(`optional of ${name}`);
    }
  }
  return expected.sort();
}

function revalued(row: Row, value: string, designator: string): Row {
  const { description } = row.cells;
  const isDescribed = row.cells.value === undefined && description !== undefined;
  const cells = { ...row.cells, ...(isDescribed ? { description: value } : { value }) };
  return { ...row, designator, plain: undefined, cells };
}

describe.skipIf(!present)("real parts lists", () => {
  test.each(FILES)("%s is the same however it is written", async (file) => {
    const list = await read(file, new Uint8Array(readFileSync(join(FOLDER, file))));
    for (let seed = 1; seed <= 10; seed++) {
      const again = await read("again.csv", reexport(rowsOf(list), randomFrom(seed)));
      expect(told(compareLists(list, again)), `seed ${seed}`).toEqual([]);
    }
  });

  test.each(FILES)("%s is the same in other kinds of file", async (file) => {
    const list = await read(file, new Uint8Array(readFileSync(join(FOLDER, file))));
    for (const [name, bytes] of otherFormats(rowsOf(list))) {
      expect(told(compareLists(list, await read(name, bytes))), name).toEqual([]);
    }
  });

  test.each(FILES)("%s with 1,000 edits shows exactly those", async (file) => {
    const list = await read(file, new Uint8Array(readFileSync(join(FOLDER, file))));
    let edits = 0;
    for (let seed = 1; edits < EDITS; seed++) {
      const random = randomFrom(seed);
      const rows = rowsOf(list);
      const expected = edit(rows, random);
      expect(expected.length).toBeGreaterThan(0);
      edits += expected.length;
      const after = await read("after.csv", reexport(rows, random));
      expect(told(compareLists(list, after)), `seed ${seed}`).toEqual(expected);
    }
  });
});
