/** A listed part that no step fits: once in the guide, and at each line of the list. */
import type { Guide } from "../model/guide.ts";
import type { ListLine } from "../model/list/partsList.ts";
import type { Part } from "../model/parts.ts";
import type { Check, Finding, Related, Severity } from "./check.ts";
import { cellAt, listedAt, useAt } from "./places.ts";
import { listNames, stepName } from "./words.ts";

export const check: Check = {
  meta: {
    code: "missing-part",
    summary: "The parts list supplies a part that no step fits.",
    severity: "error",
    source: "common practice",
    tags: ["parts"],
  },
  *guide(guide) {
    const missing: Part[] = [];
    for (const part of guide.missing) if (!guide.explained(part)) missing.push(part);
    if (missing.length === 0) return;
    const severity: Severity = guide.reachesEnd ? "error" : "information";
    yield* summary(missing, severity, guide);
    for (const parts of byLine(missing)) yield atLine(parts, severity, guide);
  },
};

function* summary(missing: readonly Part[], severity: Severity, guide: Guide): Iterable<Finding> {
  const span = guide.frontMatter.keys.get("parts");
  const uri = guide.pages[0]?.uri;
  if (!span || uri === undefined) return;
  const one = missing.length === 1;
  yield {
    at: { uri, span },
    severity,
    message: () =>
      `${one ? "1 part" : `${missing.length} parts`} of the list ${one ? "is" : "are"} fitted in no step: ${listNames(missing)}. Fit ${one ? "it" : "them"} in a step, or mark as [empty: …] what is left out on purpose.`,
    get related() {
      return missing.slice(0, 10).map((part) => ({
        at: listedAt(part),
        message: () => `${part.name} is listed here.`,
      }));
    },
  };
}

function byLine(missing: readonly Part[]): Iterable<Part[]> {
  const lines = new Map<ListLine, Part[]>();
  for (const part of missing) {
    const there = lines.get(part.line);
    if (there) there.push(part);
    else lines.set(part.line, [part]);
  }
  return lines.values();
}

function atLine(parts: readonly Part[], severity: Severity, guide: Guide): Finding {
  const { list, line } = parts[0]!;
  return {
    at: cellAt(list, line, "designator"),
    severity,
    message: () =>
      `No step of the guide fits ${listNames(parts)}, so the builder is left with ${parts.length === 1 ? "it" : "them"}. Fit ${parts.length === 1 ? "it" : "them"} in a step, or mark the line as do-not-fit or optional.`,
    get related() {
      return handled(parts, guide);
    },
  };
}

/** Steps that name the parts without fitting them: made, matched, tried and taken out again. */
function handled(parts: readonly Part[], guide: Guide): Related[] {
  const uses = parts.flatMap((part) => guide.uses(part)).slice(0, 10);
  return uses.map((use) => ({
    at: useAt(use),
    message: () => `${use.supply.name} is named in ${stepName(use)}, but not fitted there.`,
  }));
}
