/**
 * Quantities as text, after NIST SP 811 (2008): a no-break space before the unit, `N·m` with a dot,
 * one prefix by thousands, a zero before the decimal point. Where the trade writes otherwise
 * (0.25 W, 4700 µF, 0.5 N·m) its way is kept.
 */

const PREFIXES: readonly { readonly symbol: string; readonly exponent: number }[] = [
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

/** Symbols that may take a prefix; in a compound unit the first symbol takes it. */
const PREFIXED = /^(?:[VAWΩFHCJNSTm]|VA|Hz|Pa|Wb|s|N·m|lx|lm|cd)(?=$|[/·])/u;
/** Units whose multiples the trade does not write with a prefix: kiloseconds, kilokelvins. */
const NOT_ABOVE_ONE = new Set(["s", "m", "lm", "lx", "cd", "F"]);
/** Units that stay bare somewhat below one: 0.25 W, 0.47 Ω, 0.5 N·m. */
const BARE_BELOW_ONE = new Set(["Ω", "W", "N·m"]);
interface Smaller {
  readonly below: number;
  readonly unit: string;
  readonly exponent: number;
}

/** Smaller units where prefixes follow a rule of their own; the smallest that fits stands first. */
const SMALLER: { readonly [unit: string]: readonly Smaller[] } = {
  // Workshops think in millimetres: a wire of 0.5 mm, not of 500 µm.
  m: [
    { below: 1e-5, unit: "µm", exponent: -6 },
    { below: 1, unit: "mm", exponent: -3 },
  ],
  "m²": [{ below: 0.1, unit: "mm²", exponent: -6 }],
  "m³": [{ below: 0.1, unit: "cm³", exponent: -6 }],
  kg: [
    { below: 1e-3, unit: "mg", exponent: -6 },
    { below: 1, unit: "g", exponent: -3 },
  ],
};

/**
 * `4.7 kΩ`, `0.25 W`, `4700 µF`, `55 %`: an amount in coherent SI units, °C for temperatures as
 * points, % for shares. `figures` is the most significant figures shown; zeros at the end are not.
 */
export function printAmount(amount: number, unit: string, figures = 9): string {
  return printIn(amount, shownUnit(rounded(amount, figures), unit), figures);
}

/** The unit that an amount is shown in, and the power of ten that its prefix stands for. */
export interface ShownUnit {
  readonly unit: string;
  readonly exponent: number;
}

/** The multiple of a unit that suits the amount; `1` of a plain number. */
export function shownUnit(amount: number, unit: string): ShownUnit {
  if (unit === "1") return { unit, exponent: 0 };
  if (unit === "%") return { unit, exponent: -2 };
  const small = SMALLER[unit]?.find(({ below }) => Math.abs(amount) < below);
  if (small && amount !== 0) return small;
  if (!PREFIXED.test(unit) || /^[^/]*[²³^]/.test(unit)) return { unit, exponent: 0 };
  const { symbol, exponent } = prefixOf(amount, unit);
  return { unit: symbol + unit, exponent };
}

/** The multiple of a coherent unit that a text writes, `mA` of A; undefined for another spelling. */
export function writtenUnit(text: string, unit: string): ShownUnit | undefined {
  const { exponent } = PREFIXES.find(({ symbol }) => symbol + unit === text) ?? {};
  return exponent === undefined ? undefined : { unit: text, exponent };
}

/** An amount in coherent SI units in a multiple that is given. */
export function printIn(amount: number, { unit, exponent }: ShownUnit, figures = 9): string {
  const number = printNumber(scale(rounded(amount, figures), exponent), figures);
  if (unit === "1") return number;
  return `${number}\u00a0${unit.replace(/^1\/([^/·()²³^]+)$/u, "$1⁻¹")}`;
}

/** A bare number: groups of three from five figures on, a true minus, powers of ten at the ends. */
export function printNumber(amount: number, figures = 9): string {
  const value = rounded(amount, figures);
  const size = Math.abs(value);
  if (size !== 0 && (size >= 1e9 || size < 1e-6)) return scientific(value);
  const [whole, part] = plainDigits(value).split(".");
  const grouped = /\d{5}/.test(whole!) ? whole!.replace(/\B(?=(\d{3})+$)/g, "\u202f") : whole!;
  return (part === undefined ? grouped : `${grouped}.${part}`).replace("-", "\u2212");
}

function prefixOf(amount: number, unit: string) {
  const size = Math.abs(amount);
  const none = PREFIXES.find(({ exponent }) => exponent === 0)!;
  if (size === 0) return none;
  if (size >= 1 && NOT_ABOVE_ONE.has(unit)) return none;
  if (size >= 0.1 && size < 1 && BARE_BELOW_ONE.has(unit)) return none;
  if (unit === "F" && size >= 1e-3 && size < 0.1) {
    return PREFIXES.find(({ exponent }) => exponent === -6)!;
  }
  if (unit === "F" && size >= 0.1) return none;
  return PREFIXES.find(({ exponent }) => size >= Number(`1e${exponent}`)) ?? PREFIXES.at(-1)!;
}

/** Shifts the decimal point by text, so that no binary rounding shows. */
function scale(amount: number, exponent: number): number {
  const [mantissa, power] = amount.toExponential().split("e");
  return Number(`${mantissa}e${Number(power) - exponent}`);
}

function rounded(amount: number, figures: number): number {
  return Number(amount.toPrecision(figures));
}

function plainDigits(value: number): string {
  const text = String(value);
  if (!text.includes("e")) return text;
  // Only small amounts come here: 1e-7.
  return value.toFixed(15).replace(/0+$/, "");
}

const SUPERSCRIPTS = "⁰¹²³⁴⁵⁶⁷⁸⁹";

/** `1.5 × 10¹²` */
function scientific(value: number): string {
  const [mantissa, power] = value.toExponential().split("e");
  const raised = Number(power)
    .toString()
    .replace("-", "⁻")
    .replace(/\d/g, (digit) => SUPERSCRIPTS[Number(digit)]!);
  return `${mantissa!.replace("-", "\u2212")} × 10${raised}`;
}
