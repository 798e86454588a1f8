/**
 * What reading a guide's pages has shown: problems of their front matter, marks and figures. It needs no
 * parts list and few checks, so whoever opens a guide sees it before the lists are read and the other
 * checks loaded. The checks tell it again, with the fixes.
 */
import type { GuidePage } from "../model/guidePage.ts";
import type { Span } from "../text/span.ts";
import type { Check, Severity } from "./check.ts";
import { check as figureSyntax } from "./figure-syntax.ts";
import { check as frontMatterCheck } from "./front-matter.ts";
import { check as markSyntax } from "./mark-syntax.ts";
import type { Found } from "./runner.ts";

/** What was found in the pages as far as they are read; nothing by a check that some comment allows. */
export function readingFindings(pages: readonly GuidePage[]): Found[] {
  const allowed = new Set(pages.flatMap((page) => [...allowedCodes(page)]));
  const found = pages.flatMap((page) => [...findingsOf(page)]);
  return found.filter(({ check }) => !allowed.has(check.meta.code));
}

function* findingsOf({ uri, frontMatter, sequence }: GuidePage): Generator<Found> {
  const found = (check: Check, span: Span, message: string, severity?: Severity): Found => {
    const finding = { at: { uri, span }, message: () => message, ...(severity && { severity }) };
    return { check, finding };
  };
  for (const { span, message } of frontMatter?.problems ?? [])
    yield found(frontMatterCheck, span, message);
  for (const { start, digest } of sequence.pieces) {
    for (const { about, span, message } of digest.problems) {
      const inPage = { start: start + span.start, end: start + span.end };
      if (about === "figure") yield found(figureSyntax, inPage, message, "warning");
      else yield found(markSyntax, inPage, message);
    }
  }
}

function* allowedCodes({ sequence }: GuidePage): Generator<string> {
  for (const { digest } of sequence.pieces) {
    for (const fact of digest.facts)
      if (fact.kind === "comment" && fact.comment.kind === "allow") yield fact.comment.code;
  }
}
