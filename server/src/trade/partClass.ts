/** What kind of part a line of the list is: by the list's own words first, the letters last. */
import { readValue } from "../quantity/readValue.ts";
import { rememberedOfAll } from "../quantity/remembered.ts";
import type { Unit } from "../quantity/value.ts";
import { classesOfLetters } from "./classLetters.ts";
import { classesNamed, DECISIVE, type PartClass } from "./partWords.ts";
import { classOfType } from "./typeNumbers.ts";

export type { PartClass } from "./partWords.ts";

/** What the list says of a part beside its designator. */
export interface PartHints {
  readonly value?: string | undefined;
  readonly package?: string | undefined;
  readonly description?: string | undefined;
}

/**
 * The kind of part with these class letters (`R` of R12). Where words and letters agree on one of
 * several kinds named, that one is taken ("resistor for the LED" of R3 is a resistor); else the
 * description counts before the value's unit, the package, the value's words and the letters.
 */
export function partClass(letters: string, hints: PartHints): PartClass {
  return classOnce(letters, hints.value ?? "", hints.package ?? "", hints.description ?? "");
}

const classOnce = rememberedOfAll(classOf);

function classOf(
  letters: string,
  value: string,
  packageName: string,
  description: string,
): PartClass {
  const family = classesOfLetters(letters);
  const said = classesNamed(description).filter((one) => family[0] !== "ic" || BESIDE_IC.has(one));
  const worded = classesNamed(value);
  const packaged = classesNamed(withoutSockets(packageName));
  const decisive = [...said, ...worded].find((one) => DECISIVE.has(one)) ?? holderOf(letters);
  if (decisive) return decisive;
  const measured = isElectrolytic(value, packageName, description, letters)
    ? "electrolytic"
    : classOfUnit(value, letters, family);
  const named = [...said, ...worded, ...packaged];
  const agreed = agreeing(measured ? [...named, measured] : named, family);
  if (agreed) return agreed;
  return (
    said[0] ??
    measured ??
    classOfPackage(packageName, letters, family) ??
    packaged[0] ??
    classOfWords(worded, family) ??
    (family.length === 1 ? undefined : classOfKnown(value, family)) ??
    family[0] ??
    classesNamed(letters)[0] ??
    "unknown"
  );
}

/** What else may be called U; other words tell what a chip is for: "relay driver", "oscillator". */
const BESIDE_IC = new Set<PartClass>([...DECISIVE, "ic", "module", "display", "connector"]);

/** The more special of the classes that words and letters both name: an LED is a diode, too. */
function agreeing(
  named: readonly PartClass[],
  family: readonly PartClass[],
): PartClass | undefined {
  const both = family.filter((one) => named.includes(one));
  return both.find((one) => SPECIAL.has(one)) ?? both[0];
}

const SPECIAL = new Set<PartClass>(["potentiometer", "electrolytic", "led"]);

/** XU3 is the socket of U3, XF1 the holder of F1 (ASME Y14.44-2008). */
function holderOf(letters: string): PartClass | undefined {
  const match = /^X([A-Z]+)$/.exec(letters.toUpperCase());
  const held = match && classesOfLetters(match[1]!)[0];
  if (held === "ic" || held === "relay" || held === "transistor" || held === "tube")
    return "socket";
  if (held === "fuse") return "fuse holder";
  return held === "battery" ? "battery holder" : undefined;
}

/** A footprint drawn for a socketed chip still is the chip's. */
function withoutSockets(name: string): string {
  return name.replace(/(?<=mm)_Socket/i, "").replace(":", " ");
}

const BY_UNIT: { readonly [unit in Unit]?: PartClass } = {
  Ω: "resistor",
  F: "capacitor",
  H: "inductor",
  Hz: "crystal",
};

/** `1kΩ` is a resistor even when it is called C13. */
function classOfUnit(
  value: string,
  letters: string,
  family: readonly PartClass[],
): PartClass | undefined {
  const unit = readValue(value, letters).value?.unit;
  const own = unit && BY_UNIT[unit];
  // A plain value says no more of RV1 than that it is one.
  if (own === "resistor" && family[0] === "potentiometer") return family[0];
  if (own !== "resistor" || family.length === 0 || family.includes(own)) return own;
  if (family.includes("potentiometer")) return "potentiometer";
  // A loudspeaker's and a ferrite bead's value is in ohms, too.
  return letters.toUpperCase() !== "FB" && PASSIVE.has(family[0]!) ? own : undefined;
}

/**
 * So large a capacitor on leads is an electrolytic if nothing says otherwise, and must go the right way
 * round; chips of ceramic reach further (common practice).
 */
function isElectrolytic(
  value: string,
  packageName: string,
  description: string,
  letters: string,
): boolean {
  const size = readValue(value, letters).value;
  if (size?.unit !== "F" || size.amount < LEAST_ON_LEADS) return false;
  const words = `${packageName} ${description} ${value}`;
  if (DRY.test(words)) return false;
  return ON_LEADS.test(words) || (packageName === "" && size.amount >= LEAST_ANYWHERE);
}

/** In farads; from the second on where nothing is said of the package. */
const LEAST_ON_LEADS = 9.9e-6;
const LEAST_ANYWHERE = 46e-6;
const ON_LEADS = /\b(?:radial|axial|bedrahtet|stehend|liegend|through[ -]?hole|tht)\b/i;
/** Dielectrics without polarity, and chips. */
const DRY =
  /film|foil|foli|cer[aá]m|céram|keram|mlcc|\bmk[ptcs]\d?\b|polyprop|polyest|\bx[57][rs]\b|\bc0g\b|\bnp0\b|\bmica\b|\bsm[dt]\b|\b(?:0402|0603|0805|1206|1210|1812|2220)\b/i;

const PASSIVE = new Set<PartClass>(["resistor", "capacitor", "inductor"]);

const CHIP_PACKAGE =
  /(?:^|[^a-z])(?:p?di[pl]|so(?:ic|p|l)?|[tmsv]{0,2}ssop|msop|[lt]?qfp|[vu]?qfn|dfn|plcc|bga)-?\d/i;
const TRANSISTOR_PACKAGE =
  /(?:^|[^a-z])(?:to-?(?:3|5|18|39|92|126|220|247)|sot-?\d{2,3}|dpak|d2pak)(?!\d)/i;

/** Packages tell little beside plain letters, but J29 in SOIC-16 is no connector. */
function classOfPackage(
  name: string,
  letters: string,
  family: readonly PartClass[],
): PartClass | undefined {
  if (CHIP_PACKAGE.test(name) && (family.length === 0 || family[0] === "connector")) return "ic";
  const open = family.length === 0 || ["T", "TR", "V"].includes(letters.toUpperCase());
  return open && TRANSISTOR_PACKAGE.test(name) ? "transistor" : undefined;
}

/** The value of a connector, switch or test point is its label on the board: J4 SPEAKER. */
const LABELLED = new Set<PartClass>(["connector", "switch", "test point", "jumper", "ic"]);

function classOfWords(
  worded: readonly PartClass[],
  family: readonly PartClass[],
): PartClass | undefined {
  return family.length > 0 && LABELLED.has(family[0]!) ? undefined : worded[0];
}

/** Type numbers decide where the letters leave it open: T1 is a BC547 or a transformer. */
function classOfKnown(value: string, family: readonly PartClass[]): PartClass | undefined {
  const known = classOfType(value);
  return known && (family.length === 0 || family.includes(known)) ? known : undefined;
}
