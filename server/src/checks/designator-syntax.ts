/** A text in the designator column of the parts list that is no designator. */
import type { Check } from "./check.ts";
import { problemsOf } from "./listProblems.ts";

export const check: Check = {
  meta: {
    code: "designator-syntax",
    summary: "A text in the designator column is no designator.",
    severity: "warning",
    source: "ASME Y14.44-2008, 2.1.3, and common practice",
    tags: ["list"],
  },
  list(list) {
    return problemsOf(list, "designator-syntax");
  },
};
