import { describe, expect, test } from "vitest";
import { gaugeDiameter } from "../../../server/src/quantity/wireGauge.ts";
import {
  copperResistance,
  windingLength,
  woundLength,
} from "../../../server/src/trade/coils/winding.ts";

const off = (is: number, expected: number) => Math.abs(is / expected - 1);

describe("The wire of a winding", () => {
  // Computed: 12 turns on a mean diameter of 12 mm take 0.452 m.
  test("is turns times the way round, and the leads", () => {
    expect(windingLength(12, 0.012)).toBeCloseTo(0.4524, 4);
    expect(windingLength(12, 0.012, 0.06)).toBeCloseTo(0.5124, 4);
    expect(woundLength(12, 0.00106)).toBeCloseTo(0.01272, 9);
    expect(windingLength(-1, 0.012)).toBeNaN();
    expect(woundLength(1, 0)).toBeNaN();
  });
});

describe("Copper wire", () => {
  // Computed from IEC 60028 and IEC 60287-1-1.
  test("of 1 mm has 22 mΩ per metre, and 1.3144 times that at 100 °C", () => {
    expect(copperResistance(1, 0.001) * 1000).toBeCloseTo(21.95, 2);
    expect(copperResistance(windingLength(12, 0.012), 0.001) * 1000).toBeCloseTo(9.93, 2);
    expect(copperResistance(windingLength(12, 0.012), 0.001, 75) * 1000).toBeCloseTo(12.1, 1);
    expect(copperResistance(1, 0.001, 100) / copperResistance(1, 0.001)).toBeCloseTo(1.3144, 4);
  });

  // Ω/km at 20 °C in the conductor table of Lessons In Electric Circuits (Kuphaldt) and a wire
  // note: printed to three figures.
  test.each([
    [10, 3.28],
    [12, 5.21],
    [14, 8.29],
    [16, 13.2],
    [18, 21],
    [20, 33.5],
    [22, 53.2],
    [24, 84.2],
    [26, 133],
    [28, 212],
    [30, 338],
  ])("of AWG %d has %d Ω per kilometre", (gauge, ohms) => {
    expect(off(copperResistance(1000, gaugeDiameter(gauge)), ohms)).toBeLessThanOrEqual(0.01);
  });

  // NBS Handbook 100, from memory: Ω per 1000 ft of AWG 18, 24, 30.
  test.each([
    [18, 6.385],
    [24, 25.67],
    [30, 103.2],
  ])("of AWG %d has %d Ω per thousand feet", (gauge, ohms) => {
    expect(off(copperResistance(304.8, gaugeDiameter(gauge)), ohms)).toBeLessThanOrEqual(0.001);
  });

  // Lessons In Electric Circuits, DC volume, chapter 12: 2300 ft of AWG 14 have 5.651 Ω with a
  // purer copper, 1.678e-8 Ω·m, 2.7 % below the standard's.
  test("of 2300 ft and AWG 14 has the textbook's resistance but for the purity", () => {
    const ohms = copperResistance(2300 * 0.3048, gaugeDiameter(14));
    expect(off((ohms * 1.678) / 1.7241, 5.651)).toBeLessThanOrEqual(0.001);
  });

  test("without thickness has no resistance to speak of", () => {
    expect(copperResistance(1, 0)).toBeNaN();
    expect(copperResistance(-1, 0.001)).toBeNaN();
  });
});
