/**
 * What one piece of a guide says, from its text alone.
 * Spans are relative to the piece, so facts stay true while text before the piece grows or shrinks.
 */

import type { Span } from "../text/span.ts";
import type { Figure, PartMark, SyntaxProblem } from "./dialect.ts";

export type Fact =
  | HeadingFact
  | StepFact
  | MarkFact
  | FigureFact
  | MentionFact
  | NoteFact
  | CommentFact
  | TextFact
  | RowFact
  | PictureFact;

/** A heading of the page itself; headings inside quotes and lists are no facts. */
export interface HeadingFact {
  readonly kind: "heading";
  readonly span: Span;
  readonly level: number;
  readonly title: string;
}

/** Opens a step; what follows belongs to it up to the next step or heading. */
export interface StepFact {
  readonly kind: "step";
  /** The list item or block. */
  readonly span: Span;
  /** 0 for a step, 1 for a sub-step, and so on. */
  readonly depth: number;
  /** `item`: an ordered list item; `block`: a heading, paragraph, bullet or table row with a mark. */
  readonly source: "item" | "block";
  /** False for a block with bare words only: it is a step if the parts list knows one of them. */
  readonly certain: boolean;
}

export interface MarkFact {
  readonly kind: "mark";
  readonly mark: PartMark;
}

export interface FigureFact {
  readonly kind: "figure";
  readonly figure: Figure;
}

/** A word of the prose that has the form of a designator. */
export interface MentionFact {
  readonly kind: "mention";
  readonly span: Span;
  readonly name: string;
}

export interface NoteFact {
  readonly kind: "note";
  readonly span: Span;
  readonly signal: "DANGER" | "WARNING" | "CAUTION" | "NOTICE";
  /** The signal word; undefined in an alert, or where it is written with entities. */
  readonly word?: { readonly text: string; readonly span: Span };
  /** The hazard named after the signal word, as written. */
  readonly hazard: string;
  /** Signal word and hazard, or the head of an alert; what the note says comes behind it. */
  readonly opening: Span;
  /** A GitHub alert: its rank is not judged. */
  readonly alert: boolean;
}

export interface CommentFact {
  readonly kind: "comment";
  readonly span: Span;
  /** Inside a step's own line; otherwise it stands before what it concerns. */
  readonly inline: boolean;
  readonly comment: CheckerComment;
}

/**
 * A smallest block of text: what a reader takes in as one paragraph, heading, bullet or table cell.
 * Its words are not kept, only where they stand; `model/prose.ts` reads them.
 */
export interface TextFact {
  readonly kind: "text";
  readonly span: Span;
  readonly block: "paragraph" | "heading" | "bullet" | "cell";
  /** Inside a blockquote, be it a hazard note or not. */
  readonly quoted: boolean;
  /** In order, without overlap; what lies between them is Markdown's signs and HTML. */
  readonly runs: readonly TextRun[];
}

/** A stretch of a block: words, or something that stands among them. */
export interface TextRun {
  readonly span: Span;
  readonly kind: "text" | "mark" | "figure" | "code" | "picture" | "address";
}

/** A row of a table. The row with `header` opens its table; a block per cell follows the fact. */
export interface RowFact {
  readonly kind: "row";
  readonly span: Span;
  readonly header: boolean;
  /** From cell to cell, the bars around them included as Markdown has it; empty cells too. */
  readonly cells: readonly Span[];
}

/** A picture of Markdown, `![text](file)` or `![text][label]`. */
export interface PictureFact {
  readonly kind: "picture";
  readonly span: Span;
  /** The alternative text; empty when there is none. */
  readonly alt: string;
  /** The address as a reader's program would follow it, or the label whose definition gives it. */
  readonly target: { readonly url: string } | { readonly label: string };
}

/** A comment for the checker; other HTML comments are no facts. */
export type CheckerComment =
  | {
      readonly kind: "allow";
      readonly code: string;
      readonly codeSpan: Span;
      /** Empty when the reason is missing. */
      readonly reason: string;
    }
  | { readonly kind: "board"; readonly board: string; readonly boardSpan: Span }
  | { readonly kind: "power on" }
  | {
      readonly kind: "takes";
      /** Of work at the bench; undefined where the time cannot be read. */
      readonly seconds: number | undefined;
      readonly time: string;
      readonly timeSpan: Span;
    }
  | { readonly kind: "parts table"; readonly end: boolean };

export interface PieceFacts {
  /** In document order. */
  readonly facts: readonly Fact[];
  readonly problems: readonly SyntaxProblem[];
  /** Labels of link definitions and footnotes in the piece, normalised; they count in the whole page. */
  readonly defines: {
    readonly links: readonly string[];
    /** Of the links, in the same order. */
    readonly addresses: readonly string[];
    readonly footnotes: readonly string[];
  };
}
