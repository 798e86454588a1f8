/**
 * Marks of figures: 472 on chip resistors, 104 on capacitors, 01C after EIA-96. Sources: IEC
 * 60062:2016 with its annex A; EIA-198 for capacitors.
 */
import { seriesValues } from "../resistors/preferred.ts";
import { figuresOf } from "./figures.ts";

/** Two figures (or three) and the number of noughts: `472` of 4700, `4701` in four. */
export function figureCode(amount: number, places: 3 | 4): string | undefined {
  const figures = figuresOf(amount, places - 1);
  if (!figures || figures.exponent < 0 || figures.exponent > 9) return undefined;
  return `${figures.digits}${figures.exponent}`;
}

/** `472` is 4700, `1002` is 10 000. Undefined for a text that is no such mark. */
export function readFigureCode(mark: string): number | undefined {
  const match = /^([1-9]\d{1,2})(\d)$/.exec(mark);
  return match ? Number(`${match[1]}e${match[2]}`) : undefined;
}

/** Letters by the power of ten that they stand for; the second is a variant, from memory. */
const LETTERS: readonly (readonly [letters: string, exponent: number])[] = [
  ["Z", -3],
  ["YR", -2],
  ["XS", -1],
  ["A", 0],
  ["BH", 1],
  ["C", 2],
  ["D", 3],
  ["E", 4],
  ["F", 5],
];

/** `01C` of 10 kΩ: the place in E96 and a letter. Undefined for a value that is not in E96. */
export function eia96(ohms: number): string | undefined {
  const figures = figuresOf(ohms, 3);
  if (!figures) return undefined;
  const place = seriesValues("E96")!.findIndex((one) => Math.round(one * 100) === figures.digits);
  const letter = LETTERS.find(([, exponent]) => exponent === figures.exponent)?.[0][0];
  return place < 0 || !letter ? undefined : `${String(place + 1).padStart(2, "0")}${letter}`;
}

/** Reads an EIA-96 mark in Ω; undefined for a text that is none. */
export function readEia96(mark: string): number | undefined {
  const match = /^(\d\d)([A-Z])$/.exec(mark);
  const value = match && seriesValues("E96")![Number(match[1]) - 1];
  const exponent = match && LETTERS.find(([letters]) => letters.includes(match[2]!))?.[1];
  if (value === undefined || value === null || typeof exponent !== "number") return undefined;
  return Number(`${Math.round(value * 100)}e${exponent}`);
}
