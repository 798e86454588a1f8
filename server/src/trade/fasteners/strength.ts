/** How much pull a screw stands, by its property class. Stresses in Pa, forces in N. */
import { stressArea, type Thread } from "./threads.ts";

/**
 * Proof stress in MPa up to M16. Source: ISO 898-1; 5.8, 10.9 and 12.9 from memory of it. Stainless screws:
 * their 0.2 % limit, from memory of ISO 3506-1.
 */
const PROOF: { readonly [propertyClass: string]: number } = {
  "4.6": 225,
  "4.8": 310,
  "5.8": 380,
  "6.8": 440,
  "8.8": 580,
  "10.9": 830,
  "12.9": 970,
  "A2-50": 210,
  "A2-70": 450,
  "A2-80": 600,
  "A4-70": 450,
  "A4-80": 600,
};

export const PROPERTY_CLASSES: readonly string[] = Object.keys(PROOF);

const CLASS =
  /(?<![\p{L}\p{N}.,])(4\.6|4\.8|5\.8|6\.8|8\.8|10\.9|12\.9|A[24]-[578]0)(?![\p{N}.,]*\p{N})/iu;

/** The property class that a text names: `pan head screw, steel 4.8`; undefined where none. */
export function propertyClassIn(text: string): string | undefined {
  return CLASS.exec(text)?.[1]?.toUpperCase();
}

/** Proof stress in Pa; NaN for a class not known here. */
function proofStress(propertyClass: string): number {
  return (PROOF[propertyClass] ?? Number.NaN) * 1e6;
}

/** The pull in N that a screw stands without lasting stretch: proof stress times stress area. */
export function proofLoad(thread: Thread, propertyClass: string): number {
  return proofStress(propertyClass) * stressArea(thread);
}
