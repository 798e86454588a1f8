/** Moves a step past its neighbour, with its pictures, notes and comments. */
import { moveBy } from "../../checks/order/moveStep.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { Action, Selection } from "./action.ts";
import { stepAt } from "./stepAt.ts";

export function* moves(guide: GuideState, { uri, start }: Selection): Iterable<Action> {
  const step = stepAt(guide, uri, start);
  if (!step) return;
  const number = step.number.split(".").slice(0, 2).join(".");
  for (const [by, way] of [
    [-1, "up"],
    [1, "down"],
  ] as const) {
    const edits = moveBy(step, by, guide);
    if (edits) yield { title: `Move step ${number} ${way}`, kind: "move", edits: [edits] };
  }
}
