/** Our own fragments of guides: no trigger is missed, and hardly a false alarm is given. */
import { describe, expect, test } from "vitest";
import { coverageOf } from "../../../server/src/checks/hazards/coverage.ts";
import { guideOf } from "../../model/guides.ts";
import { FRAGMENTS as FIRST, type Fragment } from "./fragments.ts";
import { UNSEEN_FRAGMENTS } from "./unseenFragments.ts";

const FRAGMENTS = [...FIRST, ...UNSEEN_FRAGMENTS];

/** What the fragment brings, as `fragments.ts` writes it; the worst verdict of a kind's hazards. */
function bringsOf({ body, list, more }: Fragment): readonly string[] {
  const worst = new Map<string, "missing" | "late" | "covered">();
  for (const { covered } of coverageOf(guideOf(body, list, more))) {
    for (const { trigger, note, late } of covered) {
      const key = `${trigger.kind} ${trigger.step.number}`;
      const verdict = note ? "covered" : late ? "late" : "missing";
      if (worst.get(key) === "missing" || (worst.get(key) === "late" && note)) continue;
      worst.set(key, verdict);
    }
  }
  return [...worst].map(([key, verdict]) => `${key}: ${verdict}`);
}

describe("The fragment", () => {
  test.each(FRAGMENTS.map((one) => [one.name, one] as const))("%s", (_, fragment) => {
    expect(bringsOf(fragment)).toEqual(fragment.brings);
  });
});

test("There are enough of them, and about half tempt to a false alarm", () => {
  const tempting = FRAGMENTS.filter((one) => one.tempting).length;
  expect(FRAGMENTS.length).toBeGreaterThanOrEqual(40);
  expect(tempting / FRAGMENTS.length).toBeGreaterThan(0.4);
});
