/** Capacitors that hold a charge after the power is off. */
import type { Guide } from "../../model/guide.ts";
import type { Part } from "../../model/parts.ts";
import { dischargeTime, storedEnergy } from "../../trade/capacitors/charge.ts";
import { type NamedRange, namedRanges } from "./values.ts";
import { limitsOf, type Rail } from "./voltages.ts";

/** After so many seconds a plug's pins must be safe (IEC 62368-1 5.5.2.2); we ask it of capacitors. */
const SOON = 2;

/** The capacitors that hold more than the settings' energy, each with what it holds and why. */
export function chargeIn(rails: readonly Rail[], guide: Guide): ReadonlyMap<Part, string> {
  const figures = namedRanges(guide);
  const charged = new Map<Part, string>();
  for (const part of guide.parts) {
    const { value } = part.line;
    if (value?.unit !== "F" || !part.fitted) continue;
    const at = voltageAt(part, figures, rails);
    if (!at || storedEnergy(value.amount, at.volts) <= guide.settings.storedEnergy) continue;
    const time = timeToFall(part, value.amount, at.volts, figures, guide);
    if (time !== undefined && time <= SOON) continue;
    const energy = round(storedEnergy(value.amount, at.volts));
    const fall =
      time === undefined
        ? ""
        : ` and takes ${round(time)} s to become harmless through its bleeder`;
    charged.set(part, `${part.name} holds ${energy} J at ${at.what}${fall}`);
  }
  return charged;
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
  { name, line }: Part,
  figures: readonly NamedRange[],
  rails: readonly Rail[],
): Charged | undefined {
  const own = figures.find((one) => one.symbol === "V" && one.subject === name);
  if (own) return { volts: own.high, what: `${round(own.high)} V` };
  const rating = line.voltage?.amount;
  const there = between(rails).filter((volts) => rating === undefined || volts <= rating);
  if (there.length > 0) {
    const volts = Math.max(...there);
    return { volts, what: `${round(volts)} V, the highest rail it stands` };
  }
  return rating === undefined
    ? undefined
    : { volts: rating, what: `${round(rating)} V, its rating` };
}

function between(rails: readonly Rail[]): number[] {
  const ends = [0, ...rails.flatMap(({ low, high }) => [low, high])];
  const all = ends.flatMap((a) => ends.map((b) => Math.abs(a - b)));
  return [...new Set(all)].filter((volts) => volts > 0);
}

/** Seconds until voltage and energy are low, where a figure `bleeder(C1)` gives the resistance. */
function timeToFall(
  { name }: Part,
  farads: number,
  volts: number,
  figures: readonly NamedRange[],
  guide: Guide,
): number | undefined {
  const bleeder = figures.find((one) => one.symbol === "bleeder" && one.subject === name);
  if (bleeder?.unit !== "Ω") return undefined;
  const low = Math.min(limitsOf(guide).dc, Math.sqrt((2 * guide.settings.storedEnergy) / farads));
  return volts <= low ? 0 : dischargeTime(farads, bleeder.high, volts, low);
}

function round(amount: number): number {
  return Number(amount.toPrecision(3));
}
