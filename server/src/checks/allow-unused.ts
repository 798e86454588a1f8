/** An allow-comment that suppresses nothing. */
import type { Allow } from "../model/stageNode.ts";
import type { Check } from "./check.ts";
import type { Found } from "./runner.ts";

export const check: Check = {
  meta: {
    code: "allow-unused",
    summary: "An allow-comment suppresses nothing.",
    severity: "warning",
    source: "common practice",
    tags: ["form"],
  },
};

/** The finding for a comment that the judge found unused. */
export function unusedAllow(allow: Allow): Found {
  const { piece, fact, code } = allow;
  const message = allow.idle
    ? `No step follows this comment in its stage, so it allows nothing. Put it above the step it is meant for, or delete it.`
    : `There is no ${code} finding here to allow. Delete the comment, so that it does not hide a later fault.`;
  return { check, finding: { at: { piece, span: fact.span }, message: () => message } };
}
