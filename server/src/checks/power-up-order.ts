/** Power is applied before the kit was looked over, or before the current is limited. */
import type { Check, Finding } from "./check.ts";
import { coverageOf, type PowerUp, type Timed } from "./hazards/coverage.ts";

export const check: Check = {
  meta: {
    code: "power-up-order",
    summary: "Power is applied before faults were looked for, or before the current is limited.",
    severity: "warning",
    source: "common practice",
    late: true,
    tags: ["safety"],
  },
  *guide(guide) {
    for (const { powerUp } of coverageOf(guide)) {
      if (!powerUp) continue;
      const { limit, inspection, first } = powerUp;
      yield* tooEarly(powerUp, limit, "limits the current");
      if (first) yield* tooEarly(powerUp, inspection, "looks for faults");
    }
  },
};

function* tooEarly({ step, span }: PowerUp, due: Timed, does: string): Iterable<Finding> {
  if (due.when !== "after") return;
  yield {
    at: { piece: step.piece, span },
    message: () =>
      `Step ${step.number} applies power, and only step ${due.step.number} ${does}. By then a fault has done its harm. Move that step before this one.`,
    related: [
      {
        at: { piece: due.step.piece, span: due.step.fact.span },
        message: () => `Step ${due.step.number} ${does}.`,
      },
    ],
  };
}
