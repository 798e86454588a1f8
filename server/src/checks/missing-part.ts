/** A listed part that no step fits: once in the guide, and at each line of the list. */
import { isMissing } from "../model/accounting.ts";
import type { Guide } from "../model/guide.ts";
import type { Part } from "../model/parts.ts";
import type { Anchor, Check, Finding, Related, Severity } from "./check.ts";
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
  *line(line, _list, guide) {
    const isLeft = (part: Part) => isMissing(part, guide.uses(part)) && !guide.explained(part);
    const parts = guide.partsOf(line).filter(isLeft);
    if (parts.length > 0) yield atLine(parts, severityIn(guide), guide);
  },
  *guide(guide) {
    const summary = summaryOf(guide);
    if (summary) yield summary;
  },
};

function severityIn(guide: Guide): Severity {
  return guide.reachesEnd ? "error" : "information";
}

/** What a guide's summary was made of. */
interface Summary {
  readonly missing: readonly Part[];
  readonly severity: Severity;
  readonly start: number;
  readonly finding: Finding;
}

/** It may name thousands of parts: it is kept as long as they are the same. */
const SUMMARIES = new WeakMap<Guide, Summary>();

function summaryOf(guide: Guide): Finding | undefined {
  const missing = guide.unexplained;
  const span = guide.frontMatter.keys.get("parts");
  const uri = guide.pages[0]?.uri;
  if (missing.length === 0 || !span || uri === undefined) return undefined;
  const severity = severityIn(guide);
  const known = SUMMARIES.get(guide);
  if (known?.missing === missing && known.severity === severity && known.start === span.start)
    return known.finding;
  const finding = summary(missing, severity, { uri, span });
  SUMMARIES.set(guide, { missing, severity, start: span.start, finding });
  return finding;
}

function summary(missing: readonly Part[], severity: Severity, at: Anchor): Finding {
  const one = missing.length === 1;
  return {
    at,
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
