/** Voltages of a kit that people must not touch, after the product standard that the settings name. */
import type { Guide } from "../../model/guide.ts";
import { PRODUCT_STANDARDS, type VoltageLimits } from "../../trade/hazards/voltageLimits.ts";
import { type NamedRange, namedRanges } from "./values.ts";

export interface Rail {
  readonly name: string;
  /** In volts against ground: least and most, tolerance included. */
  readonly low: number;
  readonly high: number;
}

/** What a name says of an alternating voltage: `VAC`, `Vrms`. */
const ALTERNATING = /ac$|rms|~/i;

/** The voltages that may be touched. */
export function limitsOf({ settings }: Guide): VoltageLimits {
  return PRODUCT_STANDARDS[settings.productStandard];
}

/** The direct voltages that the guide names in `supply`. */
export function railsOf(guide: Guide): readonly Rail[] {
  const names = new Set(guide.frontMatter.supply.map(({ name }) => name));
  return namedRanges(guide)
    .filter((one) => one.unit === "V" && names.has(one.symbol) && !ALTERNATING.test(one.symbol))
    .map(({ symbol, low, high }) => ({ name: symbol, low, high }));
}

/** Why the circuit is dangerous to touch under power; undefined when all voltages are low. */
export function highVoltage(rails: readonly Rail[], guide: Guide): string | undefined {
  return overRails(rails, limitsOf(guide)) ?? overFigures(namedRanges(guide), limitsOf(guide));
}

/** Two rails of ±40 V are 80 V apart: a hand can touch both. */
function overRails(rails: readonly Rail[], { dc }: VoltageLimits): string | undefined {
  const ground = { name: "ground", low: 0, high: 0 };
  const all = [ground, ...rails];
  const top = all.reduce((a, b) => (b.high > a.high ? b : a));
  const bottom = all.reduce((a, b) => (b.low < a.low ? b : a));
  const apart = top.high - bottom.low;
  if (apart <= dc) return undefined;
  const above = `more than the ${volts(dc)} that may be touched`;
  if (top === bottom) return `${top.name} has ${volts(apart)} from end to end, ${above}`;
  if (bottom === ground) return `${top.name} is up to ${volts(apart)}, ${above}`;
  if (top === ground) return `${bottom.name} is up to ${volts(-apart)}, ${above}`;
  return `${top.name} and ${bottom.name} are up to ${volts(apart)} apart, ${above}`;
}

function overFigures(ranges: readonly NamedRange[], limits: VoltageLimits): string | undefined {
  for (const range of ranges) {
    const why = voltageDanger(range, limits);
    if (why) return why;
  }
  return undefined;
}

/** Why a named voltage of a part or point is dangerous; rails are held against one another. */
export function voltageDanger(range: NamedRange, limits: VoltageLimits): string | undefined {
  const { symbol, subject, unit } = range;
  const alternating = ALTERNATING.test(symbol) || isTransformer(subject);
  if (unit !== "V" || !(alternating || /^v$/i.test(symbol))) return undefined;
  const name = subject === undefined ? symbol : `${symbol}(${subject})`;
  return overLimit(name, range, alternating, limits);
}

/**
 * Why a voltage is dangerous; undefined when it is not. Alternating ones are given as rms value, as
 * is usual, and held against the limit for the peak.
 */
function overLimit(
  name: string,
  { low, high }: { readonly low: number; readonly high: number },
  alternating: boolean,
  { dc, acPeak }: VoltageLimits,
): string | undefined {
  const size = Math.max(Math.abs(low), Math.abs(high));
  const peak = size * Math.SQRT2;
  if (alternating && peak > acPeak) {
    return `${name} is up to ${volts(size)} rms, ${volts(peak)} peak: more than the ${volts(acPeak)} peak that may be touched`;
  }
  if (alternating || size <= dc) return undefined;
  return `${name} is up to ${volts(size)}, more than the ${volts(dc)} that may be touched`;
}

function isTransformer(subject: string | undefined): boolean {
  return subject !== undefined && /^T(?:R|X)?\d+$/i.test(subject);
}

function volts(amount: number): string {
  return `${Number(amount.toFixed(1))} V`;
}
