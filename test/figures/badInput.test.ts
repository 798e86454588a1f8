/** Figures that cannot be: each is a finding at its place, never a number and never a crash. */
import { describe, expect, test } from "vitest";
import { kit } from "../checks/kit.ts";
import { checkFixture } from "../fixture.ts";
import { Followed } from "./sheet.ts";

const LIST = "Designator,Value\nR1,10k\n";
const DEEP = `${"(".repeat(10_000)}1 V${")".repeat(10_000)}`;

const FIGURES: readonly (readonly [name: string, figure: string, code: string])[] = [
  ["division by zero", "{x = 1 V / 0}", "figure-syntax"],
  ["division by what may be zero", "{x = 1 V / (1 ± 100 %)}", "figure-syntax"],
  ["overflow", "{x = 1e300 * 1e300}", "figure-syntax"],
  ["a number that is too large", "{x = 1e400 V}", "figure-syntax"],
  ["a figure naming itself", "{x = x + 1 V}", "circular-figure"],
  ["a figure that is itself", "{x = x}", "circular-figure"],
  ["a unit that does not exist", "{x = 5 wibble}", "figure-syntax"],
  ["a tolerance over 100 %", "{x = 5 V ± 120 %}", "figure-syntax"],
  ["a tolerance below zero", "{x = 5 V ± -5 %}", "figure-syntax"],
  ["a root of a negative", "{x = sqrt(-1)}", "figure-syntax"],
  ["nought by nought", "{x = 0 / 0}", "figure-syntax"],
  ["NaN", "{x = NaN}", "unknown-name"],
  ["Infinity", "{x = 2 * Infinity}", "unknown-name"],
  ["a trade function outside what it knows", "{x = clearanceHole(M999)}", "figure-syntax"],
  ["units that clash", "{x = 10 V + 3 A}", "unit-clash"],
  ["10,000 parentheses", `{x = ${DEEP}}`, "figure-syntax"],
  ["a reading of nothing", "{read V(TP1) = 1 V / 0 ± 5 %}", "figure-syntax"],
  ["a reading that is too large", "{read V(TP1) = 1 V … 1e400 V}", "figure-syntax"],
  ["a stated value that is too large", "{2 * 3 V = 1e400 V}", "figure-syntax"],
];

describe("In a step", () => {
  test.each(FIGURES)("%s", async (_, figure, code) => {
    const { found } = await checkFixture(kit(`1. Look. ${figure}`, LIST));
    const own = found.filter((one) => FAMILY.has(one.code));
    expect(own.map((one) => one.code)).toEqual([code]);
    expect(own[0]!.message).not.toContain("undefined");
    const one = await Followed.open(`1. Look. ${figure}`);
    for (const { evaluation, stated } of one.guide.figures.all()) {
      if (figure.includes("1e400 V}") && stated) expect(stated.value).toBeUndefined();
      else expect(evaluation?.value).toBeUndefined();
    }
  });
});

describe("In the front matter", () => {
  test.each(FIGURES.filter(([, figure]) => /^\{x = (?!\()[^}]*\}$/.test(figure)))(
    "%s",
    async (_, figure, code) => {
      const entry = figure.slice(1, -1).replace("x = ", "x: ");
      const { found } = await checkFixture(kit("1. Look.", LIST, `figures:\n  ${entry}\n`));
      const own = found.filter((one) => FAMILY.has(one.code));
      expect(own.map((one) => one.code)).toEqual([code]);
    },
  );
});

const FAMILY: ReadonlySet<string> = new Set([
  "figure-syntax",
  "circular-figure",
  "unknown-name",
  "unit-clash",
]);
