/** A comment allows findings of a check where there are none, or of a check that does not exist. */
import type { Allow } from "../model/stageNode.ts";
import { nearestWord } from "../text/nearest.ts";
import type { Span } from "../text/span.ts";
import type { Check, Finding, Fix } from "./check.ts";
import { CODES } from "./codes.ts";
import { replace } from "./places.ts";
import type { Found } from "./runner.ts";

/** Has no hook: whether an allow is used is known once all findings are judged. */
export const check: Check = {
  meta: {
    code: "allow-unused",
    summary: "A comment allows a finding that does not occur.",
    severity: "warning",
    source: "common practice",
    tags: ["form"],
  },
};

/** The finding about a comment that suppressed nothing. */
export function unusedAllow(allow: Allow): Found {
  return { check, finding: CODES.includes(allow.code) ? idle(allow) : unknownCode(allow) };
}

function unknownCode({ piece, fact, code }: Allow): Finding {
  const span = fact.comment.kind === "allow" ? fact.comment.codeSpan : fact.span;
  const meant = nearestWord(code, CODES);
  return {
    at: { piece, span },
    message: () =>
      `No check is called "${code}", so this comment allows nothing. ` +
      (meant ? `Did you mean ${meant}?` : "Write the code that the finding shows."),
    fixes: meant ? [() => replace(piece, span, meant, `Write ${meant}`)] : [],
  };
}

function idle(allow: Allow): Finding {
  const { piece, fact, code } = allow;
  return {
    at: { piece, span: fact.span },
    message: () =>
      allow.idle
        ? `No step of this stage follows the comment, so it allows nothing. Put it above the step that it speaks of, or remove it.`
        : `There is no finding of ${code} here, so this comment allows nothing. Remove it, else it hides the next one.`,
    fixes: [() => removal(allow)],
  };
}

/** Takes the comment out, with its line where it has one to itself. */
function removal({ piece, fact }: Allow): Fix {
  return replace(
    piece,
    wholeLines(piece.page.text.toString(), piece.start, fact.span),
    "",
    "Remove the comment",
  );
}

/** The span, grown to its lines where nothing else stands on them; relative to `offset` like it. */
function wholeLines(text: string, offset: number, span: Span): Span {
  const before = /(?<=^|[\r\n])[ \t]*$/.exec(text.slice(0, offset + span.start));
  const after = /^[ \t]*(?:\r\n|\r|\n)/.exec(text.slice(offset + span.end));
  if (!before || !after) return span;
  return { start: span.start - before[0].length, end: span.end + after[0].length };
}
