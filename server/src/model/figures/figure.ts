/** Figures as checks and features see them. */
import type { Evaluation } from "../../quantity/evaluation/evaluate.ts";
import type { NameUse } from "../../quantity/expression/tree.ts";
import type { Figure, SyntaxProblem } from "../../syntax/dialect.ts";
import type { Span } from "../../text/span.ts";
import type { Anchor, GuidePiece, Step } from "../guide.ts";
import type { Part } from "../parts.ts";
import type { FigurePart, Formula } from "./formula.ts";

/**
 * What a figure is for: a `sum` or quantity without name, the `definition` of its name, a `second` one
 * by expression, a plain quantity `stated` for a name that is defined elsewhere or `listed`, or a
 * `reading`.
 */
export type FigureRole = "sum" | "definition" | "second" | "stated" | "listed" | "reading";

/** A figure at its place, with what came of it. */
export interface GuideFigure {
  /** As written. Spans count in its piece, or in the page for one of the front matter. */
  readonly figure: Figure;
  /** Undefined in the front matter. */
  readonly piece: GuidePiece | undefined;
  readonly step: Step | undefined;
  readonly role: FigureRole;
  /** Whether `supply` of the front matter gives it: a rail. */
  readonly isRail: boolean;
  /** The same for two figures exactly if they have the same name; undefined without a name. */
  readonly key: string | undefined;
  /** For each subject of its name the part that it means. */
  readonly parts: readonly (Part | undefined)[];
  /** The part whose designator its name is: the parts list gives the value then. */
  readonly listed: Part | undefined;
  /** What its expression comes to; of a reading, its limits. */
  readonly evaluation: Evaluation | undefined;
  /** What the stated value comes to. */
  readonly stated: Evaluation | undefined;
  readonly formula: Formula | undefined;
  readonly statedFormula: Formula | undefined;
  /** The figure that gives its name a value: itself, another, or none. */
  readonly definition: GuideFigure | undefined;
  /** Board that bare designators in it mean. */
  readonly board: string | undefined;
  /** The whole figure, one of its texts, or a stretch of that text. */
  at(part?: FigurePart, span?: Span): Anchor;
}

/** What a name in an expression stands for. */
export type Meaning =
  | { readonly kind: "figure"; readonly figure: GuideFigure }
  | { readonly kind: "part"; readonly part: Part }
  | { readonly kind: "constant" | "unit" }
  | { readonly kind: "nothing" };

/** All figures of a guide, kept current. */
export interface Figures {
  /** In document order, the front matter's first. */
  all(): readonly GuideFigure[];
  /** The figure that gives the name its value: `named("P", part)`, `named("VCC")`. */
  named(symbol: string, ...subjects: readonly (Part | string)[]): GuideFigure | undefined;
  /** Figures that define a name with the symbol and, among its subjects, the part or text. */
  about(symbol: string, subject: Part | string): readonly GuideFigure[];
  /** Figures and readings, in document order, whose name has a symbol that passes. */
  withSymbol(passes: (symbol: string) => boolean): readonly GuideFigure[];
  /** Grows whenever a figure comes, goes, or comes to something else. */
  readonly revision: number;
  /** What a name means where bare designators are those of `board`. */
  meaning(name: NameUse, board: string | undefined): Meaning;
  /** Entries of the front matter that are no figures; spans count in the first page. */
  readonly frontMatterProblems: readonly SyntaxProblem[];
  /** Names that figures define, as written where they are defined. */
  names(): Iterable<string>;
  /** The names that lead from a circular figure back to itself, first and last the same. */
  circle(figure: GuideFigure): readonly GuideFigure[];
}
