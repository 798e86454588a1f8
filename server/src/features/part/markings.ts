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
  /** How many of them are so usual that a builder has to know them. */
  readonly usual: number;
}

/** Of a part that shows nothing. */
export const UNMARKED: Marking = { bands: [], percent: undefined, printed: [], usual: 0 };

/** Capacitors that are turned show the makers' own colours. */
const ADJUSTABLE = /trim|variab|adjust|einstell|drehko|ajust|regelb|instel/i;
/** Chokes in the shape of a resistor. */
const LYING = /axial/i;

export function markingOf(part: Part): Marking {
  const { value } = part.line;
  if (!value) return UNMARKED;
  const kind = kindOf(part);
  const isChip = chipHeight(part.line.cells.package?.text ?? "", kind) !== undefined;
  if (kind === "resistor" && value.unit === "Ω") {
    return isChip
      ? printed(chipResistor(value.amount))
      : banded(part, value.amount, letterCode(value.amount, "Ω"));
  }
  // Ceramic chips carry no mark.
  if (kind === "capacitor" && value.unit === "F" && !isChip) {
    return ADJUSTABLE.test(wordsOf(part)) ? UNMARKED : capacitor(value.amount);
  }
  return kind === "inductor" && value.unit === "H" ? inductor(part, value.amount) : UNMARKED;
}

function wordsOf({ line: { cells } }: Part): string {
  return [cells.value, cells.package, cells.description].map((cell) => cell?.text ?? "").join(" ");
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

/** With wires: `amount` in Ω, or in µH for a choke. */
function banded({ line }: Part, amount: number, code: string | undefined): Marking {
  const text = /^(\d+(?:\.\d+)?) %$/.exec(line.tolerance ?? "")?.[1];
  const known = text === undefined ? undefined : bandsFor(amount, Number(text));
  const codes = printed([code]);
  if (amount === 0) return { ...codes, bands: [["black"]] };
  if (known) return { ...codes, bands: [known], percent: Number(text) };
  const ways = [valueBands(amount, 2), valueBands(amount, 3)].filter((one) => one !== undefined);
  return { ...codes, bands: ways };
}

function chipResistor(ohms: number): readonly (string | undefined)[] {
  const three = ohms < 10 ? letterCode(ohms, "Ω") : figureCode(ohms, 3);
  const code = eia96(ohms);
  return [three, figureCode(ohms, 4), code && `${code} (EIA-96)`];
}

/** Above, a capacitor is an electrolytic as a rule, with its value printed in full. */
const LARGEST_CODED = 10e-6;
/** Below, makers print the bare pF as often as the code: 12 as well as 120 (common practice). */
const BARE_BELOW = 100;

function capacitor(farads: number): Marking {
  if (farads > LARGEST_CODED) return UNMARKED;
  const picofarads = Number((farads * 1e12).toPrecision(6));
  const code = figureCode(picofarads, 3);
  const letters = letterCode(farads, "F");
  if (picofarads >= BARE_BELOW) return printed([code, letters]);
  const bare = String(picofarads);
  return code ? printed([code, bare, letters], 2) : printed([letters, bare], 2);
}

/** Colours or figures count µH (common practice). */
function inductor(part: Part, henry: number): Marking {
  const code = letterCode(henry, "H");
  const microhenry = henry * 1e6;
  return LYING.test(part.line.cells.package?.text ?? "")
    ? banded(part, microhenry, code)
    : printed([figureCode(microhenry, 3), code]);
}

function printed(codes: readonly (string | undefined)[], usual = 1): Marking {
  const distinct = new Set(codes.filter((code) => code !== undefined));
  return { ...UNMARKED, printed: [...distinct], usual };
}
