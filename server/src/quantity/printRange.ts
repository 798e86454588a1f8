/**
 * Ranges as text. The ends stand on one decimal place and in one unit, and what is shown is never
 * narrower than the range: ends that do not lie on the place are rounded outward. How fine the place
 * is follows the Guide to the Expression of Uncertainty in Measurement (JCGM 100:2008, 7.2.6): two
 * significant figures of the half-width say enough, and rounding up is the safe side.
 */
import type { FigureValue } from "./evaluation/value.ts";
import { printAmount, printIn, type ShownUnit, shownUnit } from "./printing.ts";

/** Ends as they are shown: amounts in the coherent unit. */
export interface Ends {
  readonly low: number;
  readonly high: number;
}

/** Part of a place by which an end may miss it: what binary numbers add and no reader means. */
const DUST = 1e-6;
/** Significant figures of an end at most. */
const MOST_FIGURES = 9;

/** A figure's nominal value, to as many figures as its tolerance or its inputs give sense to. */
export function printValue(value: FigureValue): string {
  return printAmount(value.nominal, value.unit, figuresOf(value));
}

/** `12.42 V … 15.18 V`, or the one value where there is no tolerance. */
export function printLimits(value: FigureValue): string {
  if (value.min === value.max) return printValue(value);
  return printEnds(endsOf({ low: value.min, high: value.max }), value.unit).join(" … ");
}

/** Both ends of a range for a sentence: `−0.5 V and 0.5 V`. */
export function printRange({ node, unit }: Pick<FigureValue, "node" | "unit">): string {
  return printEnds(endsOf(node.range), unit).join(" and ");
}

/**
 * Two ends, in the unit that is given, else in one wherever that leaves both between 0.1 and 1000
 * (NIST SP 811, 7.9).
 */
export function printEnds({ low, high }: Ends, unit: string, given?: ShownUnit): [string, string] {
  const shared = given ?? sharedUnit([low, high], unit);
  const print = (end: number) => printIn(end, shared ?? shownUnit(end, unit), MOST_FIGURES);
  return [print(low), print(high)];
}

function sharedUnit(ends: readonly number[], unit: string): ShownUnit | undefined {
  const sizes = ends.map(Math.abs).filter((size) => size !== 0);
  const [small, large] = [Math.min(...sizes), Math.max(...sizes)];
  if (sizes.length === 0) return undefined;
  const [lower, upper] = [shownUnit(small, unit), shownUnit(large, unit)];
  if (large < Number(`1e${lower.exponent + 3}`)) return lower;
  return small >= Number(`1e${upper.exponent - 1}`) ? upper : undefined;
}

/** The ends of a range as they are shown; `finer` is how many places more than usual they may have. */
export function endsOf(range: Ends, finer = 0): Ends {
  const place = placeOf(range, finer);
  if (place === undefined) return range;
  return {
    low: onPlace(range.low, place, Math.floor),
    high: onPlace(range.high, place, Math.ceil),
  };
}

/** How many significant figures of a value say something. */
export function figuresOf({ nominal, min, max, figures }: FigureValue): number {
  const place = placeOf({ low: min, high: max }, 0);
  if (place === undefined) return Math.min(6, Math.max(3, figures));
  if (nominal === 0) return 3;
  return Math.min(MOST_FIGURES, Math.max(2, leadOf(nominal) - place + 1));
}

/**
 * The place (a power of ten) for both ends: one at which rounding widens the range by no more than a
 * twentieth of its half-width on each side, or the next where both ends lie on that exactly. Undefined
 * for a range without width.
 */
function placeOf({ low, high }: Ends, finer: number): number | undefined {
  const half = high / 2 - low / 2;
  if (!(half > 0) || !Number.isFinite(half)) return undefined;
  const finest = leadOf(Math.max(Math.abs(low), Math.abs(high))) - MOST_FIGURES + 1;
  const usual = Math.max(finest, leadOf(half / 2) - 1 - finer);
  const next = usual - 1;
  const isExact = next >= finest && [low, high].every((end) => liesOn(end, next));
  return isExact ? next : usual;
}

/** The power of ten of the first digit. */
function leadOf(amount: number): number {
  return Number(Math.abs(amount).toExponential().split("e")[1]);
}

function liesOn(amount: number, place: number): boolean {
  const steps = amount / Number(`1e${place}`);
  return Math.abs(steps - Math.round(steps)) <= DUST;
}

function onPlace(amount: number, place: number, outward: (steps: number) => number): number {
  const steps = amount / Number(`1e${place}`);
  const whole = liesOn(amount, place) ? Math.round(steps) : outward(steps);
  const end = Number(`${whole}e${place}`);
  return Number.isFinite(end) ? end : amount;
}
