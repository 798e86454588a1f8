import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  dissipation,
  efficiency,
  inputPower,
  outputPower,
  worstDissipation,
} from "../../../server/src/trade/heat/classB.ts";

describe("A class B stage", () => {
  // Boylestad and Nashelsky, example 12.8 (30 V, 16 Ω); the rest computed from the same formulas,
  // 25 V and 8 Ω an exercise's.
  test.each([
    [30, 16, 28.125, 35.81, 11.4],
    [25, 8, 39.06, 49.74, 15.83],
    [28, 8, 49, 62.4, 19.9],
    [35, 8, 76.6, 97.5, 31],
    [42, 4, 220.5, 280.7, 89.4],
  ])(
    "of ±%d V on %d Ω: %d W out, %d W in, %d W of heat at worst",
    (rail, load, out, into, heat) => {
      expect(outputPower(rail, load) / out).toBeCloseTo(1, 2);
      expect(inputPower(rail, load, rail) / into).toBeCloseTo(1, 2);
      expect(worstDissipation(rail, load) / heat).toBeCloseTo(1, 2);
    },
  );

  // ngspice 39: ±30 V, 16 Ω, 19.10 V peak: 11.399 W in both devices, 5.6995 W in each.
  test("has the heat that a circuit simulation finds", () => {
    expect(Math.abs(dissipation(30, 16, 19.1) - 11.399)).toBeLessThanOrEqual(0.002);
    expect(Math.abs(dissipation(30, 16, 19.1) / 2 - 5.6995)).toBeLessThanOrEqual(0.001);
  });

  // Boylestad and Nashelsky, example 12.9: 24 V, 22 V or 6 V peak.
  test("has an efficiency of 72 % near full output, 78.54 % at it", () => {
    expect(efficiency(24, 22)).toBeCloseTo(0.72, 3);
    expect(efficiency(24, 6)).toBeCloseTo(0.196, 3);
    expect(efficiency(24, 24)).toBeCloseTo(0.7854, 4);
  });

  test("is never hotter than at 2/π of the rail", () => {
    const volts = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(volts, (part) => {
        expect(dissipation(30, 8, 30 * part)).toBeLessThanOrEqual(worstDissipation(30, 8) + 1e-9);
      }),
    );
    expect(dissipation(30, 8, 60 / Math.PI)).toBeCloseTo(worstDissipation(30, 8), 9);
  });

  test("gives no more than its rails", () => {
    expect(inputPower(30, 8, 31)).toBeNaN();
    expect(efficiency(30, 31)).toBeNaN();
    expect(outputPower(10, 0)).toBeNaN();
  });
});
