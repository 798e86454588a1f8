/** How much pull a screw stands, by its property class. Stresses in Pa, forces in N. */
import { stressArea, type Thread } from "./threads.ts";

/**
 * Proof stress in MPa. Source: ISO 898-1; 5.8, 10.9 and 12.9 from memory of it. Stainless screws:
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

/** Class 8.8 is a little stronger in larger sizes; nothing else here depends on the size. */
const THICK = { class: "8.8", above: 0.016, proof: 600 };

export const PROPERTY_CLASSES: readonly string[] = Object.keys(PROOF);

const CLASS =
  /(?<![\p{L}\p{N}.,])(4\.6|4\.8|5\.8|6\.8|8\.8|10\.9|12\.9|A[24]-[578]0)(?![\p{N}.,]*\p{N})/iu;

/** The property class that a text names: `pan head screw, steel 4.8`; undefined where none. */
export function propertyClassIn(text: string): string | undefined {
  return CLASS.exec(text)?.[1]?.toUpperCase();
}

/** Proof stress in Pa; NaN for a class not known here. */
export function proofStress(propertyClass: string, thread: Thread): number {
  const thick = propertyClass === THICK.class && thread.diameter > THICK.above;
  const megapascal = thick ? THICK.proof : PROOF[propertyClass];
  return megapascal === undefined ? Number.NaN : megapascal * 1e6;
}

/** The pull in N that a screw stands without lasting stretch: proof stress times stress area. */
export function proofLoad(thread: Thread, propertyClass: string): number {
  return proofStress(propertyClass, thread) * stressArea(thread);
}
