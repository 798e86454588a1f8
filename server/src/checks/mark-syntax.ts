/** Something in the text is almost a part mark, so it is read as plain Markdown. */
import type { Check } from "./check.ts";
import { syntaxFinding } from "./syntaxFinding.ts";

export const check: Check = {
  meta: {
    code: "mark-syntax",
    summary: "Something is almost a part mark.",
    severity: "warning",
    source: "common practice",
    tags: ["form"],
  },
  *piece(piece) {
    for (const problem of piece.facts.problems) {
      if (problem.about !== "figure") yield syntaxFinding(piece, problem);
    }
  },
};
