/** The acts that a sentence asks the builder for, told by the verbs that open (or close) its clauses. */
import type { Sentence, TextBlock } from "../../model/prose.ts";
import type { Language } from "../../text/language.ts";
import { StemList, type Word } from "../../text/stems.ts";
import { ACT_WORDS } from "../../trade/acts/lexicon.ts";
import { de } from "./verbs/de.ts";
import { en } from "./verbs/en.ts";
import { es } from "./verbs/es.ts";
import { fr } from "./verbs/fr.ts";
import { nl } from "./verbs/nl.ts";
import { type Action, type Verbs, verbsOf } from "./verbs/verbs.ts";

/** One act, and the verb that asks for it. */
export interface Act {
  readonly action: Action;
  readonly verb: Word;
}

/** The verbs of a language, made ready for use. */
class Lexicon {
  readonly verbs: Verbs;
  readonly stems: StemList<Action>;
  readonly leading: ReadonlySet<string>;
  readonly conditions: StemList<true>;

  constructor(verbs: Verbs, language: Language) {
    this.verbs = verbs;
    this.stems = new StemList(verbsOf(verbs, ACT_WORDS[language]));
    this.leading = new Set(verbs.leading);
    this.conditions = new StemList(verbs.conditions.map((word) => [word, true] as const));
  }
}

const LEXICA: Readonly<Record<Language, Lexicon>> = {
  en: new Lexicon(en, "en"),
  de: new Lexicon(de, "de"),
  fr: new Lexicon(fr, "fr"),
  nl: new Lexicon(nl, "nl"),
  es: new Lexicon(es, "es"),
};

/** Whether a sentence says what to do only on a condition: "If it is too high, …". */
export function opensWithCondition(words: readonly Word[], language: Language): boolean {
  return LEXICA[language].conditions.at(words, 0) !== undefined;
}

/** What is done only on a condition is no act of the step, nor is what must not be done. */
export function actsIn({ words }: Sentence, block: TextBlock, language: Language): Act[] {
  const lexicon = LEXICA[language];
  if (opensWithCondition(words, language)) return [];
  const acts: Act[] = [];
  for (const { from, to, meaning } of lexicon.stems.find(words)) {
    const asks =
      opensClause(words, from, block, lexicon) || closesClause(words, from, to, block, lexicon);
    if (asks) acts.push({ action: meaning, verb: words[from]! });
  }
  return acts;
}

function opensClause(
  words: readonly Word[],
  index: number,
  block: TextBlock,
  { leading, verbs }: Lexicon,
): boolean {
  if (index === 0) return true;
  const before = words[index - 1]!;
  const between = gap(before, words[index]!, block);
  if (!/[,;:.!?–—(]/.test(between) && !isLeading(before.lower, leading)) return false;
  // Within a sentence, a capital in German is a noun's: "J4, Klemme 1".
  return !(verbs.capitalNouns && isCapital(words[index]!, block) && !/[:.!?]/.test(between));
}

/** "then", and adverbs of manner: "carefully drill". */
function isLeading(word: string, leading: ReadonlySet<string>): boolean {
  return leading.has(word) || (leading.has("please") && /\p{L}{3}ly$/u.test(word));
}

function closesClause(
  words: readonly Word[],
  from: number,
  to: number,
  block: TextBlock,
  { leading, verbs }: Lexicon,
): boolean {
  if (!verbs.closing || isCapital(words[from]!, block)) return false;
  if (words[from - 1]?.lower === verbs.infinitiveMark) return false;
  const next = words[to];
  if (!next) return true;
  return leading.has(next.lower) || /[,;:.!?–—)]/.test(gap(words[to - 1]!, next, block));
}

function gap(before: Word, after: Word, block: TextBlock): string {
  return block.at({ start: before.end, end: after.start });
}

function isCapital(word: Word, block: TextBlock): boolean {
  return /^\p{Lu}/u.test(block.at(word));
}
