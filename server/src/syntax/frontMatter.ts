/** The YAML front matter of a guide: what it says and where each thing stands. */
import type { Span, Suggestion } from "../text/span.ts";

export interface Spanned<T> {
  readonly value: T;
  readonly span: Span;
}

/** A named entry of a YAML mapping: `VCC: 13.8 V ± 10 %`. */
export interface Entry<T> {
  readonly name: string;
  readonly nameSpan: Span;
  readonly value: T;
  readonly span: Span;
}

export interface FrontMatterProblem {
  readonly span: Span;
  readonly message: string;
  readonly suggestion?: Suggestion;
}

/** All spans are offsets in the page's text. A key that is absent or unusable leaves its list empty. */
export interface FrontMatter {
  /** From the opening fence to behind the closing one, its line end included. */
  readonly span: Span;
  /** Where each known top-level key stands. */
  readonly keys: ReadonlyMap<string, Span>;
  readonly title?: Spanned<string>;
  readonly language?: Spanned<string>;
  /** Parts lists with the board they belong to, if given. */
  readonly parts: readonly { readonly board?: string; readonly path: Spanned<string> }[];
  readonly pages: readonly Spanned<string>[];
  readonly supply: readonly Entry<string>[];
  readonly figures: readonly Entry<string>[];
  /** Body heights in mm by part, range (`R1–R4`) or package name. */
  readonly heights: readonly Entry<number>[];
  readonly offBoard: readonly Spanned<string>[];
  /** Room above a board in mm, by board (empty name: every board). */
  readonly clearance: readonly Entry<number>[];
  readonly tools: readonly Spanned<string>[];
  /** Spare pieces by hardware key. */
  readonly spares: readonly Entry<number>[];
  /** Column name by meaning, where the guess is wrong. */
  readonly columns: readonly Entry<string>[];
  /** Severity by check code: off, hint, info, warning or error. */
  readonly checks: readonly Entry<string>[];
  /** Limits by check code: the numbers among the values of `checks`. */
  readonly limits: readonly Entry<number>[];
  /** Per cent of a rating above which a load is worth a warning, by what is rated (`RATED`). */
  readonly derating: readonly Entry<number>[];
  readonly problems: readonly FrontMatterProblem[];
}
