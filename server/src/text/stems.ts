/**
 * Finds the words and phrases of a list in a text. Patterns are lower case:
 *
 *     "drill"        the word itself
 *     "drill*"       words that begin so
 *     "*trafo"       words that end so; "*trafo*" words that hold it (for compounds)
 *     "heat sink*"   a phrase; it also finds "heat-sinks"; an apostrophe parts words too
 *
 * Where several fit, the one of most words wins, then the longest.
 */
import type { Span } from "./span.ts";

/** A word as the reader of prose gives it. */
export interface Word extends Span {
  /** Lower case, composed (NFC). */
  readonly lower: string;
  /** Hyphenated to the word before, with which it counts as one. */
  readonly joined: boolean;
}

/** A pattern found: `words[from]` up to `words[to]`, without the last. */
export interface Hit<Meaning> {
  readonly from: number;
  readonly to: number;
  readonly meaning: Meaning;
}

interface WordPattern {
  readonly text: string;
  readonly open: boolean;
}

interface Pattern<Meaning> {
  readonly words: readonly WordPattern[];
  readonly length: number;
  readonly meaning: Meaning;
}

interface InnerPattern<Meaning> {
  readonly text: string;
  /** Whether the word may go on behind it. */
  readonly open: boolean;
  readonly length: number;
  readonly meaning: Meaning;
}

export class StemList<Meaning> {
  /** By the first two letters of their first word. */
  readonly #byStart = new Map<number, Pattern<Meaning>[]>();
  readonly #inner: InnerPattern<Meaning>[] = [];

  constructor(entries: Iterable<readonly [pattern: string, meaning: Meaning]>) {
    for (const [pattern, meaning] of entries) this.#add(pattern, meaning);
  }

  /** The pattern that fits best from `words[index]` on. */
  at(words: readonly Word[], index: number): Hit<Meaning> | undefined {
    const { lower } = words[index]!;
    let best: Pattern<Meaning> | InnerPattern<Meaning> | undefined;
    let count = 0;
    for (const pattern of this.#byStart.get(startOf(lower)) ?? NONE) {
      const size = pattern.words.length;
      if (size < count || (size === count && pattern.length <= best!.length)) continue;
      if (!fits(pattern.words, words, index)) continue;
      best = pattern;
      count = size;
    }
    if (!best && this.#inner.length > 0) {
      best = this.#inner.find((one) => holds(lower, one));
      count = 1;
    }
    return best && { from: index, to: index + count, meaning: best.meaning };
  }

  /** All that is found, from left to right, without overlap. */
  *find(words: readonly Word[]): Generator<Hit<Meaning>, void, void> {
    for (let i = 0; i < words.length; ) {
      const hit = this.at(words, i);
      if (hit) yield hit;
      i = hit ? hit.to : i + 1;
    }
  }

  has(words: readonly Word[]): boolean {
    return this.find(words).next().done !== true;
  }

  #add(pattern: string, meaning: Meaning): void {
    const { length } = pattern;
    if (pattern.startsWith("*")) {
      const open = pattern.endsWith("*");
      const text = pattern.slice(1, open ? -1 : undefined);
      this.#inner.push({ text, open, length, meaning });
      return;
    }
    const words = pattern.split(/[ '-]/).map((word) => {
      const open = word.endsWith("*");
      return { text: open ? word.slice(0, -1) : word, open };
    });
    const start = startOf(words[0]!.text);
    const known = this.#byStart.get(start);
    if (known) known.push({ words, length, meaning });
    else this.#byStart.set(start, [{ words, length, meaning }]);
  }
}

const NONE: readonly never[] = [];

/** The first two letters as a number: no string is made for each word that is looked up. */
function startOf(word: string): number {
  return word.charCodeAt(0) * 0x10000 + (word.length > 1 ? word.charCodeAt(1) : 0);
}

function fits(pattern: readonly WordPattern[], words: readonly Word[], index: number): boolean {
  for (let i = 0; i < pattern.length; i++) {
    const { text, open } = pattern[i]!;
    const lower = words[index + i]?.lower;
    if (lower === undefined || !(open ? lower.startsWith(text) : lower === text)) return false;
  }
  return true;
}

function holds<Meaning>(lower: string, { text, open }: InnerPattern<Meaning>): boolean {
  return open ? lower.includes(text) : lower.endsWith(text);
}
