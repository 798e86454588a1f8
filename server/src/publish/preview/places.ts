/** Which block of a preview shows which stretch of the text. */
import { pieceAt } from "../../features/pieceAt.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { PieceNode } from "../../model/pieceNode.ts";
import type { Span } from "../../text/span.ts";
import type { Shown } from "./patch.ts";
import type { Source } from "./preview.ts";

/** A stretch of a page that a block shows. */
export interface Stretch extends Span {
  readonly uri: string;
}

export interface Place {
  readonly id: number;
  readonly stretch: Stretch;
}

export interface BlockSource {
  readonly stretch: Stretch;
  /** Undefined for the head of the guide, which shows its front matter. */
  readonly piece: PieceNode | undefined;
}

/** Undefined for a page of another guide. */
export function placeOfText(
  shown: readonly Shown[],
  guide: GuideState,
  uri: string,
  offset: number,
): Place | undefined {
  const [head] = shown;
  if (!head || !guide.pages.some((page) => page.uri === uri)) return undefined;
  const wanted = pieceAt(guide, uri, offset);
  const index = wanted ? lastBefore(shown, wanted, offset - wanted.start) : -1;
  if (index >= 0) return { id: shown[index]!.id, stretch: stretchAt(shown, index)!.stretch };
  // What stands before all blocks of its page.
  const first = shown.find(({ block }) => block.source?.piece.page.uri === uri)?.block.source;
  const end = first ? first.piece.start + first.start : 0;
  return { id: head.id, stretch: { uri, start: 0, end } };
}

function lastBefore(shown: readonly Shown[], wanted: PieceNode, start: number): number {
  return shown.findLastIndex(({ block: { source } }) => {
    if (!source || source.piece.page !== wanted.page) return false;
    const { order } = source.piece;
    return order < wanted.order || (order === wanted.order && source.start <= start);
  });
}

/** Undefined for a block that is gone, and for one that stands for no place. */
export function sourceOfBlock(
  shown: readonly Shown[],
  guide: GuideState,
  id: number,
): BlockSource | undefined {
  const index = shown.findIndex((one) => one.id === id);
  if (index === 0) {
    const { uri } = guide.pages[0]!;
    return { stretch: placeOfText(shown, guide, uri, -1)!.stretch, piece: undefined };
  }
  const found = index < 0 ? undefined : stretchAt(shown, index);
  // A piece that an edit has dropped stands nowhere any more.
  return found?.piece && guide.pieces[found.piece.order] === found.piece ? found : undefined;
}

/** Source of the next block that has one. */
function sourceBehind(shown: readonly Shown[], index: number): Source | undefined {
  for (let i = index + 1; i < shown.length; i++) {
    const { source } = shown[i]!.block;
    if (source) return source;
  }
  return undefined;
}

/** Up to where the source of the next block of the page begins. */
function stretchAt(shown: readonly Shown[], index: number): BlockSource | undefined {
  const source = shown[index]!.block.source;
  if (!source) return undefined;
  const { piece } = source;
  const { uri, text } = piece.page;
  const start = piece.start + source.start;
  const next = sourceBehind(shown, index);
  const end = next?.piece.page === piece.page ? next.piece.start + next.start : text.length;
  return { stretch: { uri, start, end: Math.max(start, end) }, piece };
}
