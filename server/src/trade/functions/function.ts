/**
 * What a trade function is: a named formula or table of the trade that figures may use. The registry
 * carries all that evaluation, completion, signature help and the reference page need to know.
 */

export interface Parameter {
  readonly name: string;
  readonly meaning: string;
  /**
   * Coherent SI symbol of the argument (`m`, `V`, `K/W`, `N·m`; `1` for a plain number), `°C` for a
   * temperature as a point, or `word` for a key such as `M3`, `medium`, `8.8` or `TO-220`: a word is
   * handed over as written, without being read as an expression.
   */
  readonly unit: string;
  /**
   * How the result moves as this argument grows, all others held: worst-case evaluation goes by it.
   * `either` only where neither holds over the range. Words have no tolerance and say `either`.
   */
  readonly trend: Trend;
  /** The words that it takes, where they are a short list. */
  readonly keys?: readonly string[];
  /** Taken where the argument is left out; only parameters at the end have one. */
  readonly default?: number | string;
}

export type Trend = "rises" | "falls" | "either";

/** A number in the parameter's coherent unit, or the text of a word. */
export type Argument = number | string;

export interface TradeFunction {
  readonly name: string;
  readonly parameters: readonly Parameter[];
  /** Coherent SI symbol of the result, as for parameters. */
  readonly unit: string;
  /** One sentence: what it gives. */
  readonly summary: string;
  /** Standard, book or practice that the formula or table comes from. */
  readonly source: string;
  /** Where it holds, in plain words. */
  readonly range: string;
  readonly example: Example;
  /**
   * The result in `unit`, for one argument a parameter (defaults filled in). NaN where it has no
   * meaning: a key that the table lacks, a length below zero. Never throws.
   */
  compute(args: readonly Argument[]): number;
  /** What is outside the range of validity, and why that matters; undefined inside it. */
  warn?(args: readonly Argument[]): string | undefined;
}

/** A worked example for the reference page. */
export interface Example {
  /** As an author writes it: `coilInductance(12; 10 mm; 15 mm)`. */
  readonly written: string;
  /** The same arguments in coherent units, as `compute` takes them. */
  readonly args: readonly Argument[];
}

/** A parameter that takes a number. */
export function number(
  name: string,
  meaning: string,
  unit: string,
  trend: Trend,
  standard?: number,
): Parameter {
  return { name, meaning, unit, trend, ...(standard !== undefined && { default: standard }) };
}

/** A parameter that takes a word: one of the keys. */
export function word(
  name: string,
  meaning: string,
  keys: readonly string[],
  standard?: string,
): Parameter {
  const rest = standard !== undefined && { default: standard };
  return { name, meaning, unit: "word", trend: "either", keys, ...rest };
}
