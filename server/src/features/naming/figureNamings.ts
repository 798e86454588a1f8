/** Where figures name other figures and parts: in their own names and in their sums. */
import { placeOf } from "../../checks/verdict.ts";
import type { GuideFigure } from "../../model/figures/figure.ts";
import type { FigurePart } from "../../model/figures/formula.ts";
import { nameKey, partOfSubject } from "../../model/figures/names.ts";
import type { Anchor } from "../../model/guide.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { Part } from "../../model/parts.ts";
import type { NameUse } from "../../quantity/expression/tree.ts";
import { touches } from "../../text/span.ts";
import { figuresNear } from "../figure/figureAt.ts";

/** A name in a figure, or the subject of one: `R50` of `P(R50)`. */
export interface FigureNaming {
  /** The figure in which it stands. */
  readonly figure: GuideFigure;
  readonly at: Anchor;
  readonly text: string;
  /** The part that it means. */
  readonly part: Part | undefined;
  /** The figure's name that it means; the same for two exactly if they are one figure. */
  readonly key: string | undefined;
  /** The figure that gives the name its value. */
  readonly definition: GuideFigure | undefined;
}

/** All namings in a figure. Subjects come before the names that they belong to. */
export function* namingsOf(figure: GuideFigure, guide: GuideState): Iterable<FigureNaming> {
  const { name } = figure.figure;
  if (name) {
    for (const { text, span } of name.subjects) {
      yield ofSubject(figure, { ...figure.at(), span }, text, guide);
    }
    const at = { ...figure.at(), span: name.span };
    const { listed: part, definition } = figure;
    const key = part ? undefined : figure.key;
    yield { figure, at, text: name.text, part, key, definition };
  }
  for (const { part, use } of figure.formula?.names ?? []) yield* usesIn(figure, part, use, guide);
  for (const { use } of figure.statedFormula?.names ?? []) {
    yield* usesIn(figure, "stated", use, guide);
  }
}

/** The naming at an offset of a page. */
export function figureNamingAt(
  guide: GuideState,
  uri: string,
  offset: number,
): FigureNaming | undefined {
  for (const figure of figuresNear(guide, uri, offset)) {
    for (const naming of namingsOf(figure, guide)) {
      const place = placeOf(naming.at);
      if (place.uri === uri && touches(place.span, offset)) return naming;
    }
  }
  return undefined;
}

function* usesIn(
  figure: GuideFigure,
  text: FigurePart,
  use: NameUse,
  guide: GuideState,
): Iterable<FigureNaming> {
  for (const one of use.subjects) {
    yield ofSubject(figure, figure.at(text, one.span), one.text, guide);
  }
  const meaning = guide.figures.meaning(use, figure.board);
  if (meaning.kind === "constant" || meaning.kind === "unit") return;
  const at = figure.at(text, use.subjects.length > 0 ? use.span : use.symbolSpan);
  const part = meaning.kind === "part" ? meaning.part : undefined;
  const key = part ? undefined : nameKey(use, guide.kit, figure.board);
  const definition = meaning.kind === "figure" ? meaning.figure : undefined;
  yield { figure, at, text: use.symbol, part, key, definition };
}

/** A part, or a rail: `I(VCC)`. */
function ofSubject(figure: GuideFigure, at: Anchor, text: string, guide: GuideState): FigureNaming {
  const part = partOfSubject(text, guide.kit, figure.board);
  const definition = part ? undefined : guide.figures.named(text);
  return { figure, at, text, part, key: definition?.key, definition };
}
