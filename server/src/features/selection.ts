/** How a selection grows at a place: a part, its mark, the block, the step, the stage, the page. */
import type { GuideState } from "../model/guideState.ts";
import { type Span, shift, touches } from "../text/span.ts";
import { namingsIn } from "./naming/namings.ts";
import { pieceAt } from "./pieceAt.ts";
import { type Section, sectionsOf } from "./sections.ts";

/** Spans around the offset, each wider than the one before; they count in the page. */
export function selectionsAt(
  guide: GuideState,
  uri: string,
  offset: number,
  sections = sectionsOf(guide, uri),
): readonly Span[] {
  const page = guide.pages.find((one) => one.uri === uri);
  if (!page) return [];
  const spans = [...inPiece(guide, uri, offset), ...around(sections, offset)];
  if (page.frontMatter && touches(page.frontMatter.span, offset)) spans.push(page.frontMatter.span);
  spans.push({ start: 0, end: page.text.length });
  return growing(spans, offset);
}

function inPiece(guide: GuideState, uri: string, offset: number): Span[] {
  const piece = pieceAt(guide, uri, offset);
  if (!piece) return [];
  const spans = [...namingsIn(piece)].map(({ span }) => span);
  for (const fact of piece.facts.facts) {
    if (fact.kind === "mark") {
      const { span, items } = fact.mark;
      spans.push(...items.map((item) => item.span));
      spans.push({ start: span.start + 1, end: span.end - 1 }, span);
    } else if (fact.kind === "figure") {
      const { span } = fact.figure;
      spans.push({ start: span.start + 1, end: span.end - 1 }, span);
    } else if (fact.kind === "text" || fact.kind === "note" || fact.kind === "step") {
      spans.push(fact.span);
    }
  }
  return spans.map((span) => shift(span, piece.start));
}

function around(sections: readonly Section[], offset: number): Span[] {
  return sections.flatMap(({ span, inner }) =>
    touches(span, offset) ? [...around(inner, offset), span] : [],
  );
}

/** Those around the offset, from the narrowest, each holding the one before. */
function growing(spans: readonly Span[], offset: number): Span[] {
  const sorted = spans
    .filter((span) => touches(span, offset) && span.end > span.start)
    .sort((a, b) => a.end - a.start - (b.end - b.start));
  const kept: Span[] = [];
  for (const span of sorted) {
    const last = kept.at(-1);
    const isWider =
      !last || (span.start <= last.start && span.end >= last.end && !isSame(span, last));
    if (isWider) kept.push(span);
  }
  return kept;
}

function isSame(a: Span, b: Span): boolean {
  return a.start === b.start && a.end === b.end;
}
