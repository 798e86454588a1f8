/** A heading has no text, or nothing stands below it. */
import type { GuidePiece } from "../model/guide.ts";
import type { HeadingFact } from "../syntax/facts.ts";
import type { Check, Finding } from "./check.ts";

export const check: Check = {
  meta: {
    code: "heading-empty",
    summary: "A heading has no text, or nothing stands below it.",
    severity: "information",
    source: "common practice",
    tags: ["wording"],
  },
  *piece(piece) {
    const { facts } = piece.facts;
    for (const [index, fact] of facts.entries()) {
      if (fact.kind !== "heading") continue;
      if (isBlank(fact, piece)) yield withoutText(piece, fact);
      const next = facts.slice(index + 1).find(({ kind }) => kind === "heading");
      if (next?.kind === "heading" && isBetween(fact, next, piece)) {
        yield* withoutContent(piece, fact, next);
      }
    }
  },
  *guide(guide) {
    for (const { piece, fact, next } of guide.bareHeadings()) {
      if (next) yield* withoutContent(piece, fact, next);
    }
  },
};

function isBlank(heading: HeadingFact, { facts }: GuidePiece): boolean {
  const text = facts.facts.find(
    (fact) => fact.kind === "text" && fact.span.start === heading.span.start,
  );
  return text?.kind === "text" && text.runs.length === 0;
}

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
      `Nothing stands below the heading "${title}" before the next one of its rank, "${next.title}". Readers look for what is missing: write it, or delete the heading.`,
  };
}
