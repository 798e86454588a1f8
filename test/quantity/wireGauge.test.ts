import { describe, expect, test } from "vitest";
import { gaugeDiameter, gaugeOf } from "../../server/src/quantity/wireGauge.ts";

describe("American wire gauge", () => {
  // Diameter in inches as printed in the conductor table of Lessons In Electric Circuits
  // (Kuphaldt), reference volume; 4/0 and 36 by definition of ASTM B258.
  test.each([
    [-3, 0.46],
    [10, 0.1019],
    [12, 0.08081],
    [14, 0.06408],
    [16, 0.05082],
    [18, 0.0403],
    [20, 0.03196],
    [22, 0.02535],
    [24, 0.0201],
    [26, 0.01594],
    [28, 0.01264],
    [30, 0.01003],
    [36, 0.005],
    [40, 0.003145],
  ])("%d is %d in", (gauge, inches) => {
    expect(Math.abs(gaugeDiameter(gauge) / 0.0254 / inches - 1)).toBeLessThanOrEqual(5e-4);
    expect(Math.abs(gaugeOf(inches * 0.0254) - gauge)).toBeLessThanOrEqual(5e-3);
  });

  // GNU Units 2.22: wiregauge(18), wiregauge(24).
  test("agrees with GNU Units to seven figures", () => {
    expect(gaugeDiameter(18) * 1000).toBeCloseTo(1.0236873, 6);
    expect(gaugeDiameter(24) * 1000).toBeCloseTo(0.51055923, 7);
  });

  test("has no gauge without a diameter", () => {
    expect(gaugeOf(0)).toBeNaN();
    expect(gaugeOf(-1)).toBeNaN();
    expect(gaugeDiameter(Number.NaN)).toBeNaN();
  });
});
