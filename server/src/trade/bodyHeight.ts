/** How high a part stands above the board, and where that is known from. */
import { rememberedOfAll } from "../quantity/remembered.ts";
import { filmBoxHeight, radialHeight } from "./capacitorHeights.ts";
import { chipHeight } from "./chipSizes.ts";
import { footprintHeight } from "./footprintHeight.ts";
import { type PartHints, partClass } from "./partClass.ts";
import type { PartClass } from "./partWords.ts";
import { type UsualHeight, usualHeight } from "./usualHeights.ts";
import { wattage } from "./wattage.ts";

export interface BodyHeight {
  readonly mm: number;
  /** In words for a hover: `usual height of a DO-35 diode`. */
  readonly from: string;
}

export interface DescribedPart extends PartHints {
  /** Class letters of the designator. */
  readonly letters: string;
}

/** Names of packages are short; longer texts are remarks. */
const MAX_NAME = 120;

/**
 * The height of a part's body above the board in mm: from the figures in its footprint's name, else
 * the usual height of such a package. Undefined where neither tells.
 */
export function bodyHeight(part: DescribedPart): BodyHeight | undefined {
  const { letters, value = "", description = "" } = part;
  return heightOnce(letters, value, part.package ?? "", description);
}

const heightOnce = rememberedOfAll(heightOf);

function heightOf(
  letters: string,
  value: string,
  packageName: string,
  description: string,
): BodyHeight | undefined {
  const name = withoutLibrary(packageName);
  const named = footprintHeight(name);
  if (named) return { mm: named.mm, from: `${named.what} in the footprint name ${name}` };
  const kind = partClass(letters, { value, package: packageName, description });
  const other = `${description} ${value}`.trim();
  return canSize(kind, [name, other]) ?? usualOf(kind, name, other);
}

function usualOf(kind: PartClass, name: string, other: string): BodyHeight | undefined {
  const usual =
    capacitorHeight(kind, name, other) ??
    usualHeight(kind, name, other) ??
    chipOf(kind, name) ??
    (name === "" ? lyingResistor(kind, other) : undefined);
  return usual && { mm: usual.mm, from: `usual height of ${usual.of}` };
}

/** `Capacitor_THT:CP_Radial_D5.0mm` names its library first. */
function withoutLibrary(name: string): string {
  return name
    .slice(0, MAX_NAME)
    .trim()
    .replace(/^[\w.-]+:(?=\S)/, "");
}

const FIGURE = String.raw`(\d{1,2}(?:[.,]\d{1,2})?)`;
const DIAMETER = new RegExp(`(?:_D|radial[ ,]*(?:leaded)?[ ,]*)${FIGURE} ?mm`, "i");
/** `E2,5-5` in older libraries: pitch and diameter of an electrolytic. */
const PITCH_DIAMETER = new RegExp(`^E\\d[.,]?\\d?-${FIGURE}$`);
const PITCH = new RegExp(`_P(?:itch)?${FIGURE}mm`);
const WIDTH = new RegExp(`_W${FIGURE}mm`);

const CAN = new RegExp(
  `(?<![\\d.,])${FIGURE} ?(?:mm)? ?[x×] ?${FIGURE}(?: ?mm)?(?![\\d.,x×])`,
  "i",
);

/**
 * `6.3 x 11 mm` of an electrolytic is diameter by height. So it is of a capacitor of which nothing
 * else is said, where it is taller than wide: boxes are given with three sizes or by their pitch.
 */
function canSize(kind: PartClass, texts: readonly string[]): BodyHeight | undefined {
  if (kind !== "electrolytic" && kind !== "capacitor") return undefined;
  for (const text of texts) {
    const match = CAN.exec(text);
    const [across, mm] = match ? [number(match[1]!), number(match[2]!)] : [0, 0];
    const isCan = kind === "electrolytic" || mm > across * 1.3;
    if (match && isCan && radialHeight(across) && mm >= 5 && mm <= 60) {
      return { mm, from: `size ${across} × ${mm} mm in the parts list` };
    }
  }
  return undefined;
}

function capacitorHeight(kind: PartClass, name: string, other: string): UsualHeight | undefined {
  if (kind !== "capacitor" && kind !== "electrolytic") return undefined;
  if (kind === "electrolytic" || /^(?:CP_Radial|E\d)/.test(name)) {
    // Tantalum drops are lower, and their names give no height.
    if (/tantal/i.test(name)) return undefined;
    const match = DIAMETER.exec(name) ?? PITCH_DIAMETER.exec(name) ?? sizeIn(name, other);
    return match ? radialHeight(number(match[1]!)) : undefined;
  }
  const pitch = /^C_Rect_/.test(name) ? PITCH.exec(name) : null;
  if (!pitch) return undefined;
  const width = WIDTH.exec(name);
  return filmBoxHeight(number(pitch[1]!), width ? number(width[1]!) : undefined);
}

/** `radial, 8 mm` in the description of a part without a package. */
function sizeIn(name: string, other: string): RegExpExecArray | null {
  return name === "" ? DIAMETER.exec(other) : null;
}

function chipOf(kind: PartClass, name: string): UsualHeight | undefined {
  const chip = chipHeight(name, kind);
  return chip && { mm: chip.mm, of: `a chip part of size ${chip.size}` };
}

/**
 * A resistor of which nothing is said but its value lies flat, in a kit: a quarter watt if the list
 * names no power (common practice; bodies K3D).
 */
function lyingResistor(kind: PartClass, other: string): UsualHeight | undefined {
  if (
    kind !== "resistor" ||
    /smd|smt|chip|vert|upright|stand|network|array|\bsi[lp]\b|ntc|ptc|ldr/i.test(other)
  ) {
    return undefined;
  }
  return wattage(other);
}

function number(text: string): number {
  return Number(text.replace(",", "."));
}
