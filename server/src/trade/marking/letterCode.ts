/** Values in the letter-and-digit code: 4K7, R47, 4n7. Source: IEC 60062:2016. */
import { figuresOf } from "./figures.ts";

type Coded = "Ω" | "F" | "H";

const LETTERS: {
  readonly [unit in Coded]: readonly (readonly [letter: string, exponent: number])[];
} = {
  Ω: [
    ["R", 0],
    ["K", 3],
    ["M", 6],
    ["G", 9],
  ],
  F: [
    ["p", -12],
    ["n", -9],
    ["µ", -6],
  ],
  H: [
    ["n", -9],
    ["µ", -6],
    ["m", -3],
  ],
};

/**
 * The code of a value in two to four figures: `4K7` of 4.7 kΩ, `R47`, `100R`, `p33`. Undefined for
 * a value with more figures, or none.
 */
export function letterCode(amount: number, unit: Coded): string | undefined {
  const figures = [2, 3, 4].map((count) => figuresOf(amount, count)).find((one) => one);
  if (!figures) return undefined;
  const letters = LETTERS[unit];
  const [letter, exponent] =
    letters.findLast(([, power]) => amount >= 10 ** power * (1 - 1e-9)) ?? letters[0]!;
  const shift = figures.exponent - exponent;
  const digits = String(figures.digits);
  if (shift >= 0) return `${digits}${"0".repeat(shift)}${letter}`;
  const point = digits.length + shift;
  if (point < 0) return `${letter}${"0".repeat(-point)}${digits.replace(/0+$/, "")}`;
  return `${digits.slice(0, point)}${letter}${digits.slice(point).replace(/(?<=.)0+$/, "")}`;
}
