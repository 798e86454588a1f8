/** How the instructions of one language are worded: data for the check of actions in a step. */

/** Kinds of work. What goes with a kind belongs to it: bending and cutting leads to fitting. */
export type Action = "fit" | "drill" | "fasten" | "wire" | "glue" | "clean" | "operate";

export interface Verbs {
  /** Verbs as they open an instruction; lower case, patterns as in `text/stems.ts`. */
  readonly actions: Readonly<Record<Action, readonly string[]>>;
  /** Words between which and the verb nothing else stands: "and", "then", "now". */
  readonly leading: readonly string[];
  /** Words that open a condition: what follows is done only then. */
  readonly conditions: readonly string[];
  /** Whether the verb may also close its clause, as an infinitive: „R1 einlöten“. */
  readonly closing: boolean;
  /** Before a closing verb: no instruction („zu löten“). */
  readonly infinitiveMark?: string;
  /** Whether nouns have a capital, so that „Löten“ inside a sentence is one. */
  readonly capitalNouns: boolean;
}

/** A list of words parted by spaces. */
export function split(words: string): readonly string[] {
  return words.split(" ");
}
