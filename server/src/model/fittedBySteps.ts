/** Which parts each step puts in place, in the order of the lists. */
import { accountsFor } from "./accounting.ts";
import type { Step } from "./guide.ts";
import type { GuideState } from "./guideState.ts";
import type { Part } from "./parts.ts";

/** Steps that leave a place empty fit nothing. */
export function fittedBySteps(guide: GuideState): ReadonlyMap<Step, readonly Part[]> {
  const fitted = new Map<Step, Part[]>();
  for (const part of guide.parts) {
    for (const use of guide.uses(part)) {
      if (!accountsFor(use) || use.role === "empty") continue;
      const parts = fitted.get(use.step);
      if (!parts) fitted.set(use.step, [part]);
      else if (!parts.includes(part)) parts.push(part);
    }
  }
  return fitted;
}
