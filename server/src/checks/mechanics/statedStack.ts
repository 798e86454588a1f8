/** Figures by which the author says how thick the stack under a screw is: `{stack(M3x10) = 6 mm}`. */
import type { Step } from "../../model/guide.ts";
import type { FigureName } from "../../syntax/dialect.ts";

export const STACK = "stack";

/** The names of the stacks that the step's text gives. */
export function stacksOf(step: Step): readonly FigureName[] {
  const { steps, facts } = step.piece;
  const stacks: FigureName[] = [];
  for (const fact of facts.facts) {
    const name = fact.kind === "figure" ? fact.figure.name : undefined;
    if (name?.symbol !== STACK) continue;
    const home = steps.findLast((one) => one.fact.span.start <= name.span.start);
    if (home === step) stacks.push(name);
  }
  return stacks;
}
