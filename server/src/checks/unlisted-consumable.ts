/** A step names a consumable that the kit does not contain and no mark lists. */
import { isConsumable } from "../trade/tools/tool.ts";
import type { Check, Finding } from "./check.ts";
import { addMark } from "./tools/addMark.ts";
import { type Unlisted, unlisted } from "./tools/unlisted.ts";

export const check: Check = {
  meta: {
    code: "unlisted-consumable",
    summary: "A step names a consumable that no list has.",
    severity: "information",
    source: "IEC/IEEE 82079-1:2019: instructions tell which consumables are needed",
    late: true,
    tags: ["wording"],
  },
  *guide(guide) {
    for (const one of unlisted(guide)) if (isConsumable(one.thing)) yield finding(one);
  },
};

function finding({ first }: Unlisted): Finding {
  const { piece, span, step, text } = first;
  return {
    at: { piece, span },
    message: () =>
      `Step ${step!.number} uses "${text}", which neither the parts list nor the guide lists: builders find out with the board half done. Write it into the step as \`[own: …]\`, or add it to \`tools\` in the front matter.`,
    fixes: [() => addMark(first, "own")],
  };
}
