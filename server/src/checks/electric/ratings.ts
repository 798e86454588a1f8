/** What a part of the list stands, in the kind of quantity that a figure declares for it. */
import { kindOf } from "../../model/partKind.ts";
import type { Part } from "../../model/parts.ts";
import { readValue } from "../../quantity/readValue.ts";
import { currentAt, voltageAt, workingVoltage } from "../../trade/resistors/derating.ts";

/** Symbols of figures that load a part: power, voltage, current, junction temperature. */
export const LOADS = { P: "W", V: "V", I: "A", Tj: "°C" } as const;
export type Load = keyof typeof LOADS;

export function isLoad(symbol: string): symbol is Load {
  return Object.hasOwn(LOADS, symbol);
}

export interface Rating {
  /** In the load's unit. */
  readonly most: number;
  /** Where it comes from, in words: `its rating in the parts list`. */
  readonly from: string;
  /** How a share of it is judged; a temperature has no share. */
  readonly share: "power" | "voltage" | undefined;
}

const LISTED = "its rating in the parts list";
/** Junctions of silicon stand this where the list says no other temperature (common practice). */
const USUAL_JUNCTION = 150;

/** Undefined where the list gives none. */
export function ratingOf(part: Part, load: Load): Rating | undefined {
  switch (load) {
    case "P":
      return listed(powerOf(part), "power");
    case "V":
      return voltageRating(part);
    case "I":
      return currentRating(part);
    case "Tj":
      return junctionRating(part);
  }
}

function listed(most: number | undefined, share: Rating["share"]): Rating | undefined {
  return most === undefined ? undefined : { most, from: LISTED, share };
}

/** The description of a diode or transistor gives its power too: `Zener diode 6.2 V, 0.5 W`. */
function powerOf({ line }: Part): number | undefined {
  return line.power?.amount ?? described(line.cells.description?.text)?.power?.amount;
}

function described(text: string | undefined) {
  return text ? readValue(text) : undefined;
}

function voltageRating(part: Part): Rating | undefined {
  const own = part.line.voltage?.amount;
  const ohms = ohmsOf(part);
  const power = powerOf(part);
  if (ohms === undefined || power === undefined) return listed(own, "voltage");
  const byPower = voltageAt(power, ohms);
  const ofType = own ?? workingVoltage(power);
  if (ofType !== undefined && ofType < byPower) {
    const from = own === undefined ? "the working voltage of such resistors" : LISTED;
    return { most: ofType, from, share: "voltage" };
  }
  return { most: byPower, from: "the voltage at its rated power", share: "voltage" };
}

function currentRating(part: Part): Rating | undefined {
  const { line } = part;
  const ohms = ohmsOf(part);
  const power = powerOf(part);
  if (ohms !== undefined && power !== undefined) {
    return {
      most: currentAt(power, ohms),
      from: "the current at its rated power",
      share: "voltage",
    };
  }
  const fuse = line.value?.unit === "A" ? line.value.amount : undefined;
  const said = described(line.cells.description?.text)?.current?.amount;
  return listed(line.current?.amount ?? fuse ?? said, "voltage");
}

function ohmsOf(part: Part): number | undefined {
  const { value } = part.line;
  const isResistor = value?.unit === "Ω" && value.amount > 0 && kindOf(part) === "resistor";
  return isResistor ? value.amount : undefined;
}

function junctionRating({ line: { cells } }: Part): Rating {
  const text = `${cells.value?.text ?? ""} ${cells.description?.text ?? ""}`;
  const said = /(?<!\d)(1\d\d|200) ?°C/.exec(text)?.[1];
  return said
    ? { most: Number(said), from: "its limit in the parts list", share: undefined }
    : { most: USUAL_JUNCTION, from: "the usual limit of silicon", share: undefined };
}
