/** Colour bands on resistors: what each colour means, reading and writing. Source: IEC 60062:2016. */
import { figuresOf } from "./figures.ts";

interface Meaning {
  readonly digit?: number;
  readonly exponent: number;
  /** In per cent; the second is that of editions before 2016. */
  readonly tolerance?: readonly number[];
  /** Temperature coefficient in ppm/K. */
  readonly coefficient?: number;
}

const MEANINGS = {
  pink: { exponent: -3 },
  silver: { exponent: -2, tolerance: [10] },
  gold: { exponent: -1, tolerance: [5] },
  black: { digit: 0, exponent: 0, coefficient: 250 },
  brown: { digit: 1, exponent: 1, tolerance: [1], coefficient: 100 },
  red: { digit: 2, exponent: 2, tolerance: [2], coefficient: 50 },
  orange: { digit: 3, exponent: 3, tolerance: [0.05], coefficient: 15 },
  yellow: { digit: 4, exponent: 4, tolerance: [0.02], coefficient: 25 },
  green: { digit: 5, exponent: 5, tolerance: [0.5], coefficient: 20 },
  blue: { digit: 6, exponent: 6, tolerance: [0.25], coefficient: 10 },
  violet: { digit: 7, exponent: 7, tolerance: [0.1], coefficient: 5 },
  grey: { digit: 8, exponent: 8, tolerance: [0.01, 0.05], coefficient: 1 },
  white: { digit: 9, exponent: 9 },
} as const satisfies { readonly [colour: string]: Meaning };

export type Colour = keyof typeof MEANINGS;
export const COLOURS = Object.keys(MEANINGS) as readonly Colour[];

/** What the bands of a resistor say. */
export interface BandReading {
  readonly ohms: number;
  /** In per cent; 20 without a tolerance band. Two where editions of the standard differ (grey). */
  readonly tolerances: readonly number[];
  /** Temperature coefficient in ppm/K, of six bands. */
  readonly coefficient?: number;
}

/**
 * Reads three to six bands, from the end where they begin: two figures of three and four bands,
 * three of five and six. Undefined where a colour means nothing at its place.
 */
export function readBands(bands: readonly Colour[]): BandReading | undefined {
  if (bands.length < 3 || bands.length > 6) return undefined;
  const count = bands.length < 5 ? 2 : 3;
  const meanings: readonly Meaning[] = bands.map((colour) => MEANINGS[colour]);
  const digits = meanings.slice(0, count).map(({ digit }) => digit);
  if (digits.includes(undefined)) return undefined;
  const [multiplier, tolerance, last] = meanings.slice(count);
  const tolerances = tolerance ? tolerance.tolerance : [20];
  if (!tolerances || (last && last.coefficient === undefined)) return undefined;
  const ohms = Number(`${digits.join("")}e${multiplier!.exponent}`);
  return { ohms, tolerances, ...(last && { coefficient: last.coefficient! }) };
}

/** From this tolerance in per cent on, resistors have two figures (common practice: E24 and E96). */
const TWO_FIGURES_FROM = 5;

/**
 * The bands of a resistor: three figures for 2 % and closer, two for 5 % and wider if they do.
 * Without a tolerance the band for it is left out. A link of 0 Ω has one black band. Undefined where
 * the value needs more figures than bands give, or lies outside 1 mΩ to 999 GΩ.
 */
export function bandsFor(ohms: number, tolerance?: number): readonly Colour[] | undefined {
  if (ohms === 0) return ["black"];
  const last = tolerance === undefined ? [] : [toleranceColour(tolerance)];
  if (last.includes(undefined)) return undefined;
  const wide = tolerance !== undefined && tolerance >= TWO_FIGURES_FROM;
  const value = (wide ? valueBands(ohms, 2) : undefined) ?? valueBands(ohms, 3);
  return value && [...value, ...(last as readonly Colour[])];
}

/** The bands of the value alone, in two figures (or three) and the multiplier. */
export function valueBands(ohms: number, count: 2 | 3): readonly Colour[] | undefined {
  const figures = figuresOf(ohms, count);
  const multiplier = figures && COLOURS.find((one) => MEANINGS[one].exponent === figures.exponent);
  if (!multiplier) return undefined;
  const digits = [...String(figures.digits)].map((digit) => colourOfDigit(Number(digit)));
  return [...digits, multiplier];
}

function colourOfDigit(digit: number): Colour {
  return COLOURS.find((one) => (MEANINGS[one] as Meaning).digit === digit)!;
}

function toleranceColour(percent: number): Colour | undefined {
  return COLOURS.find((one) => (MEANINGS[one] as Meaning).tolerance?.[0] === percent);
}
