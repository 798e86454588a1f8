/** Decimal numbers as value texts write them, with a point or a comma. */

/** Longer figures are order numbers, no values. */
const MAX_DIGITS = 9;

/**
 * `digits` × 10^`exponent`, rounded once. `digits` may have a decimal point or comma (`.1`, `4,7`).
 * Gives undefined for a whole number with idle zeros in front (`0603` is a package).
 */
export function decimal(digits: string, exponent: number): number | undefined {
  if (digits.length > MAX_DIGITS || /^0\d/.test(digits)) return undefined;
  return Number(`${digits.replace(/[,_]/, ".")}e${exponent}`);
}

/** `4,700` may be 4.7 or 4700, `1.000` one or a thousand; `0,047` can only be a fraction. */
export function isDoubtfulGroup(digits: string): boolean {
  return /^[1-9]\d{0,2}[.,]\d{3}$/.test(digits);
}
