/** Findings for texts that miss the dialect narrowly. */
import type { GuidePiece } from "../model/guide.ts";
import type { SyntaxProblem } from "../syntax/dialect.ts";
import type { Suggestion } from "../text/span.ts";
import type { Finding } from "./check.ts";
import { replace, textAt } from "./places.ts";

export function syntaxFinding(
  piece: GuidePiece,
  { span, message, suggestion }: SyntaxProblem,
): Finding {
  return {
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

/** Whether the suggestion only spaces the text out, or writes one kind of dash for another. */
function differsInSpelling(written: string, suggestion: Suggestion): boolean {
  return spelling(written) === spelling(suggestion.text);
}

function spelling(text: string): string {
  return text.replace(/\s+/g, "").replace(/[~\u2010-\u2015]/g, "-");
}
