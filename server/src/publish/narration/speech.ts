/**
 * Text as it is spoken: ranges, signs and units in words (`R1–R4` is "R1 to R4", `4.7 kΩ` is
 * "4.7 kilohms"). Numbers stay in digits, which every reader can say.
 */
import type { NarrationWords, OneAndMany, Prefix, UnitName } from "./words/form.ts";

const NUMBER = String.raw`\d+(?:[.,]\d+)*`;
const SPACE = String.raw`[ \u00a0\u202f]`;
const DESIGNATOR = String.raw`[A-Z]{1,4}\d+[A-Za-z]?`;

/** Signs between two designators of a range; the second may leave out its letters. */
const PART_RANGE = new RegExp(
  `\\b(${DESIGNATOR})${SPACE}?[–—…~-]${SPACE}?((?:[A-Z]{1,4})?\\d+[A-Za-z]?)\\b`,
  "g",
);
const VALUE_RANGE = new RegExp(`(?<=[\\p{L}\\d%°²])${SPACE}?[–…]${SPACE}?(?=[−-]?\\d)`, "gu");
const IN_GROUP = new RegExp(
  `(?<=\\b${DESIGNATOR})${SPACE}\\+${SPACE}(?=${DESIGNATOR}${SPACE}\\+)`,
  "g",
);
const GROUP = new RegExp(`(?<=\\b${DESIGNATOR})${SPACE}\\+${SPACE}(?=${DESIGNATOR}\\b)`, "g");
const LENGTH_OF = new RegExp(`(\\d${SPACE}?(?:mm|cm|m))${SPACE}×${SPACE}`, "g");

/** A number and the word of signs behind it, which may be a unit. */
const QUANTITY = new RegExp(
  `(?<![\\p{L}\\d.,])(${NUMBER}(?:${SPACE}\\d{3})*)${SPACE}?([\\p{L}%°][\\p{L}%°·/²]*)(?![\\p{L}\\d])`,
  "gu",
);

/** Spellings in use with the symbol that they stand for. */
const SPELLINGS: Readonly<Record<string, string>> = { Nm: "N·m", ohm: "Ω", Ohm: "Ω", ohms: "Ω" };

/** The text as somebody says it; what is no figure stays as it is. */
export function spoken(text: string, words: NarrationWords): string {
  return text
    .replace(/[\u2126]/g, "Ω")
    .replace(/\u03bc/g, "µ")
    .replace(PART_RANGE, `$1 ${words.to} $2`)
    .replace(VALUE_RANGE, ` ${words.to} `)
    .replace(IN_GROUP, ", ")
    .replace(GROUP, ` ${words.and} `)
    .replace(LENGTH_OF, words.of ? `$1 ${words.of} ` : "$1 ")
    .replace(QUANTITY, (whole, number: string, unit: string) =>
      quantity(whole, number, unit, words),
    )
    .replace(/ × /g, " ")
    .replace(/ = /g, ", ")
    .replace(/\s*±\s*/g, ` ${words.plusMinus} `)
    .replace(/<\s*(?=[\d−-])/g, `${words.below} `)
    .replace(/>\s*(?=[\d−-])/g, `${words.above} `)
    .replace(/(?<![\p{L}\d])[−-](?=\d)/gu, `${words.minus} `)
    .replace(/[ \u00a0\u202f]+/g, " ")
    .trim();
}

function quantity(whole: string, number: string, unit: string, words: NarrationWords): string {
  const isOne = /^1(?:[.,]0+)?$/.test(number);
  const name = unitName(unit, isOne, words);
  return name === undefined ? whole : `${number} ${name}`;
}

/** `kΩ` as "kilohm" or "kilohms", `K/W` as "kelvin per watt"; undefined for what is no unit. */
function unitName(symbol: string, isOne: boolean, words: NarrationWords): string | undefined {
  const [above, under, ...more] = symbol.split("/");
  if (more.length > 0) return undefined;
  const first = factorName(above!, words)?.[isOne ? 0 : 1];
  if (under === undefined) return first;
  const second = factorName(under, words)?.[0];
  return first && second && `${first} ${words.per} ${second}`;
}

function factorName(written: string, words: NarrationWords): OneAndMany | undefined {
  const symbol = SPELLINGS[written] ?? written;
  const whole = words.grown[symbol] ?? words.units[symbol as UnitName];
  if (whole) return whole;
  const prefix = words.prefixes[(symbol[0] === "u" ? "µ" : symbol[0]) as Prefix];
  const name = words.units[symbol.slice(1) as UnitName];
  return prefix && name ? [joined(prefix, name[0]), joined(prefix, name[1])] : undefined;
}

/** German names begin with a capital that is lost behind a prefix. */
function joined(prefix: string, name: string): string {
  return prefix + name[0]!.toLowerCase() + name.slice(1);
}

/**
 * How many words it takes to say a text that is written as spoken. A number takes the words of its
 * reading: "13.8" three, "150" three, "47" one (hyphenated words count as one). A designator takes
 * one for its letters and those of its number: "R101" four.
 */
export function wordCount(text: string): number {
  let count = 0;
  for (const [, digits, letters] of text.matchAll(/(\d+(?:[.,]\d+)*)|(\p{L}+(?:['’-]\p{L}+)*)/gu)) {
    count += letters === undefined ? numberWords(digits!) : 1;
  }
  return count;
}

function numberWords(digits: string): number {
  const [whole, ...parts] = digits.split(/[.,]/);
  // The point is a word, and each digit behind it.
  return integerWords(whole!) + parts.reduce((sum, part) => sum + 1 + part.length, 0);
}

/** Words of a number below a million; longer ones, such as type numbers, are spelled. */
function integerWords(digits: string): number {
  const value = Number(digits);
  if (digits.length > 6 || (digits.length > 1 && digits[0] === "0")) return digits.length;
  if (value < 100) return 1;
  if (value < 1000) return 2 + (value % 100 === 0 ? 0 : 1);
  const rest = value % 1000;
  return (
    integerWords(String(Math.floor(value / 1000))) + 1 + (rest ? integerWords(String(rest)) : 0)
  );
}
