/** What figures say of voltages, powers and temperatures. */
import type { GuideFigure } from "../../model/figures/figure.ts";
import type { Part } from "../../model/parts.ts";
import { hasUnit } from "../../quantity/evaluation/value.ts";

/** A quantity at its limits, in the unit without prefix. */
export interface Range {
  readonly low: number;
  readonly high: number;
}

/**
 * What a figure comes to in a unit, or within what a reading is to lie. Undefined when it comes to
 * nothing or to something else, and for a reading that only says below what it must stay.
 */
export function rangeOf(
  figure: GuideFigure,
  unit: "V" | "W" | "Ω" | "°C" | "K",
): Range | undefined {
  if (figure.figure.reading?.limit === "below") return undefined;
  const value = figure.evaluation?.value ?? figure.stated?.value;
  if (!value || !hasUnit(value, unit)) return undefined;
  const { min: low, max: high } = value;
  return Number.isFinite(low) && Number.isFinite(high) ? { low, high } : undefined;
}

export function symbolOf({ figure }: GuideFigure): string {
  return figure.name?.symbol ?? "";
}

/** `V(C15)` */
export function nameText({ figure }: GuideFigure): string {
  return figure.name?.text ?? "";
}

/** The part that the first subject of the figure's name means. */
export function partOf({ parts }: GuideFigure): Part | undefined {
  return parts[0];
}
