/** Masses of parts, as lists and sentences state them. */

/**
 * From this mass in kg on lifting by hand is a load in the sense of ISO 11228-1 (from memory of its
 * scope).
 */
export const HEAVY = 3;

const MASS = /(?<![\d.,])(\d{1,3}(?:[.,]\d{1,3})?) ?(kg|lb)s?\b/i;
const POUND = 0.45359237;

/** The first mass that a text states, in kg. */
export function massIn(text: string): number | undefined {
  const match = MASS.exec(text);
  if (!match) return undefined;
  const amount = Number(match[1]!.replace(",", "."));
  return match[2]!.toLowerCase() === "lb" ? amount * POUND : amount;
}
