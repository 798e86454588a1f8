/** What is wrong with a figure. */
import type { Span, Suggestion } from "../text/span.ts";

export interface FigureProblem {
  /**
   * `form`: it cannot be read, or has no value; `name`: a name that nothing defines; `unit`: units
   * that do not agree; `circle`: it depends on itself; `waits`: a name in it has no value, for a
   * reason that is told where that name is defined.
   */
  readonly kind: "form" | "name" | "unit" | "circle" | "waits";
  /** Where, in the text that was read. */
  readonly span: Span;
  readonly message: string;
  /** Replacement that makes it right, when there is one. */
  readonly suggestion?: Suggestion;
}

/** Thrown where a figure is read or computed, and caught where that began; never leaves the layer. */
export class FigureError extends Error {
  readonly problem: FigureProblem;

  constructor(problem: FigureProblem) {
    super(problem.message);
    this.problem = problem;
  }
}
