/** Quantities as text, after NIST SP 811: a no-break space before the unit, prefixes by thousands. */
import type { Quantity, Unit } from "./value.ts";

const PREFIXES: readonly { symbol: string; exponent: number }[] = [
  { symbol: "T", exponent: 12 },
  { symbol: "G", exponent: 9 },
  { symbol: "M", exponent: 6 },
  { symbol: "k", exponent: 3 },
  { symbol: "", exponent: 0 },
  { symbol: "m", exponent: -3 },
  { symbol: "µ", exponent: -6 },
  { symbol: "n", exponent: -9 },
  { symbol: "p", exponent: -12 },
];

/** `4.7 kΩ`, `100 nF`, `0.25 W`, `4700 µF`. Nine figures at most, always with a decimal point. */
export function formatQuantity({ amount, unit }: Quantity): string {
  if (unit === "1") return figures(amount);
  const exponent = unit === "%" ? 0 : exponentOf(round(amount), unit);
  const { symbol } = PREFIXES.find((prefix) => prefix.exponent === exponent)!;
  return `${figures(scale(amount, exponent))}\u00a0${symbol}${unit}`;
}

function exponentOf(amount: number, unit: Unit): number {
  const size = Math.abs(amount);
  if (size === 0 || !Number.isFinite(size)) return 0;
  // As the trade writes them: 0.47 Ω, 0.25 W, 4700 µF.
  if ((unit === "Ω" || unit === "W") && size >= 0.1 && size < 1) return 0;
  if (unit === "F" && size >= 1e-3) return size < 0.1 ? -6 : 0;
  return PREFIXES.find(({ exponent }) => size >= Number(`1e${exponent}`))?.exponent ?? -12;
}

/** Shifts the decimal point by text, so that no binary rounding shows. */
function scale(amount: number, exponent: number): number {
  const [mantissa, power] = round(amount).toExponential().split("e");
  return Number(`${mantissa}e${Number(power) - exponent}`);
}

function round(amount: number): number {
  return Number(amount.toPrecision(9));
}

/** Groups of three from five figures on, parted by a narrow no-break space. */
function figures(amount: number): string {
  const [whole, part] = String(round(amount)).replace("-", "\u2212").split(".");
  const grouped = /\d{5}/.test(whole!) ? whole!.replace(/\B(?=(\d{3})+$)/g, "\u202f") : whole!;
  return part === undefined ? grouped : `${grouped}.${part}`;
}
