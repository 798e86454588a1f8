import { describe, expect, test } from "vitest";
import {
  junctionTemperature,
  largestPower,
  largestSink,
  resistanceFromRating,
} from "../../../server/src/trade/heat/junction.ts";

describe("A chain of thermal resistances", () => {
  // Rashid, Power Electronics, 4th edition, example 4.4.
  test("lets 125 W bring a junction to 150 °C, its case to 100 °C", () => {
    expect(largestPower(150, 25, [0.4, 0.1, 0.5])).toBe(125);
    expect(junctionTemperature(125, 25, [0.4, 0.1, 0.5])).toBe(150);
    expect(junctionTemperature(125, 25, [0.1, 0.5])).toBe(100);
  });

  // A coded textbook example (8.3 of a Scilab collection): 20 W at a case of 25 °C, 175 °C.
  test("of a 20 W device is 7.5 K/W, and 11.1 W on a sink of 5 K/W", () => {
    expect(resistanceFromRating(20, 175)).toBe(7.5);
    expect(largestPower(175, 25, [7.5, 1, 5])).toBeCloseTo(11.11, 2);
  });

  // Rjc from data-sheet ratings at a case of 25 °C and a limit of 150 °C, computed.
  test.each([
    [50, 2.5],
    [65, 1.92],
    [125, 1],
    [150, 0.833],
  ])("of a device rated %d W is %d K/W", (watts, expected) => {
    expect(resistanceFromRating(watts, 150)).toBeCloseTo(expected, 2);
  });

  // Lecture slides with Thermalloy and Motorola data: TO-220, 5 W, 3.0 + 1 K/W, 50 °C to 150 °C.
  test("leaves 16 K/W for the heat sink of a TO-220 at 5 W", () => {
    expect(largestSink(5, 150, 50, [3, 1])).toBe(16);
  });

  // A training page on heat sinks: TO-220 alone, 2.78 W, 62 K/W, 50 °C.
  test("of 62 K/W brings 2.78 W to 222 °C", () => {
    expect(junctionTemperature(2.78, 50, [62])).toBeCloseTo(222.4, 1);
  });

  // Boylestad and Nashelsky, from memory: 150 W device at 0.5 + 0.6 + 1.5 K/W, 200 °C, 40 °C.
  test("of 2.6 K/W lets 61.5 W through", () => {
    expect(largestPower(200, 40, [0.5, 0.6, 1.5])).toBeCloseTo(61.54, 2);
  });

  // Computed: two devices of 30 W on one sink.
  test("adds up on a shared sink", () => {
    const sink = junctionTemperature(60, 40, [0.6]);
    expect(junctionTemperature(30, sink, [0.83, 0.4])).toBeCloseTo(112.9, 1);
  });

  test("has no meaning without power or with a resistance below zero", () => {
    expect(largestSink(0, 150, 50, [1])).toBeNaN();
    expect(resistanceFromRating(0, 150)).toBeNaN();
    expect(largestPower(150, 25, [])).toBeNaN();
    expect(junctionTemperature(1, 25, [-1])).toBeNaN();
    // Below zero: no heat sink would do.
    expect(largestSink(50, 150, 50, [3, 1])).toBe(-2);
  });
});
