/** A step names a tool that neither the front matter nor any mark lists. */
import { namingsIn } from "../model/tools/namedThings.ts";
import { isConsumable } from "../trade/tools/tool.ts";
import type { Check, Finding } from "./check.ts";
import { addMark } from "./tools/addMark.ts";
import { type Unlisted, unlisted } from "./tools/unlisted.ts";

export const check: Check = {
  meta: {
    code: "unlisted-tool",
    summary: "A step names a tool that no list of tools has.",
    severity: "information",
    source: "IEC/IEEE 82079-1:2019: instructions tell which tools are needed",
    late: true,
    tags: ["wording"],
  },
  // Finds nothing by itself: the piece is read while its words are at hand.
  piece(piece, guide) {
    namingsIn(piece, guide.language);
    return [];
  },
  *guide(guide) {
    for (const one of unlisted(guide)) if (!isConsumable(one.thing)) yield finding(one);
  },
};

function finding({ first }: Unlisted): Finding {
  const { piece, span, step, text } = first;
  return {
    at: { piece, span },
    message: () =>
      `Step ${step!.number} needs "${text}", a tool that the guide does not list: builders lay out their tools before they begin. Add it to \`tools\` in the front matter, or mark it in the step.`,
    fixes: [() => addMark(first, "tool")],
  };
}
