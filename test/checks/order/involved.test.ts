import fc from "fast-check";
import { expect, test } from "vitest";
import type { BoardTops } from "../../../server/src/checks/check.ts";
import { check } from "../../../server/src/checks/height-order.ts";
import { involvedMarks } from "../../../server/src/checks/order/involved.ts";
import { marksInOrder } from "../../../server/src/checks/order/turns.ts";
import { type Misplaced, untangle } from "../../../server/src/checks/order/untangle.ts";
import { GuidePage } from "../../../server/src/model/guidePage.ts";
import { GuideState } from "../../../server/src/model/guideState.ts";
import { Kit } from "../../../server/src/model/kit.ts";
import { readPartsList } from "../../../server/src/model/list/read.ts";
import { DEFAULT_SETTINGS } from "../../../server/src/service.ts";

const NOTHING: BoardTops = new Map();

/** A guide whose steps fit parts of these heights (mm), each under a heading of its own. */
function guideOf(steps: readonly (readonly number[])[], aside: number): GuideState {
  const rows = ["Designator,Quantity,Value,Height"];
  const texts = steps.map((heights) => {
    const names = heights.map((height) => {
      rows.push(`R${rows.length},1,10k,${height}`);
      return `[R${rows.length - 1}]`;
    });
    return `### Heading\n\n1. Fit ${names.join(" ")}.\n`;
  });
  texts.unshift(`Put [later: R${(aside % (rows.length - 1)) + 1}] aside.\n`);
  const list = readPartsList("file:///parts.csv", rows.join("\n"), { columns: {} });
  const text = `---\nparts: parts.csv\n---\n\n## Board\n\n${texts.join("\n")}`;
  const page = new GuidePage("file:///guide.md", text);
  for (const _ of page.advance());
  const kit = new Kit([{ list, board: undefined }], page.frontMatter!);
  const guide = new GuideState([page], kit, DEFAULT_SETTINGS);
  guide.update();
  return guide;
}

function shown(misplaced: readonly Misplaced[]): string[] {
  return misplaced.map(({ turns, kind, against }) => {
    const names = turns.map((turn) => turn.part.name).join(" ");
    return `${names} ${kind}, against ${against.part.name}`;
  });
}

test("What is left out of the search changes neither what is found nor the tallest part", () => {
  const height = fc.integer({ min: 4, max: 24 }).map((n) => n / 2);
  const rising = fc
    .array(fc.array(height, { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 12 })
    .map((steps) => steps.map((heights, i) => heights.map((mm) => mm + (i >> 2) * 6)));
  let leftOut = 0;
  let tangled = 0;
  fc.assert(
    fc.property(rising, fc.nat(30), (steps, aside) => {
      const guide = guideOf(steps, aside);
      const stage = guide.stages.find((one) => one.steps.length > 0)!;
      const all = untangle(marksInOrder(stage), "", undefined, guide);
      const involved = involvedMarks(stage, "", Number.NEGATIVE_INFINITY, guide);
      const some = untangle(involved.marks, "", undefined, guide);
      expect(shown(some.misplaced)).toEqual(shown(all.misplaced));
      if (all.misplaced.length > 0) tangled++;
      if (involved.marks.length < [...marksInOrder(stage)].length) leftOut++;
      const result = check.stage!(stage, NOTHING, guide);
      expect([...result.findings]).toHaveLength(all.misplaced.length);
      const top = result.after.get("")?.supply;
      const wanted = all.tallest?.part;
      expect(top?.kind === "part" && top.height?.mm).toBe(wanted?.height?.mm ?? false);
    }),
    { numRuns: 150 },
  );
  expect(tangled).toBeGreaterThan(25);
  expect(leftOut).toBeGreaterThan(25);
});
