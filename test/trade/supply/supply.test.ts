import { describe, expect, test } from "vitest";
import {
  bleederResistor,
  dischargeTime,
  storedEnergy,
  voltageAfter,
} from "../../../server/src/trade/capacitors/charge.ts";
import {
  coldResistance,
  hotResistance,
  limitCurrent,
} from "../../../server/src/trade/supply/lamp.ts";
import { peakVoltage, rippleVoltage } from "../../../server/src/trade/supply/reservoir.ts";

describe("Charge in a capacitor", () => {
  // OpenStax College Physics, example 19.11: 400 J at 10 kV is 8.00 µF. The rest computed.
  test("holds energy", () => {
    expect(storedEnergy(8e-6, 10_000)).toBeCloseTo(400, 9);
    expect(storedEnergy(0.01, 45)).toBeCloseTo(10.1, 1);
    expect(storedEnergy(0.0047, 63)).toBeCloseTo(9.33, 2);
  });

  // OpenStax College Physics, example 21.7: 24 ms there, 23.97 ms exactly.
  test("of 8 µF leaves through 1 kΩ in 24 ms", () => {
    expect(dischargeTime(8e-6, 1000, 10_000, 500) * 1000).toBeCloseTo(23.97, 2);
  });

  // ngspice 39: 10 000 µF, 2.2 kΩ from 63 V: 60 V after 1.0734 s, 30 V after 16.323 s, 23.176 V
  // after 22 s.
  test("leaves as a circuit simulation finds", () => {
    expect(Math.abs(dischargeTime(0.01, 2200, 63, 60) - 1.0734)).toBeLessThanOrEqual(5e-4);
    expect(Math.abs(dischargeTime(0.01, 2200, 63, 30) - 16.323)).toBeLessThanOrEqual(2e-3);
    expect(Math.abs(voltageAfter(0.01, 2200, 63, 22) - 23.176)).toBeLessThanOrEqual(2e-3);
  });

  // Computed from R C ln(V1/V2).
  test.each([
    [0.0047, 1000, 80, 60, 1.352],
    [0.01, 4700, 90, 60, 19.1],
    [0.22e-6, 1e6, 373, 60, 0.402],
  ])("%d F, %d Ω, %d V to %d V take %d s", (farads, ohms, from, to, seconds) => {
    expect(dischargeTime(farads, ohms, from, to) / seconds).toBeCloseTo(1, 2);
  });

  // Computed: at most 2.33 MΩ for 0.47 µF from 373 V to 60 V in 2 s.
  test("asks for a bleeder", () => {
    expect(bleederResistor(0.47e-6, 373, 60, 2) / 1e6).toBeCloseTo(2.33, 2);
    expect(dischargeTime(0.47e-6, bleederResistor(0.47e-6, 373, 60, 2), 373, 60)).toBeCloseTo(2, 9);
  });

  test("never rises by itself and never reaches nothing", () => {
    expect(dischargeTime(1e-6, 1000, 10, 20)).toBeNaN();
    expect(dischargeTime(1e-6, 1000, 10, 0)).toBeNaN();
    expect(bleederResistor(1e-6, 10, 10, 1)).toBeNaN();
  });
});

describe("Ripple", () => {
  // Malvino and Bates, Electronic Principles, 7th edition, examples 4-8 (34 V) and 4-7 (17 V):
  // 5 kΩ, 100 µF, 60 Hz.
  test("is 0.57 V and 0.28 V in the textbook", () => {
    expect(rippleVoltage(34 / 5000, 100e-6, 60)).toBeCloseTo(0.57, 2);
    expect(rippleVoltage(17 / 5000, 100e-6, 60)).toBeCloseTo(0.28, 2);
  });

  // ngspice 39: the textbook's circuit with ideal diodes 0.524 V; 18 V r.m.s., 0.1 Ω, real diodes,
  // 10 000 µF, 11.2 Ω, 50 Hz: mean 21.55 V, ripple 1.44 V.
  test("is an upper bound of what a circuit simulation finds", () => {
    const light = rippleVoltage(34 / 5000, 100e-6, 60);
    expect(light).toBeGreaterThanOrEqual(0.524);
    expect(light / 0.524).toBeLessThanOrEqual(1.09);
    const heavy = rippleVoltage(21.55 / 11.2, 0.01, 50);
    expect(heavy).toBeGreaterThanOrEqual(1.44);
    expect(heavy / 1.44).toBeLessThanOrEqual(1.35);
  });

  // Computed.
  test("grows with the current and falls with mains frequency and capacitance", () => {
    expect(rippleVoltage(2, 0.01, 50)).toBeCloseTo(2, 9);
    expect(rippleVoltage(1, 0.0047, 50)).toBeCloseTo(2.13, 2);
    expect(rippleVoltage(1, 0.0047, 60)).toBeCloseTo(1.77, 2);
  });

  // Computed: 18 V, 8 % regulation, 10 % mains, two drops of 0.7 V: a 25 V capacitor fails.
  test("stands on a voltage that a 25 V capacitor does not hold", () => {
    expect(peakVoltage(18, 0.08, 0.1, 1.4)).toBeCloseTo(28.8, 1);
  });
});

describe("A filament lamp", () => {
  // 100 W and 120 V: hot 144 Ω, cold about 9.5 Ω (an encyclopaedia's figures); 60 W and 120 V: hot
  // 240 Ω. 230 V computed.
  test.each([
    [100, 120, 144],
    [60, 120, 240],
    [60, 230, 882],
    [100, 230, 529],
  ])("of %d W and %d V has %d Ω hot", (power, voltage, ohms) => {
    expect(hotResistance({ power, voltage }) / ohms).toBeCloseTo(1, 3);
  });

  test("is 10 to 15 times less when cold, and limits the current to its own", () => {
    expect(coldResistance({ power: 100, voltage: 120 }, 15)).toBeCloseTo(9.6, 1);
    const lamp = { power: 60, voltage: 230 };
    expect(coldResistance(lamp)).toBeGreaterThan(59);
    expect(coldResistance(lamp)).toBeLessThan(88);
    expect(limitCurrent(lamp)).toBeCloseTo(0.26, 2);
    expect(coldResistance(lamp, 0.5)).toBeNaN();
  });
});
