/** American wire gauge: each gauge is thinner by a fixed ratio. Source: ASTM B258. */

/** 36 AWG is 0.127 mm (5 mil); 0000 is 0.46 in, 39 steps thicker, 92 times as wide. */
const THIN = { gauge: 36, metres: 0.127e-3 };
const RATIO = 92 ** (1 / 39);

/**
 * Bare diameter in m of a gauge: `24` is 0.5106 mm. 0 is 1/0, and −1, −2, −3 are 2/0, 3/0, 4/0.
 * The standard lists −3 to 56; NaN for a figure that is none.
 */
export function gaugeDiameter(gauge: number): number {
  return THIN.metres * RATIO ** (THIN.gauge - gauge);
}

/** Gauge of a bare diameter in m, with its fraction; NaN unless the diameter is above zero. */
export function gaugeOf(metres: number): number {
  if (!(metres > 0)) return Number.NaN;
  return THIN.gauge - Math.log(metres / THIN.metres) / Math.log(RATIO);
}
