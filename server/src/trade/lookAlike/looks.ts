/**
 * How parts look, as far as they are taken for one another at the bench. Common practice: small glass
 * diodes, parts in the transistor case TO-92, chips in cases of one size, and resistors whose rings
 * differ in the multiplier alone (IEC 60062: ten times the value).
 */
import { valueBands } from "../marking/colours.ts";
import { type PartHints, partClass } from "../partClass.ts";

export interface Look {
  readonly kind: "glass diode" | "TO-92" | "chip" | "resistor";
  /** Parts of one kind and case look alike. */
  readonly case: string;
}

/** Small glass cases; the print on them takes a magnifier. */
const GLASS = /do-?3[45]|sod-?27|sod-?68|sod-?80|mini-?melf|\bll-?34/i;
const TO_92 = /to-?92/i;
const CHIP = /(?:p?di[pl]|so(?:ic|p)?|[tmsv]{0,2}ssop|msop|[lt]?qfp|plcc)-?(\d{1,3})/i;
/** Cases of parts that wear rings; chip resistors wear figures or none. */
const RINGED = /axial|din ?0\d{3}|through[ -]?hole|\btht?\b/i;

/** How a part with these letters and words looks; undefined where it is not easily mistaken. */
export function lookOf(letters: string, hints: PartHints): Look | undefined {
  const shape = hints.package ?? "";
  const kind = partClass(letters, hints);
  if (kind === "resistor") {
    return shape === "" || RINGED.test(shape) ? { kind, case: "" } : undefined;
  }
  if (kind === "diode") return GLASS.test(shape) ? { kind: "glass diode", case: "" } : undefined;
  if (kind !== "ic" && kind !== "transistor") return undefined;
  if (TO_92.test(shape)) return { kind: "TO-92", case: "" };
  const size = CHIP.exec(shape);
  return size ? { kind: "chip", case: nameOfCase(size[0]) } : undefined;
}

/** `PDIP-8`, `DIL8` and `DIP-8` are one. */
function nameOfCase(name: string): string {
  return name
    .toUpperCase()
    .replace(/^P?DI[PL]/, "DIP")
    .replace("-", "");
}

/** Whether the rings of two resistors differ in the multiplier alone, by one colour: 4k7 and 47k. */
export function ringsDifferByOne(ohms: number, other: number): boolean {
  const [low, high] = ohms < other ? [ohms, other] : [other, ohms];
  if (low <= 0 || Math.abs(high / low - 10) > 1e-6) return false;
  return valueBands(low, 3) !== undefined && valueBands(high, 3) !== undefined;
}
