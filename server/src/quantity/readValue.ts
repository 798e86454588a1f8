/**
 * Reads the text of a value cell: the value itself, tolerance and ratings, in whatever order and
 * spelling people use (`4k7 1% 0.25W`, `10v 22uF`, `100nf 50V 0603`). Codes after IEC 60062:2016.
 */
import { readWord, type WordReading } from "./codes.ts";
import { remembered, rememberedBy } from "./remembered.ts";
import { type FoundTolerance, findTolerance, toleranceOfLetter } from "./tolerance.ts";
import { readUnit } from "./units.ts";
import type { Quantity, Unit, ValueReading } from "./value.ts";
import { type ValueClass, valueClass } from "./valueClass.ts";
import { foldText, splitWords, type Word } from "./words.ts";

export { sameValue } from "./value.ts";

/** No value is longer; the rest of a longer text is not looked at. */
const MAX_TEXT = 400;
const MAX_WORD = 24;

/**
 * Reads a value text of a part with these class letters (`R`, `C`; unknown or none: the text alone
 * decides, and volts, amperes and watts are ratings). What may be meant in two ways (`1m` of a
 * resistor, `220` of a capacitor, `4,700`, `10k or 12k`) gives no value. Never throws.
 */
export function readValue(text: string, classLetters = ""): ValueReading {
  return readOnce(valueClass(classLetters), text);
}

const readOnce = rememberedBy((kind: ValueClass, text: string): ValueReading => {
  const folded = foldText(text.slice(0, MAX_TEXT));
  const percent = kind.typed ? undefined : findTolerance(folded);
  const readable = percent ? blank(folded, percent) : folded;
  const { readings, doubtful } = readAll(readable, kind);
  const chosen = choose(readings, kind, readable);
  const ratings = kind.typed ? [] : readings.filter((one) => one !== chosen);
  const power = ratings.find((one) => one.quantity.unit === "W");
  const voltage = ratings.find((one) => one.quantity.unit === "V");
  const current = ratings.find((one) => one.quantity.unit === "A");
  const value = chosen && !doubtful ? chosen : undefined;
  const tolerance = percent?.tolerance ?? value?.tolerance;
  const used = [percent, value, power, voltage, current].filter((one) => one !== undefined);
  return {
    ...(value && { value: value.quantity }),
    ...(tolerance && { tolerance }),
    ...(power && { power: power.quantity }),
    ...(voltage && { voltage: voltage.quantity }),
    ...(current && { current: current.quantity }),
    rest: restOf(text, used),
  };
});

/**
 * Reads a cell of a column for one rating, where the unit may stand in the header alone:
 * `63`, `63 V`, `6V3`; `0.25`, `1/4 W`. Gives undefined when the cell says something else.
 */
export function readRating(text: string, unit: Unit): Quantity | undefined {
  return ratingOnce(unit, text);
}

const ratingOnce = rememberedBy((unit: Unit, text: string): Quantity | undefined => {
  const kind: ValueClass = { units: [unit], bare: unit };
  const { readings } = readAll(foldText(text.slice(0, MAX_TEXT)), kind);
  return readings.find((one) => one.quantity.unit === unit)?.quantity;
});

/** Reads a cell of a tolerance column: `5`, `±5 %`, `0.25 pF`, `J`. */
export function readTolerance(text: string): string | undefined {
  return toleranceOnce(text);
}

const toleranceOnce = remembered((text: string): string | undefined => {
  const folded = foldText(text.slice(0, MAX_TEXT)).trim();
  const bare = /^(?:±|\+\/?-)? ?(\d{1,3}(?:[.,]\d{1,3})?)$/.exec(folded);
  if (bare) return `${bare[1]!.replace(",", ".")} %`;
  const picofarads = /^\d{1,3}(?:[.,]\d{1,3})? ?p[fF]$/.test(folded) ? `±${folded}` : folded;
  return findTolerance(picofarads)?.tolerance ?? toleranceOfLetter(folded);
});

interface Reading extends WordReading {
  readonly start: number;
  readonly end: number;
  /** A word that looks like a type number stands before it. */
  readonly afterType: boolean;
  /** Nothing unread stands before it. */
  readonly leads: boolean;
}

function readAll(text: string, kind: ValueClass) {
  const words = splitWords(text).flatMap((word) => cutAtDash(word, kind));
  const readings: Reading[] = [];
  let afterType = false;
  let leads = true;
  for (let i = 0; i < words.length; ) {
    const found = readFraction(words, i, kind) ?? readFrom(words, i, text, kind);
    if (found) {
      const { quantity, by, unread, tolerance } = found.reading;
      const { start, end } = found.span;
      readings.push({ quantity, by, unread, tolerance, start, end, afterType, leads });
    } else {
      afterType ||= isTypeNumber(words[i]!.text);
      leads = false;
    }
    i += found?.words ?? 1;
  }
  const doubtful = words.some((word, i) => isSpacedGroup(word, words[i + 1], readings, text));
  return { readings, doubtful };
}

