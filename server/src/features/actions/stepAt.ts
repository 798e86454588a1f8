import type { GuideState } from "../../model/guideState.ts";
import type { StepNode } from "../../model/pieceNode.ts";
import { pieceAt } from "../pieceAt.ts";

/** The step that an offset of a page lies in; a heading ends it. */
export function stepAt(guide: GuideState, uri: string, offset: number): StepNode | undefined {
  const piece = pieceAt(guide, uri, offset);
  if (!piece) return undefined;
  const at = offset - piece.start;
  let next = 0;
  let step: StepNode | undefined;
  for (const fact of piece.facts.facts) {
    if (fact.kind !== "step" && fact.kind !== "heading") continue;
    if (fact.span.start > at) break;
    if (fact.kind === "heading") step = undefined;
    else if (piece.steps[next]?.fact === fact) step = piece.steps[next++];
  }
  return step;
}
