/** Voltages of a kit that people must not touch, after the product standard that the settings name. */
import type { GuideFigure } from "../../model/figures/figure.ts";
import type { Guide } from "../../model/guide.ts";
import { PRODUCT_STANDARDS, type VoltageLimits } from "../../trade/hazards/voltageLimits.ts";
import { nameText, partOf, type Range, rangeOf, symbolOf } from "./values.ts";

/** A supply voltage against ground, in volts. */
export interface Rail extends Range {
  readonly name: string;
}

/** What a symbol says of an alternating voltage: `Vac`, `VAC`, `Vrms`. */
const ALTERNATING = /ac$|rms/i;
const VOLTAGE = /^v(?:ac|dc|rms)?$/i;

/** Whether a figure with this symbol and a subject is a voltage; rails may have any name. */
export function isVoltage(symbol: string): boolean {
  return VOLTAGE.test(symbol);
}

/** The voltages that may be touched. */
export function limitsOf({ settings }: Guide): VoltageLimits {
  return PRODUCT_STANDARDS[settings.productStandard];
}

/** The direct voltages that the guide names in `supply`. */
export function railsOf({ frontMatter, figures }: Guide): readonly Rail[] {
  return frontMatter.supply.flatMap(({ name }) => {
    const figure = figures.named(name);
    if (!figure?.isRail || ALTERNATING.test(name)) return [];
    const range = rangeOf(figure, "V");
    return range ? [{ name, ...range }] : [];
  });
}

/** Why two rails are dangerous to touch: those of ±40 V are 80 V apart. Undefined when none are. */
export function overRails(rails: readonly Rail[], { dc }: VoltageLimits): string | undefined {
  const ground = { name: "ground", low: 0, high: 0 };
  const all = [ground, ...rails];
  const top = all.reduce((a, b) => (b.high > a.high ? b : a));
  const bottom = all.reduce((a, b) => (b.low < a.low ? b : a));
  const apart = top.high - bottom.low;
  if (apart <= dc) return undefined;
  const above = `more than the ${volts(dc)} that may be touched`;
  if (bottom === ground) return `${top.name} is up to ${volts(apart)}, ${above}`;
  if (top === ground) return `${bottom.name} is up to ${volts(-apart)}, ${above}`;
  return `${top.name} and ${bottom.name} are up to ${volts(apart)} apart, ${above}`;
}

/**
 * Why a voltage that a figure gives is dangerous; undefined when it is not. Alternating ones are
 * given as rms value, as is usual, and held against the limit for the peak.
 */
export function voltageDanger(
  figure: GuideFigure,
  { dc, acPeak }: VoltageLimits,
): string | undefined {
  const range = rangeOf(figure, "V");
  if (!range) return undefined;
  const size = Math.max(Math.abs(range.low), Math.abs(range.high));
  const peak = size * Math.SQRT2;
  const name = nameText(figure);
  if (!isAlternating(figure)) {
    return size > dc
      ? `${name} is up to ${volts(size)}, more than the ${volts(dc)} that may be touched`
      : undefined;
  }
  return peak > acPeak
    ? `${name} is up to ${volts(size)} rms, ${volts(peak)} peak: more than the ${volts(acPeak)} peak that may be touched`
    : undefined;
}

/** By its symbol, or at a transformer. */
function isAlternating(figure: GuideFigure): boolean {
  return ALTERNATING.test(symbolOf(figure)) || partOf(figure)?.letters.toUpperCase() === "T";
}

function volts(amount: number): string {
  return `${Number(amount.toFixed(1))} V`;
}
