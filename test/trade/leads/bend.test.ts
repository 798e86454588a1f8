import { describe, expect, test } from "vitest";
import {
  bendDistance,
  bendRadius,
  glassBendDistance,
  leastHoleSpacing,
} from "../../../server/src/trade/leads/bend.ts";

const mm = (metres: number) => Number((metres * 1000).toFixed(6));

describe("A bend in a lead", () => {
  // NASA and IPC tables as taught in a college soldering course.
  test.each([
    [0.5, 0.5],
    [0.79, 0.79],
    [0.8, 1.2],
    [1, 1.5],
    [1.2, 1.8],
    [1.3, 2.6],
  ])("of %d mm has an inner radius of %d mm", (diameter, radius) => {
    expect(mm(bendRadius(diameter / 1000))).toBe(radius);
  });

  // The same course: one diameter, 0.8 mm at least.
  test.each([
    [0.5, 0.8],
    [0.8, 0.8],
    [1.3, 1.3],
  ])("of %d mm stays %d mm off the body", (diameter, distance) => {
    expect(mm(bendDistance(diameter / 1000))).toBe(distance);
  });

  // A diode maker's notes on handling and mounting: 1/8 in or three diameters.
  test("stays 3.2 mm off a glass body, or three diameters", () => {
    expect(mm(glassBendDistance(0.0005))).toBe(3.2);
    expect(mm(glassBendDistance(0.0013))).toBe(3.9);
  });

  // Computed: body 6.3 mm, lead 0.6 mm: 9.7 mm, so 10.16 mm fits and 7.62 mm does not.
  test("makes a quarter-watt resistor 9.7 mm long at least", () => {
    expect(mm(leastHoleSpacing(0.0063, 0.0006))).toBe(9.7);
  });

  test("has no meaning without a lead", () => {
    for (const rule of [bendRadius, bendDistance, glassBendDistance]) expect(rule(0)).toBeNaN();
    expect(leastHoleSpacing(-1, 0.0006)).toBeNaN();
  });
});
