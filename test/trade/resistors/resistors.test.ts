import { describe, expect, test } from "vitest";
import { ledResistor, parallel } from "../../../server/src/trade/resistors/circuits.ts";
import {
  currentAt,
  deratingFactor,
  voltageAt,
  workingVoltage,
} from "../../../server/src/trade/resistors/derating.ts";
import { preferredValue } from "../../../server/src/trade/resistors/preferred.ts";

describe("Derating", () => {
  // A metal-film data sheet: 100 % up to 70 °C, nothing at 155 °C, straight between; a resistor
  // maker's training page has 35 % at 125 °C. 100 °C and 112.5 °C computed.
  test.each([
    [-55, 1],
    [25, 1],
    [70, 1],
    [100, 0.647],
    [112.5, 0.5],
    [125, 0.353],
    [155, 0],
    [200, 0],
  ])("at %d °C leaves %d of the power", (ambient, factor) => {
    expect(deratingFactor(ambient)).toBeCloseTo(factor, 3);
  });

  test("has no meaning between two temperatures the wrong way round", () => {
    expect(deratingFactor(25, { full: 155, zero: 70 })).toBeNaN();
  });
});

describe("What a resistor stands", () => {
  // 34.3 V and 7.29 mA for 0.25 W and 4.7 kΩ by Ohm's law; 59.16 V for 10 kΩ and 0.35 W is on a
  // resistor maker's training page.
  test("in volts and amperes", () => {
    expect(voltageAt(0.25, 4700)).toBeCloseTo(34.28, 2);
    expect(currentAt(0.25, 4700) * 1000).toBeCloseTo(7.293, 3);
    expect(voltageAt(0.35, 10_000)).toBeCloseTo(59.16, 2);
  });

  // The same metal-film data sheet; so the quarter-watt type is limited by voltage above 250 kΩ.
  test("never more than the working voltage of its type", () => {
    expect([0.25, 0.5, 1, 2, 5, 10].map(workingVoltage)).toEqual([
      250,
      300,
      350,
      500,
      500,
      undefined,
    ]);
    expect(workingVoltage(0.25)! ** 2 / 0.25).toBe(250_000);
  });
});

describe("The resistor of a light-emitting diode", () => {
  // Lessons In Electric Circuits (Kuphaldt), Semiconductors, chapter 3.
  test("is 220 Ω at 6 V and 1.12 kΩ at 24 V, which a quarter watt does not stand", () => {
    expect(ledResistor(6, 1.6, 0.02)).toBeCloseTo(220, 9);
    expect(ledResistor(24, 1.6, 0.02)).toBeCloseTo(1120, 9);
    expect(0.02 ** 2 * 1120).toBeCloseTo(0.448, 9);
    expect(0.02 ** 2 * 220).toBeCloseTo(0.088, 9);
  });

  // Computed, with the next value of E24 and E12.
  test("rounds up to 680 Ω and 6.8 kΩ", () => {
    expect(preferredValue(ledResistor(12, 2, 0.015), "E24", "up")).toBe(680);
    expect(preferredValue(ledResistor(35, 2.1, 0.005), "E12", "up")).toBe(6800);
  });

  test("has no meaning when the supply is too low", () => {
    expect(ledResistor(1.5, 2, 0.01)).toBeNaN();
    expect(ledResistor(5, 2, 0)).toBeNaN();
  });
});

describe("Resistors side by side", () => {
  test("share the current", () => {
    expect(parallel([10_000, 10_000])).toBe(5000);
    expect(parallel([10_000, 15_000])).toBeCloseTo(6000, 9);
    expect(parallel([1000, 1000, 1000, Number.POSITIVE_INFINITY])).toBeCloseTo(1000 / 3, 9);
    expect(parallel([1000, 0])).toBeNaN();
  });
});
