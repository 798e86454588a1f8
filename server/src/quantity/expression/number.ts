/** Reads numbers with their units out of an expression: `13,8 V`, `10 000 Ω`, `4k7`, `24 AWG`. */

import type { Span } from "../../text/span.ts";
import { readWord } from "../codes.ts";
import { FigureError } from "../problem.ts";
import { type UnitMeaning, unitSymbol } from "../unitMeanings.ts";
import { readUnitAt, readWholeUnit } from "../unitText.ts";
import { valueClass } from "../valueClass.ts";
import { gaugeDiameter } from "../wireGauge.ts";
import { foldText } from "../words.ts";
import type { NumberLiteral } from "./tree.ts";
import { unknownUnit } from "./unknownUnit.ts";

/**
 * Groups of three may be parted by a plain, no-break, thin or narrow space (ISO 80000-1). `1e3` and
 * `1.5 × 10^3` are powers of ten.
 */
const NUMBER =
  /(\d{1,3}(?:[ \u00a0\u2007\u2009\u202f]\d{3})+(?!\d)|\d+)?(?:([.,])(\d+))?(?:[eE]([-+\u2212]?\d+)(?![\p{L}\p{Nd}])|\s?[×·⋅]\s?10(?:\^([-\u2212]?\d+)|([²³])))?/uy;
/** `1/4 W`, `3/8 in`: how resistors and drills are called; elsewhere a stroke divides. */
const FRACTION =
  /([1-9]\d?)\/(2|4|8|16|32|64)(?=[ \u00a0\u202f]?(?:in|W)(?![\p{L}\p{Nd}_·⋅/^²³]))/uy;
const SPACES = /[ \t\u00a0\u2007\u2009\u202f]*/y;
const WORD = /[\p{L}\p{Nd}_%‰°\u2103]*/uy;
const ONE: UnitMeaning = readWholeUnit("1")!;

/** Whether a number begins at `at`. */
export function startsNumber(text: string, at: number): boolean {
  return /^(?:\d|[.,]\d)/.test(text.slice(at, at + 2));
}

/** The number at `start`, with its unit. Throws a FigureError for what is none. */
export function readNumber(text: string, start: number): NumberLiteral {
  const fraction = readFraction(text, start);
  if (fraction) return fraction;
  NUMBER.lastIndex = start;
  const [written, whole = "", , part = "", exponent, raised, sign] = NUMBER.exec(text)!;
  const power = exponent ?? raised ?? (sign === "²" ? "2" : sign === "³" ? "3" : "0");
  const end = start + written.length;
  if (/^[.,]\d/.test(text.slice(end, end + 2))) throw twoSeparators(text, start, end);
  const digits = `${whole.replace(/\D/g, "")}.${part}`;
  const tight = wordAt(text, end);
  const code = tight === "" ? undefined : readCode(text.slice(start, end), tight);
  if (code) return { ...code, kind: "number", span: { start, end: end + tight.length } };
  const found = unitBehind(text, start, end);
  const unit = found?.unit ?? ONE;
  const span = { start, end: found?.end ?? end };
  return {
    kind: "number",
    span,
    amount: amountOf(digits, Number(power.replace("\u2212", "-")), unit, span),
    unit,
    figures: !found && part === "" ? undefined : figuresOf(digits),
  };
}

function readFraction(text: string, start: number): NumberLiteral | undefined {
  FRACTION.lastIndex = start;
  const match = FRACTION.exec(text);
  if (!match) return undefined;
  const { unit, end } = unitBehind(text, start, FRACTION.lastIndex)!;
  const amount = (Number(match[1]) / Number(match[2])) * 10 ** unit.exponent * unit.factor;
  return { kind: "number", span: { start, end }, amount, unit, figures: undefined };
}

