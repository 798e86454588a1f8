/** A part placed for trial that is neither taken out again nor fitted. */

import type { Check } from "./check.ts";
import { useAt } from "./places.ts";
import { openEnds } from "./progress.ts";
import { tally } from "./tally.ts";
import { partName, pieces, stepName } from "./words.ts";

export const check: Check = {
  meta: {
    code: "trial-left",
    summary: "A part is placed for trial and then neither removed nor fitted.",
    severity: "error",
    source: "common practice",
    tags: ["parts"],
  },
  *unusual(part, uses) {
    const { tried } = openEnds(uses);
    if (!tried) return;
    yield {
      at: useAt(tried),
      message: () =>
        `${partName(part)} is placed for trial in ${stepName(tried)} and stays there: no later step removes or fits it. Add a step with [remove: ${part.name}], or fit it with [${part.name}].`,
      explains: [part],
    };
  },
  *hardware(hardware, uses) {
    for (const use of tally(uses, Number.POSITIVE_INFINITY).open) {
      if (use.role !== "try") continue;
      const lent = pieces(use.count ?? 1, hardware);
      const what = use.count === 1 ? "is lent to a trial" : "are lent to a trial";
      const left = use.count === 1 ? "not" : "not all are";
      yield {
        at: useAt(use),
        message: () =>
          `${lent} ${what} in ${stepName(use)} and ${left} taken back or fitted later. Add [remove: ${lent}] where they come out again.`,
      };
    }
  },
};
