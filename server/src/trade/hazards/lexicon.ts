/** Finds what a hazard note speaks of, and what it says of it. */
import { LANGUAGES, type Language } from "../../text/language.ts";
import { StemList, type Word } from "../../text/stems.ts";
import { HAZARDS, type Hazard } from "./hazards.ts";
import { GERMAN } from "./words/de.ts";
import { ENGLISH } from "./words/en.ts";
import { SPANISH } from "./words/es.ts";
import type { HazardWords } from "./words/form.ts";
import { FRENCH } from "./words/fr.ts";
import { DUTCH } from "./words/nl.ts";

const WORDS: Readonly<Record<Language, HazardWords>> = {
  en: ENGLISH,
  de: GERMAN,
  fr: FRENCH,
  nl: DUTCH,
  es: SPANISH,
};

export class HazardLexicon {
  readonly #hazards: StemList<Hazard>;
  readonly hurts: StemList<true>;
  readonly kills: StemList<true>;
  readonly breaks: StemList<true>;
  readonly avoids: StemList<true>;
  /** Words of avoidance that count only where a command can begin. */
  readonly commands: StemList<true>;

  constructor(words: HazardWords) {
    this.#hazards = new StemList(
      HAZARDS.flatMap((hazard) =>
        words.hazards[hazard].map((pattern) => [pattern.toLowerCase(), hazard] as const),
      ),
    );
    this.hurts = listOf(words.hurts);
    this.kills = listOf(words.kills);
    this.breaks = listOf(words.breaks);
    this.avoids = listOf(words.avoids);
    this.commands = listOf(words.commands);
  }

  /** The hazards that a text names or unmistakably describes. */
  hazardsIn(words: readonly Word[]): ReadonlySet<Hazard> {
    return new Set([...this.#hazards.find(words)].map((hit) => hit.meaning));
  }
}

function listOf(patterns: readonly string[]): StemList<true> {
  return new StemList(patterns.map((pattern) => [pattern, true] as const));
}

const LEXICONS = new Map<Language, HazardLexicon>();

/** The words of a language; built when first asked for. */
export function hazardLexicon(language: Language): HazardLexicon {
  const known = LEXICONS.get(language);
  if (known) return known;
  const lexicon = new HazardLexicon(WORDS[language]);
  LEXICONS.set(language, lexicon);
  return lexicon;
}

/** The name that a note gives the hazard in a language: `electric shock`, `Stromschlag`. */
export function hazardName(hazard: Hazard, language: Language): string {
  return WORDS[language].hazards[hazard][0]!;
}

/** The hazard of that name in any of the languages; undefined when no list has it. */
export function hazardNamed(words: readonly Word[], preferred: Language): Hazard | undefined {
  for (const language of [preferred, ...LANGUAGES]) {
    const [hazard] = hazardLexicon(language).hazardsIn(words);
    if (hazard) return hazard;
  }
  return undefined;
}
