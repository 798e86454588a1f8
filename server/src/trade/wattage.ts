/** Usual bodies of wire-ended resistors by their power: wattages common practice, bodies K3D. */
import { readValue } from "../quantity/readValue.ts";
import type { UsualHeight } from "./usualHeights.ts";

const BODIES: readonly (readonly [watts: number, mm: number, words: string])[] = [
  [0.125, 1.6, "an eighth-watt resistor lying"],
  [0.35, 2.5, "a quarter-watt resistor lying"],
  [0.6, 3.2, "a half-watt resistor lying"],
  [1, 3.6, "a one-watt resistor lying"],
  [2, 4.5, "a two-watt resistor lying"],
  [3, 6, "a three-watt resistor lying"],
  [5, 9, "a five-watt resistor lying"],
];

/** The height of a lying resistor with the power that its text names, a quarter watt if none. */
export function wattage(text: string): UsualHeight | undefined {
  const watts = readValue(text, "R").power?.amount ?? 0.25;
  const body = BODIES.find(([limit]) => watts <= limit);
  return body && { mm: body[1], of: body[2] };
}
