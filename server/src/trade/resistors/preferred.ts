/** Preferred values. Source: IEC 60063. */

const E24 = [
  10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91,
];
/** Every so many of E24. */
const STEPS = new Map([
  ["E3", 8],
  ["E6", 4],
  ["E12", 2],
  ["E24", 1],
]);
/** 10^(i/n) in three figures, but for the one figure that the standard has otherwise. */
const FINE = new Map([
  ["E48", 48],
  ["E96", 96],
  ["E192", 192],
]);
const IRREGULAR = { figures: 919, is: 920 };

export const SERIES: readonly string[] = [...STEPS.keys(), ...FINE.keys()];

const KEPT = new Map<string, readonly number[]>();

/** The values of a series in one decade, from 1 to below 10; undefined for a name that is none. */
export function seriesValues(series: string): readonly number[] | undefined {
  const known = KEPT.get(series);
  if (known) return known;
  const values = makeSeries(series);
  if (values) KEPT.set(series, values);
  return values;
}

function makeSeries(series: string): readonly number[] | undefined {
  const step = STEPS.get(series);
  if (step) return E24.filter((_, place) => place % step === 0).map((one) => one / 10);
  const count = FINE.get(series);
  if (!count) return undefined;
  return Array.from({ length: count }, (_, place) => {
    const figures = Math.round(100 * 10 ** (place / count));
    return (figures === IRREGULAR.figures ? IRREGULAR.is : figures) / 100;
  });
}

export const ROUNDINGS = ["nearest", "up", "down"] as const;
export type Rounding = (typeof ROUNDINGS)[number];

/**
 * The preferred value next to an amount: the nearest by ratio, or the nearest not below (`up`) or
 * not above (`down`). NaN for an amount outside 1e-300 to 1e300, or a series that is none.
 */
export function preferredValue(amount: number, series: string, rounding: Rounding): number {
  const values = seriesValues(series);
  if (!values || !(amount >= 1e-300 && amount <= 1e300)) return Number.NaN;
  const decade = Math.floor(Math.log10(amount));
  const around = [decade - 1, decade, decade + 1].flatMap((power) =>
    values.map((value) => Number(`${value}e${power}`)),
  );
  // A value that is only rounded differently counts as reached.
  const below = around.findLast((value) => value <= amount * (1 + 1e-9))!;
  const above = around.find((value) => value >= amount * (1 - 1e-9))!;
  if (rounding === "up") return above;
  if (rounding === "down") return below;
  return amount / below <= above / amount ? below : above;
}

/** Whether a value belongs to a series. */
export function isPreferred(amount: number, series: string): boolean {
  const nearest = preferredValue(amount, series, "nearest");
  return Math.abs(nearest - amount) <= 1e-9 * Math.abs(amount);
}
