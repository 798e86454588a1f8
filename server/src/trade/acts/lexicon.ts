/** Finds what a sentence has the builder do. */
import type { Language } from "../../text/language.ts";
import type { Span } from "../../text/span.ts";
import { type Hit, StemList, type Word } from "../../text/stems.ts";
import { type Clause, clausesOf, GrammarBook } from "./clauses.ts";
import type { Act, ActRule, ActWords } from "./form.ts";
import { GERMAN } from "./words/de.ts";
import { ENGLISH } from "./words/en.ts";
import { SPANISH } from "./words/es.ts";
import { FRENCH } from "./words/fr.ts";
import { DUTCH } from "./words/nl.ts";

export const ACT_WORDS: Readonly<Record<Language, ActWords>> = {
  en: ENGLISH,
  de: GERMAN,
  fr: FRENCH,
  nl: DUTCH,
  es: SPANISH,
};

/** An act and the words that tell of it, from the verb on. */
export interface FoundAct extends Span {
  readonly act: Act;
}

/** A sentence as far as acts are found in it. */
export interface ToldSentence {
  readonly words: readonly Word[];
  /** What stands between two of its words. */
  between(a: Word, b: Word): string;
  /** Whether the word is written with a capital letter. */
  isCapital(word: Word): boolean;
  /** Whether a part mark in it takes a length of wire. */
  readonly hasLength: boolean;
}

interface Reading {
  readonly rule: CompiledRule;
  /** Whether this form may be a noun. */
  readonly opener: boolean;
}

interface CompiledRule {
  readonly rule: ActRule;
  readonly objects: StemList<true> | undefined;
  readonly unless: StemList<true> | undefined;
}

export class ActLexicon {
  readonly #grammar: GrammarBook;
  /** A phrase that is a noun has no readings. */
  readonly #verbs: StemList<readonly Reading[]>;
  readonly #nouns: StemList<true>;
  readonly #tools: StemList<{ act: Act; with: StemList<true> | undefined }>;
  readonly #solvents: StemList<true>;
  readonly solderless: StemList<true>;
  readonly limits: StemList<true>;
  readonly remedies: StemList<true>;

  constructor(words: ActWords) {
    this.#grammar = new GrammarBook(words.grammar);
    this.#verbs = new StemList(readingsOf(words));
    this.#nouns = listOf(words.nouns);
    this.#tools = new StemList(
      words.tools.flatMap(({ act, names, with: needs }) => {
        const meaning = { act, with: needs && listOf(needs) };
        return names.map((name) => [name, meaning] as const);
      }),
    );
    this.#solvents = listOf(words.solvents);
    this.solderless = listOf(words.solderless);
    this.limits = listOf(words.limits);
    this.remedies = listOf(words.remedies);
  }

  /** The acts of a sentence in order; one that is told twice comes once. */
  actsIn(sentence: ToldSentence): readonly FoundAct[] {
    const found = new Map<Act, FoundAct>();
    for (const clause of clausesOf(sentence.words, (a, b) => sentence.between(a, b))) {
      for (const { from, to, meaning } of this.#verbs.find(clause.words)) {
        if (meaning.length === 0 || !this.#grammar.isStated(clause, from)) continue;
        const [first, last] = [clause.words[from]!, clause.words[to - 1]!];
        for (const reading of meaning) {
          const { act } = reading.rule.rule;
          if (found.has(act) || !this.#isMeant(reading, clause, from, sentence)) continue;
          found.set(act, { act, start: first.start, end: last.end });
        }
      }
    }
    return [...found.values()];
  }

  /** What a tool's name tells of its step, whose words are `step`. */
  actOfTool(tool: readonly Word[], step: readonly Word[]): Act | undefined {
    for (const { meaning } of this.#tools.find(tool)) {
      if (!meaning.with || meaning.with.has(step)) return meaning.act;
    }
    return undefined;
  }

  /** Whether one of the listed words stands in the sentence where a command can begin. */
  commands(list: StemList<true>, sentence: ToldSentence): boolean {
    return clausesOf(sentence.words, (a, b) => sentence.between(a, b)).some((clause) =>
      clause.words.some((_, i) => list.at(clause.words, i) && this.#grammar.opens(clause, i)),
    );
  }

  isSolvent(words: readonly Word[]): boolean {
    return this.#solvents.has(words);
  }

  #isMeant(reading: Reading, clause: Clause, at: number, sentence: ToldSentence): boolean {
    const { rule, unless } = reading.rule;
    if (reading.opener && !this.#grammar.canOpen(clause, at)) return false;
    if (!this.#grammar.isVerbCase(at, sentence.isCapital(clause.words[at]!))) return false;
    if (rule.particle && !this.#grammar.hasParticle(clause, at, rule.particle)) return false;
    if (unless?.has(sentence.words)) return false;
    return this.#hasObject(reading.rule, clause, at, sentence);
  }

  #hasObject(
    { rule, objects }: CompiledRule,
    clause: Clause,
    at: number,
    sentence: ToldSentence,
  ): boolean {
    if (!objects || (rule.orLength && sentence.hasLength)) return true;
    const { near } = rule;
    const words = near === undefined ? sentence.words : clause.words.slice(at + 1, at + 1 + near);
    for (let i = 0; i < words.length; i++) {
      const hit = objects.at(words, i);
      if (hit && !this.#grammar.isDenied(words, i) && !this.#isNoun(words, i, hit)) return true;
    }
    return false;
  }

  /** Whether the object is but part of a longer noun: the spring of a spring washer. */
  #isNoun(words: readonly Word[], at: number, object: Hit<true>): boolean {
    const noun = this.#nouns.at(words, at);
    return noun !== undefined && noun.to > object.to;
  }
}

function listOf(patterns: readonly string[]): StemList<true> {
  return new StemList(patterns.map((pattern) => [pattern, true] as const));
}

/** Every form with all that it may tell. */
function readingsOf({ nouns, rules }: ActWords): Map<string, readonly Reading[]> {
  const readings = new Map<string, Reading[]>(nouns.map((noun) => [noun, []]));
  for (const rule of rules) {
    const compiled = {
      rule,
      objects: rule.objects && listOf(rule.objects),
      unless: rule.unless && listOf(rule.unless),
    };
    for (const form of [...(rule.verbs ?? []), ...(rule.passive ?? [])])
      add(readings, form, { rule: compiled, opener: false });
    for (const form of rule.openers ?? []) add(readings, form, { rule: compiled, opener: true });
  }
  return readings;
}

function add(readings: Map<string, Reading[]>, form: string, reading: Reading): void {
  const known = readings.get(form);
  if (known) known.push(reading);
  else readings.set(form, [reading]);
}

const LEXICONS = new Map<Language, ActLexicon>();

/** The acts of a language; built when first asked for. */
export function actLexicon(language: Language): ActLexicon {
  const known = LEXICONS.get(language);
  if (known) return known;
  const lexicon = new ActLexicon(ACT_WORDS[language]);
  LEXICONS.set(language, lexicon);
  return lexicon;
}