interface Found {
  readonly reading: WordReading;
  readonly words: number;
  readonly span: { readonly start: number; readonly end: number };
}

/** A value from word `i` on: `10 k ohm`, `10 kΩ` and `10k` take three, two and one. */
function readFrom(
  words: readonly Word[],
  i: number,
  text: string,
  kind: ValueClass,
): Found | undefined {
  const first = words[i]!;
  if (first.text.length > MAX_WORD) return undefined;
  const skip = lettersBefore(first.text, kind);
  let joined = first.text.slice(skip);
  let best: Found | undefined;
  for (let n = 1; n <= 3; n++) {
    const last = words[i + n - 1]!;
    const reading = readWord(joined, kind);
    // A taper letter is left to the rest, so it is not worth a second word.
    if (reading && (n === 1 || (reading.by !== "class" && reading.unread === 0))) {
      const span = { start: first.start + skip, end: last.end - reading.unread };
      if (skip === 0 || (reading.by !== "class" && kind.units.includes(reading.quantity.unit))) {
        best = { reading, words: n, span };
      }
    }
    const next = words[i + n];
    if (!next || !continues(next, last, text)) break;
    joined += next.text;
  }
  return best && withToleranceLetter(best, words[i + best.words], text);
}

/** Whether a word can be the prefix or unit of the number before it. */
function continues(next: Word, last: Word, text: string): boolean {
  return /^[a-zA-ZΩ-]{1,12}$/.test(next.text) && text.slice(last.end, next.start).trim() === "";
}

/** `22 pF C` is ±0.25 pF. */
function withToleranceLetter(found: Found, next: Word | undefined, text: string): Found {
  const { reading, span } = found;
  if (!next || reading.quantity.unit !== "F" || reading.tolerance) return found;
  if (text.slice(span.end, next.start).trim() !== "" || !/^[BCDGJKMZ]$/.test(next.text))
    return found;
  const tolerance = toleranceOfLetter(next.text, reading.quantity.amount)!;
  return {
    reading: { ...reading, tolerance },
    words: found.words + 1,
    span: { start: span.start, end: next.end },
  };
}

/** `100nF-50V` is a value and its rating; other dashes belong to type numbers. */
function cutAtDash(word: Word, kind: ValueClass): readonly Word[] {
  const dash = word.text.indexOf("-");
  if (dash < 1 || word.text.length > MAX_WORD) return [word];
  const [left, right] = [word.text.slice(0, dash), word.text.slice(dash + 1)];
  const value = readWord(left, kind);
  const isValue = value?.by !== "class" && kind.units.some((unit) => unit === value?.quantity.unit);
  if (!isValue || !RATINGS.has(readWord(right, kind)?.quantity.unit)) return [word];
  const at = word.start + dash;
  return [
    { text: left, start: word.start, end: at },
    { text: right, start: at + 1, end: word.end },
  ];
}

/**
 * What stands before a value in its word: the taper of a potentiometer (`A1M`, `B10k`), the speed of
 * a fuse (`T3.15A`), how many are in one case (`8x10k`).
 */
function lettersBefore(word: string, kind: ValueClass): number {
  const before =
    kind.code === "Ω" ? BEFORE_OHM : kind.units[0] === "A" ? BEFORE_AMPERE : BEFORE_OTHERS;
  return before.exec(word)?.[0].length ?? 0;
}

const BEFORE_OHM = /^(?:[A-DW]-?|[1-9]\d?[xX×])(?=\d)/;
const BEFORE_AMPERE = /^[TFM]{1,2}(?=\d)/;
const BEFORE_OTHERS = /^[1-9]\d?[xX×](?=\d)/;

const VULGAR: { readonly [char: string]: number } = { "½": 1 / 2, "¼": 1 / 4, "⅛": 1 / 8 };

