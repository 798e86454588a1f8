/** Results shown behind formulas that state none. */
import { placeOf } from "../../checks/verdict.ts";
import type { GuideFigure } from "../../model/figures/figure.ts";
import type { GuideState } from "../../model/guideState.ts";
import { printLimits, printValue } from "../../quantity/printRange.ts";
import type { Span } from "../../text/span.ts";

export interface FigureHint {
  /** Offset in the page's text: before the closing brace, behind the value of the front matter. */
  readonly at: number;
  readonly text: string;
  readonly tooltip: string | undefined;
}

/** Hints between the offsets of a page. */
export function figureHints(guide: GuideState, uri: string, within: Span): readonly FigureHint[] {
  const pieces = guide.pieces.filter(
    ({ page, start, length }) =>
      page.uri === uri && start < within.end && start + length > within.start,
  );
  const ofHead = uri === guide.pages[0]!.uri ? guide.figures.ofFrontMatter() : [];
  const figures = [...ofHead, ...pieces.flatMap((piece) => guide.figures.ofPiece(piece))];
  return figures.flatMap((figure) => {
    const hint = hintOf(figure);
    return hint && hint.at >= within.start && hint.at <= within.end ? [hint] : [];
  });
}

function hintOf(figure: GuideFigure): FigureHint | undefined {
  const { stated, reading } = figure.figure;
  const value = figure.evaluation?.value;
  if (!value || stated || reading || figure.formula?.isQuantity) return undefined;
  const { end } = placeOf(figure.at()).span;
  return {
    at: figure.piece ? end - 1 : end,
    text: ` = ${printValue(value)}`,
    tooltip: value.min < value.max ? `Worst case ${printLimits(value)}` : undefined,
  };
}
