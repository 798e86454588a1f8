/** Clauses of a sentence, and whether a verb in one is a command. */
import type { Word } from "../../text/stems.ts";
import type { Grammar } from "./form.ts";

/** A sentence cut at its commas and the like. */
export interface Clause {
  readonly words: readonly Word[];
  /** Whether it is the first of its sentence. */
  readonly first: boolean;
}

/** Signs between two words that part clauses. */
const PARTING = /[,;:()–—…/]| - /;

/** `between(a, b)` gives what stands between two words of the sentence. */
export function clausesOf(
  words: readonly Word[],
  between: (a: Word, b: Word) => string,
): readonly Clause[] {
  const clauses: Clause[] = [];
  let from = 0;
  for (let i = 1; i <= words.length; i++) {
    if (i < words.length && !PARTING.test(between(words[i - 1]!, words[i]!))) continue;
    clauses.push({ words: words.slice(from, i), first: from === 0 });
    from = i;
  }
  return clauses;
}

/** Grammar with its word lists as sets. */
export class GrammarBook {
  readonly #subordinate: ReadonlySet<string>;
  readonly #negations: ReadonlySet<string>;
  readonly #joins: ReadonlySet<string>;
  readonly #leads: ReadonlySet<string>;
  readonly #adverbs: ReadonlySet<string>;
  readonly #behindParticle: ReadonlySet<string>;
  readonly #grammar: Grammar;

  constructor(grammar: Grammar) {
    this.#grammar = grammar;
    this.#subordinate = new Set(grammar.subordinate);
    this.#negations = new Set(grammar.negations);
    this.#joins = new Set(grammar.joins);
    this.#leads = new Set([...grammar.joins, ...grammar.leads]);
    this.#adverbs = new Set(grammar.adverbs);
    this.#behindParticle = new Set(grammar.behindParticle);
  }

  /** Whether what is told from word `at` on is neither denied nor put off nor only a condition. */
  isStated({ words }: Clause, at: number): boolean {
    for (let i = 0; i < at; i++) {
      const { lower } = words[i]!;
      if (this.#subordinate.has(lower) || this.#negations.has(lower)) return false;
    }
    const { later, deniesBehind } = this.#grammar;
    if (words.slice(Math.max(at, words.length - 2)).some(({ lower }) => lower === later)) {
      return false;
    }
    if (!deniesBehind) return true;
    return !words.slice(at + 1).some(({ lower }) => this.#negations.has(lower));
  }

  isDenied(words: readonly Word[], at: number): boolean {
    const before = words[at - 1];
    return before !== undefined && this.#negations.has(before.lower);
  }

  /** Whether the verb at word `at`, be it also a noun, can be what the builder is to do. */
  canOpen(clause: Clause, at: number): boolean {
    const before = this.#before(clause, at);
    if (before) return this.#leads.has(before.lower);
    // In an enumeration ("a vice, drill and goggles") a noun stands so too.
    const next = clause.words[at + 1];
    return clause.first || (next !== undefined && !this.#leads.has(next.lower));
  }

  /** Whether a command begins with word `at`. */
  opens(clause: Clause, at: number): boolean {
    const before = this.#before(clause, at);
    return !before || this.#joins.has(before.lower);
  }

  /** The word before word `at` that is no adverb. */
  #before({ words }: Clause, at: number): Word | undefined {
    return words.findLast(({ lower }, i) => i < at && !this.#adverbs.has(lower));
  }

  /** Whether a verb form within a sentence is written as one. */
  isVerbCase(at: number, isCapital: boolean): boolean {
    return !this.#grammar.capitalNouns || !isCapital || at === 0;
  }

  /** Whether the particle stands behind word `at` and belongs to it. */
  hasParticle({ words }: Clause, at: number, particle: string): boolean {
    const end = Math.min(words.length, at + 1 + this.#grammar.reach);
    for (let i = at + 1; i < end; i++) {
      if (words[i]!.lower !== particle) continue;
      const next = words[i + 1];
      if (!next || this.#behindParticle.has(next.lower)) return true;
    }
    return false;
  }
}
