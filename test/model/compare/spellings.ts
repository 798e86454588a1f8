/** Ways in which people write the same value. */
import type { Quantity } from "../../../server/src/quantity/value.ts";

/** Prefixes that a unit's values are written with. */
const PREFIXES: Readonly<Record<string, readonly (readonly [string, number])[]>> = {
  F: [
    ["p", 1e-12],
    ["n", 1e-9],
    ["u", 1e-6],
  ],
  H: [
    ["n", 1e-9],
    ["u", 1e-6],
    ["m", 1e-3],
  ],
};

/** All of them are read as the same quantity of the class that the unit belongs to. */
export function spellings({ amount, unit }: Quantity): string[] {
  if (unit === "Ω") return resistance(amount);
  return (PREFIXES[unit] ?? []).flatMap(([prefix, scale]) => {
    const number = Number((amount / scale).toPrecision(9));
    return number >= 0.01 && number < 100_000 ? prefixed(number, prefix, unit) : [];
  });
}

function prefixed(number: number, prefix: string, unit: string): string[] {
  const whole = String(number);
  const [before, behind = ""] = whole.split(".");
  const found = [
    `${whole}${prefix}`,
    `${whole}${prefix}${unit}`,
    `${whole} ${prefix}${unit}`,
    `${whole.replace(".", ",")} ${prefix}${unit}`,
    `${before}${prefix}${behind}`,
  ];
  return prefix === "u" ? [...found, `${whole}µ${unit}`, `${whole} μ${unit}`] : found;
}

function resistance(ohms: number): string[] {
  const whole = String(ohms);
  if (ohms < 1000 || ohms >= 1e6) return [whole, `${whole}R`, `${whole} Ω`, `${whole} ohm`];
  const kilo = String(ohms / 1000);
  const [before, behind = ""] = kilo.split(".");
  return [
    whole,
    `${kilo}k`,
    `${kilo} kΩ`,
    `${kilo}K`,
    `${kilo.replace(".", ",")}k`,
    `${before}k${behind}`,
  ];
}
