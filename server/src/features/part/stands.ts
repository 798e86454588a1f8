/** What a part stands, in words for a hover: a resistor's volts and amperes, a capacitor's charge. */
import { kindOf } from "../../model/partKind.ts";
import type { Part } from "../../model/parts.ts";
import { storedEnergy } from "../../trade/capacitors/charge.ts";
import { currentAt, FILM, voltageAt, workingVoltage } from "../../trade/resistors/derating.ts";
import { shown } from "./shown.ts";

/** Charges below this do no harm worth telling, in J. */
const LEAST_ENERGY = 0.1;

/** One paragraph, or empty where the list gives no rating. */
export function stands(part: Part): string {
  const kind = kindOf(part);
  if (kind === "resistor") return resistorStands(part);
  return kind === "capacitor" || kind === "electrolytic" ? capacitorStands(part) : "";
}

function resistorStands({ line: { value, power, voltage } }: Part): string {
  if (!power) return "";
  const rating = `Stands ${shown(power.amount, "W")} up to ${shown(FILM.full, "°C")}`;
  const derated = `less above, nothing at ${shown(FILM.zero, "°C")} (film resistors)`;
  if (value?.unit !== "Ω" || value.amount <= 0) return `${rating}, ${derated}.`;
  const byPower = voltageAt(power.amount, value.amount);
  const ofType = voltage?.amount ?? workingVoltage(power.amount);
  const current = shown(currentAt(power.amount, value.amount), "A");
  if (ofType !== undefined && ofType < byPower) {
    const most = `at most ${shown(ofType, "V")}, the working voltage of such resistors`;
    return `${rating}, and ${most}; ${derated}.`;
  }
  return `${rating}: at most ${shown(byPower, "V")}, ${current}; ${derated}.`;
}

function capacitorStands({ line: { value, voltage } }: Part): string {
  if (!voltage) return "";
  const rating = `Stands ${shown(voltage.amount, "V")}`;
  if (value?.unit !== "F") return `${rating}.`;
  const energy = storedEnergy(value.amount, voltage.amount);
  if (energy < LEAST_ENERGY) return `${rating}.`;
  return `${rating}; charged to that it holds ${shown(energy, "J")}.`;
}
