import type { GuideState } from "../model/guideState.ts";
import type { PieceNode } from "../model/pieceNode.ts";

/** The piece of the page that holds the offset. */
export function pieceAt(guide: GuideState, uri: string, offset: number): PieceNode | undefined {
  return guide.pieces.findLast((piece) => piece.page.uri === uri && piece.start <= offset);
}
