/** Capacitors that hold a charge after the power is off. */
import type { GuideFigure } from "../../model/figures/figure.ts";
import type { Guide } from "../../model/guide.ts";
import type { Part } from "../../model/parts.ts";
import { dischargeTime, storedEnergy } from "../../trade/capacitors/charge.ts";
import { partOf, type Range, rangeOf, symbolOf } from "./values.ts";
import { limitsOf, type Rail } from "./voltages.ts";

/** After so many seconds a plug's pins must be safe (IEC 62368-1 5.5.2.2); we ask it of capacitors. */
const SOON = 2;

/** Whether a figure with this symbol can speak of a charge. */
export function isOfCharge(symbol: string): boolean {
  return symbol === "V" || symbol === "bleeder";
}

export function isCapacitor({ line, fitted }: Part): boolean {
  return fitted && line.value?.unit === "F";
}

/** The capacitors that hold more than the settings' energy, each with what it holds and why. */
export function chargeIn(
  capacitors: readonly Part[],
  rails: readonly Rail[],
  figures: readonly GuideFigure[],
  guide: Guide,
): ReadonlyMap<Part, string> {
  if (capacitors.length === 0) return new Map();
  const voltages = rangesOf(figures, "V", "V");
  const bleeders = rangesOf(figures, "bleeder", "Ω");
  const steps = between(rails);
  const charged = new Map<Part, string>();
  for (const part of capacitors) {
    const farads = part.line.value!.amount;
    const at = voltageAt(part, voltages, steps);
    if (!at || storedEnergy(farads, at.volts) <= guide.settings.storedEnergy) continue;
    const bleeder = bleeders.get(part)?.high;
    const time = bleeder === undefined ? undefined : timeToFall(farads, bleeder, at.volts, guide);
    if (time !== undefined && time <= SOON) continue;
    const energy = round(storedEnergy(farads, at.volts));
    const fall =
      time === undefined
        ? ""
        : ` and takes ${round(time)} s to become harmless through its bleeder`;
    charged.set(part, `${part.name} holds ${energy} J at ${at.what}${fall}`);
  }
  return charged;
}

function rangesOf(
  figures: readonly GuideFigure[],
  symbol: string,
  unit: "V" | "Ω",
): ReadonlyMap<Part, Range> {
  const ranges = new Map<Part, Range>();
  for (const figure of figures) {
    const part = symbolOf(figure) === symbol ? partOf(figure) : undefined;
    const range = part && rangeOf(figure, unit);
    if (part && range && !ranges.has(part)) ranges.set(part, range);
  }
  return ranges;
}

interface Charged {
  readonly volts: number;
  readonly what: string;
}

/**
 * The voltage across a capacitor: as a figure `V(C1)` gives it, else the highest of the rails and of
 * the voltages between them that its rating stands, else its rating.
 */
function voltageAt(
  part: Part,
  voltages: ReadonlyMap<Part, Range>,
  steps: readonly number[],
): Charged | undefined {
  const own = voltages.get(part);
  if (own) return { volts: own.high, what: `${round(own.high)} V` };
  const rating = part.line.voltage?.amount;
  const volts = steps.find((one) => rating === undefined || one <= rating);
  if (volts !== undefined) return { volts, what: `${round(volts)} V, the highest rail it stands` };
  return rating === undefined
    ? undefined
    : { volts: rating, what: `${round(rating)} V, its rating` };
}

/** Voltages of the rails and between them, the highest first. */
function between(rails: readonly Rail[]): readonly number[] {
  const ends = [0, ...rails.flatMap(({ low, high }) => [low, high])];
  const all = ends.flatMap((a) => ends.map((b) => Math.abs(a - b)));
  return [...new Set(all)].filter((volts) => volts > 0).sort((a, b) => b - a);
}

/** Seconds until both voltage and energy are below their limits. */
function timeToFall(farads: number, ohms: number, volts: number, guide: Guide): number {
  const low = Math.min(limitsOf(guide).dc, Math.sqrt((2 * guide.settings.storedEnergy) / farads));
  return volts <= low ? 0 : dischargeTime(farads, ohms, volts, low);
}

function round(amount: number): number {
  return Number(amount.toPrecision(3));
}
