/** How a part is marked, in words for a hover: its colour bands and the codes printed on it. */
import { kindOf } from "../../model/partKind.ts";
import type { Part } from "../../model/parts.ts";
import { chipHeight } from "../../trade/chipSizes.ts";
import { bandsFor, type Colour, valueBands } from "../../trade/marking/colours.ts";
import { eia96, figureCode } from "../../trade/marking/figureCode.ts";
import { letterCode } from "../../trade/marking/letterCode.ts";

/** One paragraph, or empty where nothing is known. */
export function markings(part: Part): string {
  const { value } = part.line;
  if (!value) return "";
  const kind = kindOf(part);
  const isChip = chipHeight(part.line.cells.package?.text ?? "", kind) !== undefined;
  if (kind === "resistor" && value.unit === "Ω") {
    return isChip ? printed(chipResistor(value.amount)) : wiredResistor(part, value.amount);
  }
  // Ceramic chips carry no mark.
  if (kind === "capacitor" && value.unit === "F" && !isChip)
    return printed(capacitor(value.amount));
  return kind === "inductor" && value.unit === "H" ? printed(inductor(value.amount)) : "";
}

function wiredResistor({ line }: Part, ohms: number): string {
  const percent = /^(\d+(?:\.\d+)?) %$/.exec(line.tolerance ?? "")?.[1];
  const code = printed([letterCode(ohms, "Ω")]);
  return [bandWords(ohms, percent), code].filter((text) => text !== "").join(" ");
}

/** The tolerance band stands apart, as it does on the part. */
function bandWords(ohms: number, percent: string | undefined): string {
  const bands = bandsFor(ohms, percent === undefined ? undefined : Number(percent));
  if (percent !== undefined && bands && ohms > 0) {
    return `Bands: ${bands.slice(0, -1).join(" ")}, ${bands.at(-1)} (${percent} %).`;
  }
  if (ohms === 0) return "Bands: one, black.";
  const ways = [valueBands(ohms, 2), valueBands(ohms, 3)].filter((one) => one !== undefined);
  return ways.length > 0
    ? `Bands: ${ways.map(words).join(", or ")}, and one for the tolerance.`
    : "";
}

function words(bands: readonly Colour[]): string {
  return bands.join(" ");
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

function printed(codes: readonly (string | undefined)[]): string {
  const known = [...new Set(codes.filter((code) => code !== undefined))];
  return known.length > 0 ? `Printed: ${known.join(", ")}.` : "";
}
