/** The kit is not brought to life with care: limited current, checks before, readings after. */
import type { Guide } from "../model/guide.ts";
import type { Check, Finding } from "./check.ts";
import { coverageOf, type PowerUp } from "./hazards/coverage.ts";
import { joinWords } from "./words.ts";

export const check: Check = {
  meta: {
    code: "power-up-missing",
    summary: "The kit is not brought to life with care.",
    severity: "warning",
    source: "common practice",
    late: true,
    tags: ["safety"],
  },
  *guide(guide) {
    if (!guide.language) return;
    const first = coverageOf(guide).find(({ powerUp }) => powerUp)?.powerUp;
    if (!first) yield* neverPowered(guide);
    else yield* careless(first);
  },
};

/** A guide that names a supply and whose last stage has begun to be written. */
function* neverPowered({ frontMatter, pages, reachesEnd }: Guide): Iterable<Finding> {
  const span = frontMatter.keys.get("supply");
  if (frontMatter.supply.length === 0 || !span || !reachesEnd) return;
  yield {
    at: { uri: pages[0]!.uri, span },
    message: () =>
      "The guide names a supply, but no step applies it. A fault then shows when the builder has only smoke to go by. Write a stage that brings the kit to life: a look for faults, a limited current, readings with their tolerance. Mark the step with `<!-- power on -->` where its words do not say that it applies power.",
  };
}

function* careless({ step, span, limit, inspection, reading }: PowerUp): Iterable<Finding> {
  const missing = [
    inspection.when === "never" && "look for faults before it (solder bridges, shorts, polarity)",
    limit.when === "never" && "limit the current (a bench supply with a limit, a lamp in series)",
    !reading && "take a reading after it, with what it must be (`{read V(TP1) = 5 V ± 5 %}`)",
  ].filter((one) => one !== false);
  if (missing.length === 0) return;
  yield {
    at: { piece: step.piece, span },
    message: () =>
      `Step ${step.number} applies power for the first time, and the guide has no step to ${joinWords(missing, "and")}. A single fault can then destroy the kit or hurt its builder. Add what is missing.`,
  };
}
