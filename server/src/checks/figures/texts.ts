/** Stretches of a figure's texts. */
import type { GuideFigure } from "../../model/figures/figure.ts";
import { type FigurePart, textOfPart } from "../../model/figures/formula.ts";
import type { Span } from "../../text/span.ts";

export function textOfSpan(
  { figure }: GuideFigure,
  part: FigurePart,
  { start, end }: Span,
): string {
  return textOfPart(figure, part)?.text.slice(start, end) ?? "";
}
