/** Names that the guide's figures define, with what is written of each. */
import { readingText } from "../../model/figures/readingText.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { PieceNode } from "../../model/pieceNode.ts";

export interface NamedFigure {
  readonly name: string;
  /** As written: `13.8 V ± 10 %`, `Iq^2 * R50`. */
  readonly text: string;
  /** Number of the step; undefined in the front matter and outside steps. */
  readonly step: string | undefined;
}

/** Each name once: those of the front matter first, then in document order. */
export function figureNames(guide: GuideState): readonly NamedFigure[] {
  const found = new Map<string, NamedFigure>();
  const { supply, figures } = guide.frontMatter;
  for (const { name, value } of [...supply, ...figures]) {
    if (!found.has(name)) found.set(name, { name, text: value, step: undefined });
  }
  for (const piece of guide.pieces) {
    for (const { name, text, at } of namesIn(piece)) {
      const step = piece.steps.findLast(({ fact }) => fact.span.start <= at)?.number;
      if (!found.has(name)) found.set(name, { name, text, step });
    }
  }
  return [...found.values()];
}

interface PieceName {
  readonly name: string;
  readonly text: string;
  readonly at: number;
}

const KNOWN = new WeakMap<PieceNode, readonly PieceName[]>();

function namesIn(piece: PieceNode): readonly PieceName[] {
  const known = KNOWN.get(piece);
  if (known) return known;
  const names: PieceName[] = [];
  for (const fact of piece.facts.facts) {
    if (fact.kind !== "figure" || !fact.figure.name) continue;
    const { name, expression, tolerance, reading, span } = fact.figure;
    const value = reading ? readingText(reading) : expression?.text;
    if (value === undefined) continue;
    const text = tolerance ? `${value} ± ${tolerance.text}` : value;
    names.push({ name: name.text, text, at: span.start });
  }
  KNOWN.set(piece, names);
  return names;
}
