/** Units as they stand behind a number: one symbol, or a product and quotient of several. */
import { type Dimension, multiplied, NO_DIMENSION, raised } from "./dimension.ts";
import { type UnitMeaning, unitSymbol } from "./unitMeanings.ts";

/** A unit read from a text, and the offset behind it. */
export interface FoundUnit {
  readonly unit: UnitMeaning;
  readonly end: number;
}

const SYMBOL = /[\p{L}%‰°\u2103][\p{L}\p{Nd}_]*/uy;
const POWER = /\^?([²³])|\^([-−]?\d)(?![\d.,])/uy;
/** The units of torque that people part by a space. */
const SPACED = /[ \u00a0\u202f](?=(?:m|cm|mm|in|ft)(?![\p{L}\p{Nd}_]))/uy;
const FORCES = new Set(["N", "cN", "mN", "kN", "kgf", "gf", "lbf", "ozf"]);

/**
 * The unit that begins at `start`: `kΩ`, `K/W`, `N·m`, `kgf cm`, `W/(m·K)`, `mm²`. A dot or a slash
 * belongs to the unit only where a unit follows it at once: `V / R1` is a division.
 */
export function readUnitAt(text: string, start: number): FoundUnit | undefined {
  const first = readFactor(text, start);
  if (!first) return undefined;
  let factors: readonly Factor[] = [first.factor];
  let end = first.end;
  for (;;) {
    const next = readNext(text, end, text.slice(start, end));
    if (!next) break;
    factors = [...factors, ...next.factors];
    end = next.end;
  }
  return { unit: combine(factors), end };
}

/** A unit that is the whole text, such as a formula's parameter has; undefined for other texts. */
export function readWholeUnit(text: string): UnitMeaning | undefined {
  if (text === "1") return { factor: 1, exponent: 0, dimension: NO_DIMENSION, coherent: "1" };
  const found = readUnitAt(text, 0);
  return found?.end === text.length ? found.unit : undefined;
}

interface Factor {
  readonly meaning: UnitMeaning;
  readonly power: number;
}

interface Factors {
  readonly factors: readonly Factor[];
  readonly end: number;
}

function readNext(text: string, at: number, before: string): Factors | undefined {
  const sign = text[at];
  if (sign === "·" || sign === "⋅") return only(readFactor(text, at + 1), 1);
  if (sign === "/") {
    return text[at + 1] === "(" ? readDivisors(text, at + 2) : only(readFactor(text, at + 1), -1);
  }
  SPACED.lastIndex = at;
  const space = FORCES.has(before) ? SPACED.exec(text) : null;
  return space ? only(readFactor(text, SPACED.lastIndex), 1) : undefined;
}

function only(found: FoundFactor | undefined, sign: 1 | -1): Factors | undefined {
  if (!found) return undefined;
  const { meaning, power } = found.factor;
  return { factors: [{ meaning, power: sign * power }], end: found.end };
}

/** `m·K)` of `W/(m·K)`. */
function readDivisors(text: string, start: number): Factors | undefined {
  const factors: Factor[] = [];
  for (let at = start; ; at++) {
    const found = readFactor(text, at);
    if (!found) return undefined;
    factors.push({ ...found.factor, power: -found.factor.power });
    at = found.end;
    if (text[at] === ")") return { factors, end: at + 1 };
    if (text[at] !== "·" && text[at] !== "⋅") return undefined;
  }
}

interface FoundFactor {
  readonly factor: Factor;
  readonly end: number;
}

function readFactor(text: string, start: number): FoundFactor | undefined {
  SYMBOL.lastIndex = start;
  const symbol = SYMBOL.exec(text)?.[0];
  const meaning = symbol === undefined ? undefined : unitSymbol(symbol);
  if (!symbol || !meaning) return undefined;
  const end = start + symbol.length;
  POWER.lastIndex = end;
  const power = POWER.exec(text);
  if (!power) return { factor: { meaning, power: 1 }, end };
  const [written, superscript, figure] = power;
  const value = superscript ? (superscript === "²" ? 2 : 3) : Number(figure!.replace("−", "-"));
  return { factor: { meaning, power: value }, end: end + written.length };
}

function combine(factors: readonly Factor[]): UnitMeaning {
  const [first] = factors;
  if (factors.length === 1 && first!.power === 1) return first!.meaning;
  let factor = 1;
  let exponent = 0;
  let dimension: Dimension = NO_DIMENSION;
  for (const { meaning, power } of factors) {
    factor *= meaning.factor ** power;
    exponent += meaning.exponent * power;
    dimension = multiplied(dimension, raised(meaning.dimension, power));
  }
  return { factor, exponent, dimension, coherent: coherentText(factors) };
}

/** `W/(m·K)`; in a compound unit °C is a difference. */
function coherentText(factors: readonly Factor[]): string {
  const powers = new Map<string, number>();
  for (const { meaning, power } of factors) {
    for (const symbol of coherentSymbols(meaning)) {
      powers.set(symbol, (powers.get(symbol) ?? 0) + power);
    }
  }
  return unitText([...powers].map(([symbol, power]) => ({ symbol, power })));
}

function coherentSymbols({ coherent }: UnitMeaning): readonly string[] {
  if (coherent === "%" || coherent === "1") return [];
  return coherent === "°C" ? ["K"] : coherent.split("·");
}

/** Writes a product of symbols with powers: `V/A`, `kg·m²/s³`, `1/s`. */
export function unitText(
  factors: readonly { readonly symbol: string; readonly power: number }[],
): string {
  const above = factors.filter(({ power }) => power > 0).map(withPower);
  const below = factors.filter(({ power }) => power < 0).map(withPower);
  const top = above.join("·") || "1";
  if (below.length === 0) return top;
  return below.length === 1 ? `${top}/${below[0]}` : `${top}/(${below.join("·")})`;
}

function withPower({ symbol, power }: { symbol: string; power: number }): string {
  const size = Math.abs(power);
  if (size === 1) return symbol;
  if (size === 2 || size === 3) return `${symbol}${size === 2 ? "²" : "³"}`;
  return `${symbol}^${size}`;
}
