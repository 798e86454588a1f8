/** How much wire a guide gives for a coil, and where. */
import type { GuideFigure } from "../../model/figures/figure.ts";
import type { Anchor, Guide, Step, Use } from "../../model/guide.ts";
import type { Part } from "../../model/parts.ts";
import { useAt } from "../places.ts";
import { joinWords } from "../words.ts";

export interface GivenWire {
  readonly metres: number;
  readonly at: Anchor;
  /** Who gives it, as the beginning of a sentence: `this step gives`. */
  readonly by: () => string;
}

/**
 * The wire of the step with the coil's turns; else of the steps that make the coil, their sub-steps
 * included, and no other; else of the steps that name the coil as they take the wire. Undefined where
 * none of these takes a length.
 */
export function wireGiven(part: Part, turns: GuideFigure, guide: Guide): GivenWire | undefined {
  const own = turns.step && lengthIn(turns.step);
  if (own) return { metres: own, at: turns.at(), by: () => "this step gives" };
  const making = guide.uses(part).filter(({ role }) => role === "make");
  const homes = [turns.step, ...making.map(({ step }) => step)].filter((one) => one !== undefined);
  const at = turns.piece ? turns.at() : making[0] && useAt(making[0]);
  const family = [...new Set(homes.flatMap(familyOf))];
  const wired = isForOne(family, part) ? family.filter((step) => lengthIn(step)) : [];
  const steps = wired.length > 0 ? wired : stepsNaming(part, guide);
  if (!at || steps.length === 0) return undefined;
  return {
    metres: steps.reduce((sum, step) => sum + lengthIn(step)!, 0),
    at,
    by: () => {
      const numbers = joinWords(
        steps.map(({ number }) => number),
        "and",
      );
      return steps.length === 1 ? `step ${numbers} gives` : `steps ${numbers} give`;
    },
  };
}

/** The wire that the marks of the step use; undefined where they give no length. */
function lengthIn(step: Step): number | undefined {
  let metres = 0;
  for (const { mark, items } of step.marks) {
    if (mark.role !== "fit") continue;
    for (const { item } of items) {
      if (item.kind === "amount" && item.amount.kind === "length") metres += item.amount.metres;
    }
  }
  return metres > 0 ? metres : undefined;
}

/** The step that is no sub-step, with all its sub-steps. */
function familyOf(step: Step): readonly Step[] {
  const { steps } = step.stage;
  let first = steps.indexOf(step);
  while (first > 0 && steps[first]!.fact.depth > 0) first--;
  let end = first + 1;
  while (end < steps.length && steps[end]!.fact.depth > 0) end++;
  return steps.slice(first, end);
}

/** Whether the steps make no other part. */
function isForOne(steps: readonly Step[], part: Part): boolean {
  return steps.every(({ marks }) =>
    marks.every(
      ({ mark, items }) =>
        mark.role !== "make" ||
        items.every(({ supplies }) => supplies.every((supply) => supply === part)),
    ),
  );
}

/** The steps that take a length of something from the list and name this coil, and no other part. */
function stepsNaming(part: Part, guide: Guide): readonly Step[] {
  const steps = new Set<Step>();
  for (const wire of guide.hardware) {
    if (wire.metres === undefined) continue;
    for (const use of guide.uses(wire)) if (namesOnly(use, part, guide)) steps.add(use.step);
  }
  return [...steps];
}

function namesOnly({ role, step }: Use, part: Part, guide: Guide): boolean {
  if (role !== "fit") return false;
  const { piece } = step;
  const named = piece.facts.facts.flatMap((fact) => {
    if (fact.kind !== "mention") return [];
    const home = piece.steps.findLast((one) => one.fact.span.start <= fact.span.start);
    return home === step ? (guide.find(fact.name) ?? []) : [];
  });
  return named.length > 0 && named.every((one) => one === part);
}
