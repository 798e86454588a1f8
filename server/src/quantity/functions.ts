/** Functions that an expression may use: those of arithmetic here, and those that a layer above adds. */

/** A formula or table of the trade, as far as evaluation needs to know it. */
export interface FormulaFunction {
  readonly name: string;
  readonly parameters: readonly FormulaParameter[];
  /** Coherent SI symbol of the result; `1` for a plain number, `°C` for a temperature. */
  readonly unit: string;
  /** Where it holds, in plain words. */
  readonly range: string;
  /** In coherent units; NaN where it has no meaning. */
  compute(args: readonly (number | string)[]): number;
  /** What is outside the range of validity. */
  warn?(args: readonly (number | string)[]): string | undefined;
}

export interface FormulaParameter {
  readonly name: string;
  /** As for the result, or `word` for a key that is handed over as written. */
  readonly unit: string;
  /** How the result moves as this argument grows. */
  readonly trend: "rises" | "falls" | "either";
  readonly default?: number | string;
}

export type FormulaFunctions = ReadonlyMap<string, FormulaFunction>;

/** Functions of arithmetic, with the number of their arguments. */
export const ARITHMETIC: ReadonlyMap<string, { readonly least: number; readonly most: number }> =
  new Map([
    ["sqrt", { least: 1, most: 1 }],
    ["abs", { least: 1, most: 1 }],
    ["min", { least: 1, most: 50 }],
    ["max", { least: 1, most: 50 }],
    ["ln", { least: 1, most: 1 }],
    ["exp", { least: 1, most: 1 }],
    ["sin", { least: 1, most: 1 }],
    ["cos", { least: 1, most: 1 }],
  ]);

export const CONSTANTS: ReadonlyMap<string, number> = new Map([
  ["pi", Math.PI],
  ["π", Math.PI],
]);
