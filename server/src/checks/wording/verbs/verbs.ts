/**
 * How the instructions of one language are worded: data for the check of actions in a step. Verbs of
 * soldering, drilling, grinding and sawing stand in `trade/acts` alone.
 */
import { type Act, type ActWords, commandsFor } from "../../../trade/acts/form.ts";

/** Kinds of work. What goes with a kind belongs to it: bending and cutting leads to fitting. */
export type Action = "fit" | "drill" | "fasten" | "wire" | "glue" | "clean" | "operate";

export interface Verbs {
  /** Verbs as they open an instruction; lower case, patterns as in `text/stems.ts`. */
  readonly actions: Readonly<Record<Action, readonly string[]>>;
  /** Verbs of those in `trade/acts` that go with fitting and wiring alike: tinning. */
  readonly neutral: readonly string[];
  /** Words between which and the verb nothing else stands: "and", "then", "now". */
  readonly leading: readonly string[];
  /** Words that open a condition: what follows is done only then. Patterns, too. */
  readonly conditions: readonly string[];
  /** Whether the verb may also close its clause, as an infinitive: „R1 einlöten“. */
  readonly closing: boolean;
  /** Before a closing verb: no instruction („zu löten“). */
  readonly infinitiveMark?: string;
  /** Whether nouns have a capital, so that „Löten“ inside a sentence is one. */
  readonly capitalNouns: boolean;
}

/** The kinds of work that acts of `trade/acts` are. */
const ACTS: readonly (readonly [Action, readonly Act[]])[] = [
  ["fit", ["solder"]],
  ["drill", ["drill", "grind", "saw"]],
];

/** All verbs of a language with the kind of work that each asks for. */
export function* verbsOf(
  { actions, neutral }: Verbs,
  words: ActWords,
): Generator<readonly [string, Action], void, void> {
  for (const action of Object.keys(actions) as Action[]) {
    for (const pattern of actions[action]) yield [pattern, action];
  }
  for (const [action, acts] of ACTS) {
    for (const verb of acts.flatMap((act) => commandsFor(words, act))) {
      if (!neutral.includes(verb)) yield [verb, action];
    }
  }
}

/** A list of words parted by spaces. */
export function split(words: string): readonly string[] {
  return words.split(" ");
}
