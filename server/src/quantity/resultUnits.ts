/** The unit that a result is printed in, from its dimension alone. */
import { basesOf, type Dimension, isPlain, multiplied, raised } from "./dimension.ts";
import { readWholeUnit, unitText } from "./unitText.ts";

/** Units with names of their own, and compounds in use; the first of a dimension is taken. */
const KNOWN = (
  "V A W Ω F H Hz C J N S K m s kg cd dB T Wb Pa " +
  "m² m³ K/W W/K V/s A/s V/m A/m W/m Ω/m Ω·m H/m F/m V/K A/K Ω/K m/s m/s² kg/m³ kg/m " +
  "W/m² W/(m·K) J/K J/kg N/m A² V² A/m² A·m V·s dB/m 1/K 1/m 1/V 1/A 1/W 1/Ω"
).split(" ");

const BY_DIMENSION = new Map<number, string>();
for (const symbol of KNOWN) remember(dimensionOf(symbol), symbol);
for (const power of [1, -1] as const) {
  for (const one of KNOWN.slice(0, 14)) {
    for (const other of KNOWN.slice(0, 14)) {
      const text = unitText([
        { symbol: one, power: 1 },
        { symbol: other, power },
      ]);
      remember(multiplied(dimensionOf(one), dimensionOf(other), power), text);
    }
  }
}

/** `W` for power, `V/s`, `1` for a plain number; base units where nothing shorter is known. */
export function resultUnit(dimension: Dimension): string {
  if (isPlain(dimension)) return "1";
  const known = BY_DIMENSION.get(numberOf(dimension));
  if (known) return known;
  const factors = basesOf(dimension).map(({ base, power }) => ({ symbol: base, power }));
  return unitText(factors);
}

function dimensionOf(symbol: string): Dimension {
  if (!symbol.startsWith("1/")) return readWholeUnit(symbol)!.dimension;
  return raised(readWholeUnit(symbol.slice(2))!.dimension, -1);
}

function remember(dimension: Dimension, symbol: string): void {
  const key = numberOf(dimension);
  if (!BY_DIMENSION.has(key)) BY_DIMENSION.set(key, symbol);
}

/** The exponents as digits of one number; NaN where one of them is no small whole number. */
function numberOf(dimension: Dimension): number {
  let number = 0;
  for (let i = 0; i < dimension.length; i++) {
    const digit = dimension[i]! + 32;
    if (!Number.isInteger(digit) || digit < 0 || digit > 63) return NaN;
    number = number * 64 + digit;
  }
  return number;
}
