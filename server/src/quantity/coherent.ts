/** Values in coherent SI units, for programs: V, A, Ω, W, J, s, m, N·m, K, and 1 for plain numbers. */
import type { FigureValue } from "./evaluation/value.ts";

export interface CoherentValue {
  readonly nominal: number;
  readonly min: number;
  readonly max: number;
  readonly unit: string;
}

/** Printing units that are no coherent SI units, with what stands for them. */
const COHERENT: { readonly [unit: string]: string } = { "%": "1", rad: "1", VA: "W", "°C": "K" };

/** A temperature in °C is given as its thermodynamic temperature in K. */
export function coherentValue({ nominal, min, max, unit, isPoint }: FigureValue): CoherentValue {
  const convert = (amount: number) => rounded(isPoint ? amount + 273.15 : amount);
  return {
    nominal: convert(nominal),
    min: convert(min),
    max: convert(max),
    unit: COHERENT[unit] ?? unit,
  };
}

/** Without what binary rounding adds at the end. */
function rounded(amount: number): number {
  return Number(amount.toPrecision(12));
}
