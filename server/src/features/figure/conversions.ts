/** The same value in the other unit that the trade uses: N·m and lbf·in, mm and in, mm and AWG. */
import { type FigureValue, hasUnit } from "../../quantity/evaluation/value.ts";
import { printAmount, printNumber } from "../../quantity/printing.ts";
import { figuresOf } from "../../quantity/printRange.ts";
import { readWholeUnit } from "../../quantity/unitText.ts";
import { gaugeOf } from "../../quantity/wireGauge.ts";

/** What a figure is about decides which units make sense. */
export interface Converted {
  readonly value: FigureValue;
  /** The symbol of its name: `torque`, `wire`. */
  readonly symbol: string | undefined;
}

/** Each with its unit, such as `4.43 lbf·in`; empty where there is no other unit in use. */
export function conversions({ value, symbol }: Converted): readonly string[] {
  const { nominal, unit, isPoint } = value;
  if (unit === "N·m" || symbol === "torque") return inUnits(value, ["N·m", "kgf·cm", "lbf·in"]);
  if (hasUnit(value, "m")) return lengths(value, symbol);
  if (unit === "N") return inUnits(value, ["kgf", "lbf"]);
  if (isPoint) return [`${printNumber(nominal * 1.8 + 32, figuresOf(value))}\u00a0°F`];
  if (hasUnit(value, "C")) return inUnits(value, ["Ah"]);
  if (hasUnit(value, "1") && unit === "1" && nominal > 0 && nominal < 1) {
    return [printAmount(nominal, "%", 3)];
  }
  return [];
}

function lengths(value: FigureValue, symbol: string | undefined): readonly string[] {
  const { nominal } = value;
  if (!(nominal > 0) || nominal >= 10) return [];
  const shown = inUnits(value, ["mm", nominal < 2.54e-3 ? "mil" : "in"]);
  const gauge = gaugeOf(nominal);
  const isWire = symbol === "wire" || symbol === undefined;
  if (!isWire || gauge < -3.5 || gauge > 56.5 || nominal > 12e-3) return shown;
  const whole = Math.round(gauge);
  const near = Math.abs(gauge - whole) < 0.1 ? "" : "about ";
  return [...shown, `${near}AWG ${whole > 0 ? whole : `${1 - whole}/0`}`];
}

function inUnits({ nominal, ...value }: FigureValue, units: readonly string[]): string[] {
  const figures = Math.max(3, figuresOf({ nominal, ...value }));
  return units.map((unit) => {
    const { factor, exponent } = readWholeUnit(unit)!;
    const amount = Number((nominal / (factor * Number(`1e${exponent}`))).toPrecision(12));
    return `${printNumber(amount, figures)}\u00a0${unit}`;
  });
}