/** `AWG 24`, `AWG 2/0`: the gauge behind the word, at `at`. */
export function readGauge(text: string, start: number, at: number): NumberLiteral {
  const match = /^\s*(?:([1-4])\/0|([-\u2212]?\d{1,2}))(?![\p{L}\p{N}.,])/u.exec(text.slice(at));
  if (!match) {
    throw new FigureError({
      kind: "form",
      span: { start, end: at },
      message: "A wire gauge is a whole number after AWG, such as AWG 24 or AWG 2/0.",
    });
  }
  const span = { start, end: at + match[0].length };
  const unit = unitSymbol("AWG")!;
  const gauge = match[1] ? 1 - Number(match[1]) : Number(match[2]!.replace("\u2212", "-"));
  return { kind: "number", span, amount: gaugeDiameter(gauge), unit, figures: 2 };
}

type CodeReading = Pick<NumberLiteral, "amount" | "unit" | "figures" | "tolerance">;

/** `4k7`, `2R2`, `100n`, `5V1`: letter-for-point codes, where the letters are no unit by themselves. */
function readCode(number: string, letters: string): CodeReading | undefined {
  if (unitSymbol(letters)) return undefined;
  const word = foldText(number + letters);
  const reading = CLASSES.map((kind) => readWord(word, kind)).find((one) => one !== undefined);
  if (reading === undefined || reading.by === "class" || reading.unread > 0) return undefined;
  const { quantity, tolerance } = reading;
  return {
    amount: quantity.amount,
    unit: unitSymbol(quantity.unit)!,
    figures: figuresOf((number + letters).replace(/\D/g, "")),
    ...(tolerance && { tolerance }),
  };
}

/** Read as the text alone tells, then as a resistor's or a capacitor's: those have tolerance letters. */
const CLASSES = ["", "R", "C"].map(valueClass);

function unitBehind(text: string, start: number, end: number) {
  SPACES.lastIndex = end;
  SPACES.exec(text);
  const at = SPACES.lastIndex;
  const word = wordAt(text, at);
  if (word === "") return undefined;
  const hyphenated = wordsAt(text, at);
  const found = hyphenated ? undefined : readUnitAt(text, at);
  if (found) return found;
  if (hyphenated) throw unknownUnit(text, start, { start: at, end: at + hyphenated.length });
  throw unknownUnit(text, start, { start: at, end: at + word.length });
}

/** `in-lb`: units of torque with a hyphen, which is minus elsewhere. */
function wordsAt(text: string, at: number): string | undefined {
  HYPHENATED.lastIndex = at;
  return HYPHENATED.exec(text)?.[0];
}

const HYPHENATED = /(?:in|ft|oz|lbf?|kgf?)-(?:lbf?s?|in|ft|oz|cm)(?![\p{L}\p{Nd}_(])/uy;

function wordAt(text: string, at: number): string {
  WORD.lastIndex = at;
  return WORD.exec(text)![0];
}

function amountOf(digits: string, power: number, unit: UnitMeaning, span: Span): number {
  const figure = Number(`${digits}e${power + unit.exponent}`);
  const amount = unit.scale === "gauge" ? gaugeDiameter(figure) : figure * unit.factor;
  const lost = amount === 0 && /[1-9]/.test(digits);
  if (Number.isFinite(amount) && !lost) return amount;
  throw new FigureError({
    kind: "form",
    span,
    message: `This number is too ${lost ? "small" : "large"} to compute with. Check its exponent.`,
  });
}

function figuresOf(digits: string): number {
  return Math.max(1, digits.replace(".", "").replace(/^0+/, "").length);
}

function twoSeparators(text: string, start: number, end: number): FigureError {
  const written = text
    .slice(start)
    .match(/^[\d.,]+/)![0]
    .replace(/[.,]$/, "");
  return new FigureError({
    kind: "form",
    span: { start, end: Math.max(end, start + written.length) },
    message: `${written} has two separators, so its size is not clear. Write one decimal point or comma, and separate thousands by a space.`,
  });
}