/** `1/4w`, `1/4 W`, `½ W`; the mere `1/4` in a column of watts. */
function readFraction(words: readonly Word[], i: number, kind: ValueClass): Found | undefined {
  const word = words[i]!;
  const match = /^(?:1\/(\d{1,2})|([½¼⅛]))([a-zA-Z]*)$/.exec(word.text);
  if (!match) return undefined;
  const apart = match[3] === "";
  const unit = readUnit(apart ? (words[i + 1]?.text ?? "") : match[3]!);
  const isSpelled = unit?.unit === "W" && unit.exponent === 0;
  if (!isSpelled && !(apart && kind.bare === "W")) return undefined;
  const amount = match[2] ? VULGAR[match[2]]! : 1 / Number(match[1]);
  if (!Number.isFinite(amount)) return undefined;
  const count = apart && isSpelled ? 2 : 1;
  const end = words[i + count - 1]!.end;
  const reading: WordReading = { quantity: { amount, unit: "W" }, by: "unit", unread: 0 };
  return { reading, words: count, span: { start: word.start, end } };
}

/** `2 200 µF` with a plain space may be 2200 µF or two figures; `47 100V` is not. */
function isSpacedGroup(
  first: Word,
  second: Word | undefined,
  readings: readonly Reading[],
  text: string,
): boolean {
  if (!second || !/^\d{1,3}$/.test(first.text) || !/^\d{3}(?!\d)/.test(second.text)) return false;
  if (text.slice(first.end, second.start) !== " ") return false;
  const rating = readings.find((one) => one.start === second.start);
  return !rating || !RATINGS.has(rating.quantity.unit);
}

function isTypeNumber(word: string): boolean {
  return /\d/.test(word) && /[a-zA-Z]/.test(word);
}

const ELECTRICAL = new Set<Unit>(["Ω", "F", "H", "Hz"]);
const RATINGS = new Set<Unit | undefined>(["V", "A", "W"]);

/** The reading that is the part's own value, if it is plain which one. */
function choose(readings: readonly Reading[], kind: ValueClass, text: string): Reading | undefined {
  const chosen = readings.find((one) => isOwnValue(one, kind)) ?? readings.find(isWrittenOut);
  const next = chosen && readings[readings.indexOf(chosen) + 1];
  if (next && next.quantity.unit === chosen.quantity.unit) {
    const between = text.slice(chosen.end, next.start).trim().toLowerCase();
    if (ALTERNATIVE.has(between)) return undefined;
  }
  if (chosen?.quantity.unit === "F" && RANGE_BEFORE.test(text.slice(0, chosen.start))) {
    return undefined;
  }
  return (
    chosen ?? readings.find((one) => one.by === "class" && one.leads && kind.code !== undefined)
  );
}

/** What stands between two values either of which may be fitted, or between the ends of a range. */
const ALTERNATIVE = new Set("or oder ou o of / - – … .. ... to bis à a tot t/m".split(" "));

/** The lower end of a trimmer capacitor, whose unit stands behind the upper one: `6 – 30 pF`. */
const RANGE_BEFORE = /(?<![\d.,])\d{1,2}(?:[.,]\d)? ?(?:[-–…]|\.{2,3}|to|bis|à|tot) ?$/;

function isOwnValue(reading: Reading, kind: ValueClass): boolean {
  const { unit } = reading.quantity;
  if (reading.by === "class" || !kind.units.includes(unit)) return false;
  // Behind a type number volts and amperes are ratings: 1N4007 1000V.
  return !(reading.afterType && (kind.typed || RATINGS.has(unit)));
}

/** A value that another class would have, unit and all: the letters are only a hint. */
function isWrittenOut(reading: Reading): boolean {
  return reading.by === "unit" && !reading.afterType && ELECTRICAL.has(reading.quantity.unit);
}

function blank(text: string, { start, end }: FoundTolerance): string {
  return text.slice(0, start) + " ".repeat(end - start) + text.slice(end);
}

/** What was not used, without the punctuation that joined it. */
function restOf(text: string, used: readonly { start: number; end: number }[]): string {
  if (used.length === 0) return text.trim();
  let rest = "";
  let done = 0;
  for (const { start, end } of [...used].sort((a, b) => a.start - b.start)) {
    rest += `${text.slice(done, start)} `;
    done = end;
  }
  const words = (rest + text.slice(done)).replace(/\( *\)/g, " ").split(/\s+/);
  const isJoiner = (word: string) => [...word].every((char) => JOINERS.has(char));
  const from = words.findIndex((word) => !isJoiner(word));
  const to = words.findLastIndex((word) => !isJoiner(word));
  return trimJoiners(words.slice(from < 0 ? words.length : from, to + 1).join(" "));
}

const JOINERS = new Set(",;/_x×-");

/** By hand: an expression for this would take quadratic time on floods of commas. */
function trimJoiners(text: string): string {
  let start = 0;
  let end = text.length;
  while (start < end && ",;/_".includes(text[start]!)) start++;
  while (end > start && ",;/_".includes(text[end - 1]!)) end--;
  return text.slice(start, end);
}
