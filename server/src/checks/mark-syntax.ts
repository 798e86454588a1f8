/** Something in the text is almost a part mark or a figure, so it is read as plain Markdown. */
import type { SyntaxProblem } from "../syntax/dialect.ts";
import type { Check } from "./check.ts";
import { replace, textAt } from "./places.ts";

export const check: Check = {
  meta: {
    code: "mark-syntax",
    summary: "Something is almost a part mark or a figure.",
    severity: "warning",
    source: "common practice",
    tags: ["form"],
  },
  *piece(piece) {
    for (const problem of piece.facts.problems) {
      const { span, message, suggestion } = problem;
      yield {
        at: { piece, span },
        message: () => message,
        fixes: suggestion
          ? [
              () => {
                const written = textAt(piece, suggestion.span);
                const safe = differsInSpelling(written, suggestion);
                return replace(piece, suggestion.span, suggestion.text, suggestion.title, safe);
              },
            ]
          : [],
      };
    }
  },
};

/** Whether the suggestion only spaces the text out, or writes one kind of dash for another. */
function differsInSpelling(
  written: string,
  suggestion: NonNullable<SyntaxProblem["suggestion"]>,
): boolean {
  return spelling(written) === spelling(suggestion.text);
}

function spelling(text: string): string {
  return text.replace(/\s+/g, "").replace(/[~\u2010-\u2015]/g, "-");
}
