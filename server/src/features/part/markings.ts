/** How a part is marked: its colour bands and the codes printed on it, also in words for a hover. */
import { kindOf } from "../../model/partKind.ts";
import type { Part } from "../../model/parts.ts";
import { chipHeight } from "../../trade/chipSizes.ts";
import { bandsFor, type Colour, valueBands } from "../../trade/marking/colours.ts";
import { eia96, figureCode } from "../../trade/marking/figureCode.ts";
import { letterCode } from "../../trade/marking/letterCode.ts";

export interface Marking {
  /** The ways in which its bands can be: one where the tolerance is known, else without its band. */
  readonly bands: readonly (readonly Colour[])[];
  /** Tolerance in per cent that the last band stands for. */
  readonly percent: number | undefined;
  /** Codes that may be printed on it, the likeliest first. */
  readonly printed: readonly string[];
}

/** Of a part that shows nothing. */
export const UNMARKED: Marking = { bands: [], percent: undefined, printed: [] };

export function markingOf(part: Part): Marking {
  const { value } = part.line;
  if (!value) return UNMARKED;
  const kind = kindOf(part);
  const isChip = chipHeight(part.line.cells.package?.text ?? "", kind) !== undefined;
  if (kind === "resistor" && value.unit === "Ω") {
    return isChip ? printed(chipResistor(value.amount)) : wiredResistor(part, value.amount);
  }
  // Ceramic chips carry no mark.
  if (kind === "capacitor" && value.unit === "F" && !isChip) {
    return printed(capacitor(value.amount));
  }
  return kind === "inductor" && value.unit === "H" ? printed(inductor(value.amount)) : UNMARKED;
}

/** One paragraph, or empty where nothing is known. */
export function markings(part: Part): string {
  const { bands, percent, printed } = markingOf(part);
  const codes = printed.length > 0 ? `Printed: ${printed.join(", ")}.` : "";
  return [bandWords(bands, percent), codes].filter((text) => text !== "").join(" ");
}

/** The tolerance band stands apart, as it does on the part. */
function bandWords(ways: Marking["bands"], percent: number | undefined): string {
  const [first] = ways;
  if (!first) return "";
  if (percent !== undefined) {
    return `Bands: ${first.slice(0, -1).join(" ")}, ${first.at(-1)} (${percent} %).`;
  }
  if (first.length === 1) return `Bands: one, ${first[0]}.`;
  const words = ways.map((bands) => bands.join(" ")).join(", or ");
  return `Bands: ${words}, and one for the tolerance.`;
}

function wiredResistor({ line }: Part, ohms: number): Marking {
  const text = /^(\d+(?:\.\d+)?) %$/.exec(line.tolerance ?? "")?.[1];
  const known = text === undefined ? undefined : bandsFor(ohms, Number(text));
  const codes = distinct(letterCode(ohms, "Ω"));
  if (ohms === 0) return { bands: [["black"]], percent: undefined, printed: codes };
  if (known) return { bands: [known], percent: Number(text), printed: codes };
  const ways = [valueBands(ohms, 2), valueBands(ohms, 3)].filter((one) => one !== undefined);
  return { bands: ways, percent: undefined, printed: codes };
}

function chipResistor(ohms: number): readonly (string | undefined)[] {
  const three = ohms < 10 ? letterCode(ohms, "Ω") : figureCode(ohms, 3);
  const code = eia96(ohms);
  return [three, figureCode(ohms, 4), code && `${code} (EIA-96)`];
}

/** Above, a capacitor is an electrolytic as a rule, with its value printed in full. */
const LARGEST_CODED = 10e-6;

function capacitor(farads: number): readonly (string | undefined)[] {
  if (farads > LARGEST_CODED) return [];
  return [figureCode(farads * 1e12, 3), letterCode(farads, "F")];
}

function inductor(henry: number): readonly (string | undefined)[] {
  return [figureCode(henry * 1e6, 3), letterCode(henry, "H")];
}

function printed(codes: readonly (string | undefined)[]): Marking {
  return { bands: [], percent: undefined, printed: distinct(...codes) };
}

function distinct(...codes: readonly (string | undefined)[]): readonly string[] {
  return [...new Set(codes.filter((code) => code !== undefined))];
}
