import { describe, expect, test } from "vitest";
import { TRADE_FUNCTIONS } from "../../../server/src/trade/functions/all.ts";
import type { Argument, TradeFunction } from "../../../server/src/trade/functions/function.ts";
import { sum } from "../../quantity/sums.ts";

const ALL = [...TRADE_FUNCTIONS.values()].map((one): [string, TradeFunction] => [one.name, one]);

/** The example's result with one argument made larger by a factor. */
function moved(one: TradeFunction, place: number, factor: number): number {
  const args = one.example.args.map((value, index) =>
    index === place && typeof value === "number" ? value * factor : value,
  );
  return one.compute(args);
}

describe.each(ALL)("%s", (name, one) => {
  test("is a plain name, and its parameters with a default stand last", () => {
    expect(name).toMatch(/^[a-z]+(?:[A-Z]+[a-z]*)*$/);
    const optional = one.parameters.map(({ default: standard }) => standard !== undefined);
    expect(optional).toEqual([...optional].sort((a, b) => Number(a) - Number(b)));
    expect(new Set(one.parameters.map((parameter) => parameter.name)).size).toBe(
      one.parameters.length,
    );
  });

  test("works out its example without a warning", () => {
    expect(one.example.args).toHaveLength(one.parameters.length);
    expect(one.example.written.startsWith(`${name}(`)).toBe(true);
    expect(one.compute(one.example.args)).toSatisfy(Number.isFinite);
    expect(one.warn?.(one.example.args)).toBeUndefined();
    const defaults = one.parameters.map(({ default: standard }) => standard);
    const written = one.example.written.split(";").length;
    defaults.slice(written).forEach((standard, index) => {
      expect(one.example.args[written + index]).toBe(standard);
    });
  });

  test("gives the same when its example is written in a guide", () => {
    const { value, problem, warnings } = sum(one.example.written, {}, TRADE_FUNCTIONS);
    expect(problem).toBeUndefined();
    expect(warnings).toEqual([]);
    expect(value?.unit).toBe(one.unit);
    expect(value!.nominal).toBeCloseTo(one.compute(one.example.args), 9);
  });

  test("moves as its parameters say", () => {
    one.parameters.forEach(({ unit, trend }, place) => {
      if (unit === "word" || trend === "either") return;
      const results = [0.5, 0.9, 0.99, 1, 1.01, 1.1, 1.5]
        .map((factor) => moved(one, place, factor))
        .filter((result) => !Number.isNaN(result));
      const sorted = [...results].sort((a, b) => (trend === "rises" ? a - b : b - a));
      expect(results.length).toBeGreaterThan(3);
      expect(results).toEqual(sorted);
    });
  });

  test("takes every word it lists, and no other", () => {
    one.parameters.forEach(({ unit, keys }, place) => {
      if (unit !== "word") return;
      expect(keys?.length).toBeGreaterThan(1);
      const withWord = (key: string) =>
        one.compute(one.example.args.map((value, index) => (index === place ? key : value)));
      for (const key of keys!) expect(withWord(key)).toSatisfy(Number.isFinite);
      expect(withWord("nonsense")).toBeNaN();
    });
  });

  test("never throws, whatever figure or word it is given", () => {
    const figures: Argument[] = [0, -1, Number.NaN, Number.POSITIVE_INFINITY, 1e308, 1e-308];
    const words: Argument[] = ["", "M3", "x", "8.8", "constructor", "__proto__"];
    one.parameters.forEach(({ unit }, place) => {
      for (const value of unit === "word" ? words : figures) {
        const args = one.example.args.map((arg, index) => (index === place ? value : arg));
        expect(typeof one.compute(args)).toBe("number");
        one.warn?.(args);
      }
    });
  });
});

describe("A warning outside the range of validity", () => {
  test.each<[string, Argument[], string]>([
    ["coilInductance", [3, 0.1, 0.005], "a tenth of its diameter"],
    ["coilInductanceWheeler", [3, 0.1, 0.03], "0.4 times its diameter"],
    ["coilTurns", [1e-6, 0.1, 0.005], "a tenth of its diameter"],
    ["wireResistance", [1, 0.001, 400], "−50 °C to 200 °C"],
    ["wireDiameter", [60], "from −3 (4/0) to 56"],
    ["clampForce", [1, "M3", 0.5], "between 0.1 and 0.35"],
    ["tighteningTorque", ["M3", "8.8", 0.95, 0.2], "75 %"],
    ["ledResistor", [2.2, 2, 0.01], "0.5 V"],
    ["lampColdResistance", [60, 230, 3], "a tenth to a fifteenth"],
  ])("%s", (name, args, says) => {
    expect(TRADE_FUNCTIONS.get(name)!.warn!(args)).toContain(says);
  });
});
