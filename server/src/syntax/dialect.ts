/**
 * The tree of the dialect: what part marks and figures say, with exact spans in the parsed text.
 * Offsets count UTF-16 units from the start of the text that was parsed.
 */
import type { Span, Suggestion } from "../text/span.ts";

/** What a part mark does with its parts; `fit` is the mark without a role word. */
export type Role =
  | "fit"
  | "later"
  | "place"
  | "insert"
  | "empty"
  | "bridge"
  | "make"
  | "match"
  | "try"
  | "remove"
  | "tool"
  | "own"
  | "see"
  | "label";

/** Roles that move parts: a block that holds such a mark is a step. */
export const MOVING_ROLES: ReadonlySet<Role> = new Set<Role>([
  "fit",
  "later",
  "place",
  "insert",
  "empty",
  "bridge",
  "make",
  "match",
  "try",
  "remove",
]);

export interface PartMark {
  /** The whole bracket. */
  readonly span: Span;
  readonly role: Role;
  readonly roleSpan?: Span;
  readonly items: readonly Item[];
  /** The value after `=`: it holds for all items. */
  readonly stated?: StatedText;
  /** False for bare words such as `[USB]`: the parts list decides whether this is a mark. */
  readonly certain: boolean;
  /** What is written strangely though it is understood, such as `R1~R4`. */
  readonly problems?: readonly SyntaxProblem[];
}

export interface StatedText {
  readonly text: string;
  readonly span: Span;
  /**
   * Source offset of each character of the text and of its end, where they do not simply follow each
   * other: behind an escape, or over the lines of a quote.
   */
  readonly offsets?: readonly number[];
}

export type Item = PartItem | RangeItem | SetItem | GroupItem | ChoiceItem | AmountItem | TextItem;

/** One designator; carried prefixes are filled in, so `[C1, 3]` gives C1 and C3. */
export interface PartItem {
  readonly kind: "part";
  readonly span: Span;
  readonly board?: string;
  readonly name: string;
}

export interface RangeItem {
  readonly kind: "range";
  readonly span: Span;
  readonly board?: string;
  readonly from: string;
  readonly to: string;
  /** The designators from first to last, at most `MAX_RANGE`. */
  readonly names: readonly string[];
}

export interface SetItem {
  readonly kind: "set";
  readonly span: Span;
  readonly board?: string;
  /** `rest` takes those that no earlier step has fitted. */
  readonly which: "all" | "rest";
  /** Class letters (`R`) or a value (`100n`), as written; the parts list decides which it is. */
  readonly of: string;
  readonly except: readonly (PartItem | RangeItem)[];
}

export interface GroupItem {
  readonly kind: "group";
  readonly span: Span;
  readonly members: readonly PartItem[];
}

export interface ChoiceItem {
  readonly kind: "choice";
  readonly span: Span;
  readonly members: readonly PartItem[];
}

export interface AmountItem {
  readonly kind: "amount";
  readonly span: Span;
  readonly amount: Amount;
  readonly key: string;
  readonly keySpan: Span;
}

export type Amount =
  | { readonly kind: "count"; readonly count: number }
  | { readonly kind: "length"; readonly metres: number; readonly text: string };

/** Free text of tool, own, see and label marks. */
export interface TextItem {
  readonly kind: "text";
  readonly span: Span;
  readonly text: string;
}

/** No mark names more parts than this in one range. */
export const MAX_RANGE = 10_000;

/** A figure in braces; the expression is parsed and kept, its evaluation is elsewhere. */
export interface Figure {
  readonly span: Span;
  readonly name?: FigureName;
  /** The text between name and tolerance, trimmed, with its span. */
  readonly expression?: StatedText;
  readonly tolerance?: StatedText;
  readonly stated?: StatedText;
  readonly reading?: Reading;
  /** What is written strangely though it is understood, such as `2*V*I`. */
  readonly problems?: readonly SyntaxProblem[];
}

export interface FigureName {
  readonly text: string;
  readonly span: Span;
  /** `P` of `P(R50)`. */
  readonly symbol: string;
  /** `R50` of `P(R50)`. */
  readonly subjects: readonly StatedText[];
}

/** What a reading must lie within. */
export interface Reading {
  readonly limit: "value" | "below" | "above" | "between";
  readonly value: StatedText;
  /** Of a `value`; without one the builder cannot tell good from bad. */
  readonly tolerance?: StatedText;
  /** Upper end of `between`. */
  readonly upTo?: StatedText;
}

/** Something in the text that misses the dialect narrowly. */
export interface SyntaxProblem {
  readonly span: Span;
  /** What was meant; a mark unless it says so. */
  readonly about?: "figure";
  readonly message: string;
  /** Replacement that makes it right, when there is one. */
  readonly suggestion?: Suggestion;
}
