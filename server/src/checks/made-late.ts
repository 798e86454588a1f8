/** The builder makes a part only after a step has fitted it. */
import type { Check } from "./check.ts";
import { useAt } from "./places.ts";
import { firstWith, inEarlierStep } from "./progress.ts";
import { partName, stepName } from "./words.ts";

export const check: Check = {
  meta: {
    code: "made-late",
    summary: "A part is made after the step that fits it.",
    severity: "error",
    source: "common practice",
    tags: ["parts"],
  },
  *unusual(part, uses, guide) {
    const made = firstWith(uses, "make");
    const fitted = firstWith(uses, "fit", "insert", "place", "try");
    if (!made || !fitted || !inEarlierStep(fitted, made, guide.compare.bind(guide))) return;
    yield {
      at: useAt(made),
      message: () =>
        `${partName(part)} is made in ${stepName(made)}, but ${stepName(fitted)} needs it already. Make it in an earlier step.`,
      related: [{ at: useAt(fitted), message: () => `Needed in ${stepName(fitted)}.` }],
    };
  },
};
