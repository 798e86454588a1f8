/** Completion of labels: those that `see` may refer to, and those that a reference waits for. */

import type { Step } from "../../model/guide.ts";
import type { GuideState } from "../../model/guideState.ts";
import { openingWords } from "../openingWords.ts";
import type { Completion } from "./completion.ts";

/** Labels of the guide, each with its step, in document order. */
export function labelCompletions(guide: GuideState, typed: string): readonly Completion[] {
  const hash = typed.startsWith("#") ? "#" : "";
  return [...guide.labelNames()].map((name) => {
    const step = guide.labels(name)[0]?.step;
    return { label: hash + name, kind: "label", ...(step && stepDetail(step)) };
  });
}

/** Names that a `see` uses and no label has yet; `[#` gives the step one of them. */
export function missingLabels(guide: GuideState): readonly Completion[] {
  const known = new Set(guide.labelNames());
  const wanted = new Map<string, Step | undefined>();
  for (const { name, step } of guide.references()) {
    if (!known.has(name) && !wanted.has(name)) wanted.set(name, step);
  }
  return [...wanted].map(([name, step]) => ({
    label: name,
    kind: "label",
    ...(step && { detail: `referred to in step ${step.number}` }),
  }));
}

function stepDetail(step: Step): Pick<Completion, "detail" | "documentation"> {
  return { detail: `step ${step.number}`, documentation: () => openingWords(step) };
}
