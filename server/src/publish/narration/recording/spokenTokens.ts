/**
 * What is said as a row of tokens that compare alike however they were written: `R one to R four` and
 * `R1 to R4`, `4k7` and `4.7 kilohms`. Of a figure only its amount counts, units are words. Number
 * words are known up to twelve.
 */
import type { NarrationWords, Prefix, UnitName } from "../words/form.ts";

export interface Token {
  /** What is compared. */
  readonly key: string;
  /** A figure is an amount with unit or decimals, or above twelve: others are counted with words. */
  readonly kind: "word" | "part" | "figure";
  /** Designators that it says; the end of a range says all of the range. */
  readonly parts: readonly string[];
  /** As it was said, and where in the text. */
  readonly text: string;
  readonly at: number;
}

/** What tokens are read with. */
export interface Speech {
  readonly words: NarrationWords;
  /** The class letters that the kit's designators have. */
  readonly letters: ReadonlySet<string>;
}

/** Type numbers and value codes; numbers; designators; words; signs that are units. */
const WORD =
  /\d+\p{L}+\d+\p{L}*|\d+[RkKMmunpµ](?![\p{L}\d])|\d{1,3}(?: \d{3})+(?!\d)|\d+(?:[.,]\d+)?|\p{L}[\p{L}\p{M}]*\d+\p{L}?(?![\p{L}\d])|\p{L}[\p{L}\p{M}]*|°C|[%°]/gu;
const DESIGNATOR = /^(\p{L}{1,4})(\d{1,5})([a-z]?)$/iu;
const NUMBER = /^\d+(?:[.,]\d+|(?: \d{3})+)?$/;
/** Above it a bare number is a figure. */
const MOST_COUNTED = 12;
const MOST_IN_RANGE = 1000;
/** `4k7`, `100n`: IEC 60062. */
const CODE = /^(\d+)([RKkMmunpµ])(\d*)$/;
const LETTERS = /^\p{Lu}{1,4}$/u;

const POWERS: Readonly<Record<string, number>> = {
  p: -12,
  n: -9,
  µ: -6,
  u: -6,
  m: -3,
  c: -2,
  R: 0,
  k: 3,
  K: 3,
  M: 6,
  G: 9,
};

/** `text` in composed letters (NFC). */
export function spokenTokens(text: string, speech: Speech): Token[] {
  return new Reader(speech, [...text.matchAll(WORD)]).read();
}

class Reader {
  readonly #speech: Speech;
  readonly #units: ReadonlyMap<string, number>;
  readonly #words: readonly { readonly text: string; readonly at: number }[];
  readonly #tokens: Token[] = [];

  constructor(speech: Speech, words: readonly RegExpExecArray[]) {
    this.#speech = speech;
    this.#units = unitPowers(speech.words);
    this.#words = words.map(({ 0: text, index }) => ({
      text: text.replace("\u03bc", "µ"),
      at: index,
    }));
  }

  read(): Token[] {
    for (let index = 0; index < this.#words.length; ) index += this.#take(index);
    return this.#tokens;
  }

  /** Adds the token that begins with a word and gives how many words it took. */
  #take(index: number): number {
    const word = this.#words[index]!.text;
    const next = this.#words[index + 1]?.text ?? "";
    const { letters } = this.#speech;
    const designator = DESIGNATOR.exec(word);
    if (designator && letters.has(designator[1]!.toUpperCase())) {
      const [, letter, digits, suffix] = designator;
      return this.#part(index, letter!.toUpperCase(), digits!, suffix!);
    }
    const following = this.#digits(next);
    if (LETTERS.test(word) && letters.has(word) && following !== undefined) {
      return 1 + this.#part(index, word, following, "");
    }
    const code = CODE.exec(word);
    if (code) {
      return this.#figure(index, scaled(Number(`${code[1]}.${code[3] || "0"}`), POWERS[code[2]!]!));
    }
    const number = NUMBER.test(word) ? word : this.#digits(word);
    if (number !== undefined) return this.#number(index, number, next);
    return this.#word(index, word.toLowerCase());
  }

  #number(index: number, digits: string, next: string): number {
    const amount = Number(digits.replace(/ /g, "").replace(",", "."));
    const letters = this.#rangeLetters();
    if (letters !== undefined && Number.isInteger(amount)) {
      return this.#part(index, letters, digits, "");
    }
    const power = this.#units.get(next) ?? this.#units.get(next.toLowerCase());
    if (power !== undefined || amount > MOST_COUNTED || !Number.isInteger(amount)) {
      return this.#figure(index, scaled(amount, power ?? 0));
    }
    return this.#word(index, String(amount));
  }

  /** Class letters where a bare number may end a range of parts: `C3 to 5`. */
  #rangeLetters(): string | undefined {
    const from = this.#rangeStart();
    return from && DESIGNATOR.exec(from)![1];
  }

  /** The designator that a range began with, if `to` was said last. */
  #rangeStart(): string | undefined {
    const [before, to] = this.#tokens.slice(-2);
    return before?.kind === "part" && to?.key === this.#speech.words.to ? before.key : undefined;
  }

  #part(index: number, letters: string, digits: string, suffix: string): number {
    const name = `${letters}${Number(digits)}${suffix}`;
    return this.#add(index, { key: name, kind: "part", parts: this.#named(letters, name, digits) });
  }

  /** The designator, with those between it and the one that a range began with. */
  #named(letters: string, name: string, digits: string): readonly string[] {
    const start = this.#rangeStart();
    const [, first, from] = (start && DESIGNATOR.exec(start)) || [];
    const count = Number(digits) - Number(from);
    if (first !== letters || !(count >= 1 && count <= MOST_IN_RANGE)) return [name];
    return Array.from({ length: count }, (_, index) => `${letters}${Number(from) + 1 + index}`);
  }

  #figure(index: number, amount: number): number {
    return this.#add(index, { key: `#${amount}`, kind: "figure", parts: [] });
  }

  #word(index: number, key: string): number {
    return this.#add(index, { key, kind: "word", parts: [] });
  }

  #add(index: number, token: Pick<Token, "key" | "kind" | "parts">): number {
    this.#tokens.push({ ...token, ...this.#words[index]! });
    return 1;
  }

  /** Digits of a whole number or a number word. */
  #digits(word: string): string | undefined {
    if (/^\d+$/.test(word)) return word;
    const index = this.#speech.words.numbers.indexOf(word.toLowerCase());
    return index < 0 ? undefined : String(index);
  }
}

/** Free of the dust of decimal fractions. */
function scaled(amount: number, power: number): number {
  return Number((amount * 10 ** power).toPrecision(9));
}

/** What units multiply their number by, as powers of ten: by symbol, and by name in lower case. */
function unitPowers(words: NarrationWords): ReadonlyMap<string, number> {
  const powers = new Map<string, number>();
  const addNames = (names: readonly string[], power: number) => {
    for (const name of names) powers.set(name.split(" ")[0]!.toLowerCase(), power);
  };
  for (const symbol of Object.keys(words.units) as UnitName[]) {
    const names = words.units[symbol];
    addNames(names, 0);
    for (const prefix of Object.keys(words.prefixes) as Prefix[]) {
      const power = POWERS[prefix]!;
      addNames(
        names.map((name) => words.prefixes[prefix] + name),
        power,
      );
      powers.set(prefix + symbol, power);
    }
  }
  // A symbol stands for itself even where it reads as prefix and unit: `min`, `Pa`.
  for (const symbol of Object.keys(words.units)) powers.set(symbol, 0);
  for (const [symbol, names] of Object.entries(words.grown)) addNames(names, POWERS[symbol[0]!]!);
  return powers;
}
