/** Parts are picked for likeness only after a step has fitted them. */
import type { Check } from "./check.ts";
import { useAt } from "./places.ts";
import { firstWith, inEarlierStep } from "./progress.ts";
import { partName, stepName } from "./words.ts";

export const check: Check = {
  meta: {
    code: "matched-late",
    summary: "A part is matched after the step that fits it.",
    severity: "error",
    source: "common practice",
    tags: ["parts"],
  },
  *unusual(part, uses, guide) {
    const matched = firstWith(uses, "match");
    const fitted = firstWith(uses, "fit", "insert", "place");
    if (!matched || !fitted || !inEarlierStep(fitted, matched, guide.compare.bind(guide))) return;
    yield {
      at: useAt(matched),
      message: () =>
        `${partName(part)} is matched in ${stepName(matched)}, but ${stepName(fitted)} has fitted it already, and a soldered part cannot be picked any more. Match it in an earlier step.`,
      related: [{ at: useAt(fitted), message: () => `Fitted in ${stepName(fitted)}.` }],
    };
  },
};
