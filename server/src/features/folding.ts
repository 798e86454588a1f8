/** What may be folded on a page: the front matter, stages, steps, notes and parts tables. */
import type { GuideState } from "../model/guideState.ts";
import { type Span, shift } from "../text/span.ts";
import { type Section, sectionsOf } from "./sections.ts";

/** Stretches of the page's text; those on one line are of no use. */
export function foldsOf(guide: GuideState, uri: string): readonly Span[] {
  const folds: Span[] = [];
  const page = guide.pages.find((one) => one.uri === uri);
  if (page?.frontMatter) folds.push(trimEnd(page.frontMatter.span));
  const add = ({ span, inner }: Section) => {
    folds.push(span);
    inner.forEach(add);
  };
  sectionsOf(guide, uri).forEach(add);
  folds.push(...tablesOf(guide, uri));
  return folds;
}

/** The line end behind the closing fence is not folded with it. */
function trimEnd({ start, end }: Span): Span {
  return { start, end: Math.max(start, end - 1) };
}

/** From `<!-- parts table -->` to its end. */
function tablesOf(guide: GuideState, uri: string): Span[] {
  const tables: Span[] = [];
  let start: number | undefined;
  for (const piece of guide.pieces) {
    if (piece.page.uri !== uri) continue;
    for (const fact of piece.facts.facts) {
      if (fact.kind !== "comment" || fact.comment.kind !== "parts table") continue;
      const at = shift(fact.span, piece.start);
      if (!fact.comment.end) start = at.start;
      else if (start !== undefined) {
        tables.push({ start, end: at.end });
        start = undefined;
      }
    }
  }
  return tables;
}
