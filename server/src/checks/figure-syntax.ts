/** A figure cannot be read, or has no value: division by zero, a number too large. */
import type { Check } from "./check.ts";
import { findingsOf } from "./figures/problems.ts";
import { syntaxFinding } from "./syntaxFinding.ts";

export const check: Check = {
  meta: {
    code: "figure-syntax",
    summary: "A figure cannot be read or computed.",
    severity: "error",
    source: "NIST SP 811 for units; common practice",
    tags: ["figures", "form"],
  },
  *piece(piece) {
    for (const problem of piece.facts.problems) {
      if (problem.about === "figure") {
        yield { ...syntaxFinding(piece, problem), severity: "warning" };
      }
    }
  },
  figure(figure) {
    return findingsOf(figure, "form");
  },
  *guide(guide) {
    const { uri } = guide.pages[0]!;
    for (const { span, message } of guide.figures.frontMatterProblems) {
      yield { at: { uri, span }, message: () => message };
    }
  },
};
