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
    const moved = moveBy(step, by, guide);
    if (!moved) continue;
    yield {
      title: `Move step ${number} ${way}`,
      kind: "move",
      edits: [{ uri, edits: moved.edits }],
      // The cursor stays in the step, which may be moved on.
      goOn: { uri, offset: start + moved.shift },
    };
  }
}
