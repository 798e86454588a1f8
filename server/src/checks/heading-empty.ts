/** A heading has no text, or nothing below it. */
import type { GuidePiece } from "../model/guide.ts";
import type { HeadingFact } from "../syntax/facts.ts";
import type { Check, Finding } from "./check.ts";

export const check: Check = {
  meta: {
    code: "heading-empty",
    summary: "A heading has no text, or nothing below it.",
    severity: "information",
    source: "common practice",
    tags: ["wording"],
  },
  *piece(piece) {
    let heading: HeadingFact | undefined;
    for (const fact of piece.facts.facts) {
      if (fact.kind === "heading") {
        if (heading && isBetween(heading, fact, piece)) {
          yield* withoutContent(piece, heading, fact);
        }
        heading = fact;
      } else if (fact.kind === "text" && fact.span.start === heading?.span.start) {
        if (fact.runs.length === 0) yield withoutText(piece, heading);
      }
    }
  },
  *guide(guide) {
    for (const { piece, fact, next } of guide.bareHeadings()) {
      if (next) yield* withoutContent(piece, fact, next);
    }
  },
};

function isBetween(heading: HeadingFact, next: HeadingFact, { page, start }: GuidePiece): boolean {
  return page.text.slice(start + heading.span.end, start + next.span.start).trim() === "";
}

function withoutText(piece: GuidePiece, { span }: HeadingFact): Finding {
  return {
    at: { piece, span },
    message: () =>
      "This heading has no text, so a table of contents shows a blank line. Name what follows, or delete it.",
  };
}

/** A heading may be followed at once by one below it, and one that is a step says all itself. */
function* withoutContent(
  piece: GuidePiece,
  { span, level, title }: HeadingFact,
  next: HeadingFact,
): Generator<Finding, void, void> {
  const isStep = piece.steps.some(({ fact }) => fact.span.start === span.start);
  if (next.level > level || title === "" || isStep) return;
  yield {
    at: { piece, span },
    message: () =>
      `There is nothing below the heading "${title}" before the next one of its rank, "${next.title}". Readers look for what is missing: write it, or delete the heading.`,
  };
}
