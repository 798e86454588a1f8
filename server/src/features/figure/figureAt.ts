/** The figure at a place of a page, and the name in it that the place is on. */
import { placeOf } from "../../checks/verdict.ts";
import type { GuideFigure } from "../../model/figures/figure.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { Call, Expression, NameUse, WordArgument } from "../../quantity/expression/tree.ts";
import { type Span, touches } from "../../text/span.ts";
import { pieceAt } from "../pieceAt.ts";

/** What stands at the place; spans count in the page's text. */
export interface FigureAt {
  readonly figure: GuideFigure;
  readonly span: Span;
  /** A name or a call in its expression, if the place is on one. */
  readonly inner?:
    | { readonly kind: "name"; readonly use: NameUse; readonly span: Span }
    | { readonly kind: "call"; readonly call: Call; readonly span: Span };
}

export function figureAt(guide: GuideState, uri: string, offset: number): FigureAt | undefined {
  for (const figure of figuresNear(guide, uri, offset)) {
    const { span } = placeOf(figure.at());
    const name = figure.piece ? undefined : nameSpan(figure);
    if (name && touches(name, offset)) return { figure, span: name };
    if (!touches(span, offset)) continue;
    const inner = innerAt(figure, offset);
    return { figure, span, ...(inner && { inner }) };
  }
  return undefined;
}

/** The figures of the piece at the offset, or of the front matter. */
export function figuresNear(
  guide: GuideState,
  uri: string,
  offset: number,
): readonly GuideFigure[] {
  const piece = pieceAt(guide, uri, offset);
  if (piece) return guide.figures.ofPiece(piece);
  return uri === guide.pages[0]!.uri ? guide.figures.ofFrontMatter() : [];
}

/** Of the front matter, where the name stands before the value. */
function nameSpan({ figure }: GuideFigure): Span | undefined {
  return figure.name?.span;
}

function innerAt(figure: GuideFigure, offset: number): FigureAt["inner"] {
  for (const { part, use } of figure.formula?.names ?? []) {
    const { span } = placeOf(figure.at(part, use.span));
    if (touches(span, offset)) return { kind: "name", use, span };
  }
  const root = figure.formula?.expression.expression;
  for (const call of root ? callsIn(root) : []) {
    const { span } = placeOf(figure.at("expression", call.nameSpan));
    if (touches(span, offset)) return { kind: "call", call, span };
  }
  return undefined;
}

function* callsIn(expression: Expression | WordArgument): Generator<Call, void, void> {
  switch (expression.kind) {
    case "call":
      yield expression;
      for (const argument of expression.args) yield* callsIn(argument);
      return;
    case "negation":
      yield* callsIn(expression.of);
      return;
    case "operation":
      yield* callsIn(expression.left);
      yield* callsIn(expression.right);
  }
}
