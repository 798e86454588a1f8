/**
 * The form of the word lists on what a builder does, one file a language. Patterns are those of
 * `StemList`. A list names acts, not tools: a drill bit that a coil is wound on harms nobody.
 */

const ACTS = [
  "drill",
  "grind",
  "saw",
  "cut leads",
  "cut wire",
  "work sheet metal",
  "load a spring",
  "solder",
  "burn off enamel",
  "heat",
  "use a solvent",
  "lift",
  "handle mains",
  "switch on",
  "connect the supply",
  "inspect",
] as const;
export type Act = (typeof ACTS)[number];

/** How one kind of act is told. */
export interface ActRule {
  readonly act: Act;
  /** Forms that are verbs wherever they stand. */
  readonly verbs?: readonly string[];
  /** Forms of the passive: the act is told, though nobody is asked for it. */
  readonly passive?: readonly string[];
  /** Forms that may be nouns too; they count where a command can begin. */
  readonly openers?: readonly string[];
  /** One of these must stand in the same sentence, not denied. */
  readonly objects?: readonly string[];
  /** How many words behind the verb the object may stand; anywhere in the sentence without it. */
  readonly near?: number;
  /** A wire of stated length in a part mark will do for an object. */
  readonly orLength?: boolean;
  /** A word that belongs to the verb and stands behind it: "switch it *on*". */
  readonly particle?: string;
  /** With one of these in the sentence, something else is meant. */
  readonly unless?: readonly string[];
}

/** The forms by which a guide asks for an act that needs no object to be told. */
export function commandsFor({ rules }: ActWords, act: Act): readonly string[] {
  return rules
    .filter((rule) => rule.act === act && !rule.objects && !rule.particle)
    .flatMap(({ verbs = [], openers = [] }) => [...verbs, ...openers]);
}

/** What tells a command from a mere mention of its verb. */
export interface Grammar {
  /** Words that open a clause in which nothing is commanded: before, when, if. */
  readonly subordinate: readonly string[];
  readonly negations: readonly string[];
  /** Whether a negation may stand behind its verb. */
  readonly deniesBehind: boolean;
  /** Puts an act off where it closes the clause: "shrink it *later*". */
  readonly later: string;
  /** Words that join one command to the next: and, then. */
  readonly joins: readonly string[];
  /** Other words before an opener that leave it a verb: to, you, must. */
  readonly leads: readonly string[];
  /** Words that may stand between those and the opener. */
  readonly adverbs: readonly string[];
  /** Words that may follow a particle; before any other it is a preposition. */
  readonly behindParticle: readonly string[];
  /** How many words behind the verb its particle may stand. */
  readonly reach: number;
  /** Whether nouns are written with a capital, so that a verb within a sentence has none. */
  readonly capitalNouns: boolean;
}

export interface ActWords {
  readonly grammar: Grammar;
  /** Phrases that hold the form of a verb or an object and are none: "drill press". */
  readonly nouns: readonly string[];
  readonly rules: readonly ActRule[];
  /** Tools that do nothing but what their act says, and those that need its object in the step. */
  readonly tools: readonly {
    readonly act: Act;
    readonly names: readonly string[];
    readonly with?: readonly string[];
  }[];
  /** Solvents, as they stand in sentences and in `own` marks. */
  readonly solvents: readonly string[];
  /** Words by which a step says that it joins parts without solder. */
  readonly solderless: readonly string[];
  /** Words by which a text says that the current is limited at first power. */
  readonly limits: readonly string[];
  /** Words by which a text says what to do when a reading is off. */
  readonly remedies: readonly string[];
}
