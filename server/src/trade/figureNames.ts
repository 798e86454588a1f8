/**
 * Names of figures that the trade gives a meaning: with a subject, `P(R50)` is a power and nothing
 * else. Symbols after IEC 60027-1 and ISO 80000; the plain words are Kitquill's own.
 */

export interface FigureSymbol {
  readonly symbol: string;
  /** What it is, for messages and hover: `the power in R50`. */
  readonly meaning: string;
  /** Coherent SI symbol; °C for a temperature as a point. */
  readonly unit: string;
}

const SYMBOLS: readonly FigureSymbol[] = [
  { symbol: "V", meaning: "a voltage", unit: "V" },
  { symbol: "I", meaning: "a current", unit: "A" },
  { symbol: "P", meaning: "a power", unit: "W" },
  { symbol: "R", meaning: "a resistance", unit: "Ω" },
  { symbol: "C", meaning: "a capacitance", unit: "F" },
  { symbol: "L", meaning: "an inductance", unit: "H" },
  { symbol: "Tj", meaning: "a junction temperature", unit: "°C" },
  { symbol: "torque", meaning: "a torque", unit: "N·m" },
  { symbol: "hole", meaning: "a diameter", unit: "m" },
  { symbol: "turns", meaning: "a number of turns", unit: "1" },
  { symbol: "former", meaning: "a diameter", unit: "m" },
  { symbol: "wire", meaning: "a diameter or length", unit: "m" },
  { symbol: "leads", meaning: "a length", unit: "m" },
  { symbol: "stack", meaning: "a thickness", unit: "m" },
  { symbol: "bend", meaning: "a radius or distance", unit: "m" },
];

export const FIGURE_SYMBOLS: ReadonlyMap<string, FigureSymbol> = new Map(
  SYMBOLS.map((one) => [one.symbol, one]),
);
