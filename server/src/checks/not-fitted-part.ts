/** A part marked do-not-fit is fitted, or one listed for fitting is declared empty. */
import type { Use } from "../model/guide.ts";
import type { Hardware, Part } from "../model/parts.ts";
import type { Check, Finding } from "./check.ts";
import { cellAt, useAt } from "./places.ts";
import { firstWith, isFitting } from "./progress.ts";
import { partName, stepName } from "./words.ts";

export const check: Check = {
  meta: {
    code: "not-fitted-part",
    summary: "Guide and list disagree on whether a part is fitted at all.",
    severity: "error",
    source: "common practice",
    tags: ["parts"],
  },
  *unusual(part, uses) {
    const fitting = uses.find(isFitting) ?? firstWith(uses, "place");
    if (!part.fitted && fitting) yield fittedAgainstList(part, fitting);
    if (!part.fitted || part.optional) return;
    const settled = uses.some((use) => use.item.kind === "choice" || isFitting(use));
    const empty = uses.find((use) => use.role === "empty");
    if (empty && !settled) yield emptyAgainstList(part, empty);
  },
  *hardware(hardware, uses) {
    const fitting = uses.find(isFitting);
    if (!hardware.line.fitted && fitting) yield fittedAgainstList(hardware, fitting);
  },
};

function fittedAgainstList(supply: Part | Hardware, use: Use): Finding {
  const name = supply.kind === "part" ? partName(supply) : supply.name;
  return {
    at: useAt(use),
    message: () =>
      `${name} is fitted in ${stepName(use)}, but the parts list marks it do-not-fit, so it is not in the bag. Take it out of the step, or correct the list.`,
    related: [
      {
        at: cellAt(supply.list, supply.line, "fitted", "designator"),
        message: () => `The list marks ${name} do-not-fit here.`,
      },
    ],
  };
}

function emptyAgainstList(part: Part, use: Use): Finding {
  const name = partName(part);
  return {
    at: useAt(use),
    severity: "warning",
    message: () =>
      `${name} is left empty in ${stepName(use)}, but the parts list supplies it for fitting. Mark its line do-not-fit or optional, or fit it in a step.`,
    related: [
      {
        at: cellAt(part.list, part.line, "designator"),
        message: () => `${name} is listed for fitting here.`,
      },
    ],
    explains: [part],
  };
}
