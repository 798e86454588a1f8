/** Power is applied before the kit was looked over, or before the current is limited. */
import type { Guide, Step } from "../model/guide.ts";
import type { Check, Finding, Fix } from "./check.ts";
import { coverageOf, type PowerUp, type Timed } from "./hazards/coverage.ts";
import { eventsOf } from "./hazards/events.ts";
import { isResistance } from "./hazards/stageReader.ts";
import { moveBeforePower } from "./order/moveStep.ts";

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
      yield* tooEarly(powerUp, limit, "limits the current", guide);
      if (first) yield* tooEarly(powerUp, inspection, "looks for faults", guide);
    }
  },
};

function* tooEarly(
  { step, span }: PowerUp,
  due: Timed,
  does: string,
  guide: Guide,
): Iterable<Finding> {
  if (due.when !== "after") return;
  yield {
    at: { piece: step.piece, span },
    message: () =>
      `Step ${step.number} applies power before step ${due.step.number} ${does}. By then a fault has done its harm. Move that step before this one.`,
    related: [
      {
        at: { piece: due.step.piece, span: due.step.fact.span },
        message: () => `Step ${due.step.number} ${does}.`,
      },
    ],
    fixes: [() => moveUp(due.step, step, guide)],
  };
}

function moveUp(due: Step, power: Step, guide: Guide): Fix | undefined {
  const move = takesReading(due, guide) ? undefined : moveBeforePower(due, power, guide);
  return move && { title: "Move that step before this one", safe: false, edits: [move] };
}

/** Of what is there only under power: without the power the step would be in vain. */
function takesReading(step: Step, { language }: Guide): boolean {
  return eventsOf(step.piece, language!).some(
    (event) =>
      event.kind === "figure" &&
      event.step === step &&
      event.figure.reading !== undefined &&
      !isResistance(event.figure),
  );
}
