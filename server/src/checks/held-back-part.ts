/** A part put aside, or placed for soldering later, that no later step fits. */
import type { Use } from "../model/guide.ts";
import type { Part } from "../model/parts.ts";
import type { Check, Finding } from "./check.ts";
import { useAt } from "./places.ts";
import { isFitting, openEnds } from "./progress.ts";
import { tally } from "./tally.ts";
import { partName, stepName, usedAmount } from "./words.ts";

export const check: Check = {
  meta: {
    code: "held-back-part",
    summary: "A part is put aside or placed, and no later step fits it.",
    severity: "error",
    source: "common practice",
    tags: ["parts"],
  },
  *unusual(part, uses, guide) {
    const { held, tried } = openEnds(uses);
    if (!held || tried || !part.fitted) return;
    if (part.optional && held.role === "later") return;
    const before = uses.find((use) => isFitting(use) && guide.compare(use, held) < 0);
    yield before ? heldTooLate(part, before, held) : neverFitted(part, held);
  },
  *hardware(hardware, uses, guide) {
    const placed = tally(uses, Number.POSITIVE_INFINITY).open.find((use) => use.role === "place");
    const later = uses.findLast((use) => use.role === "later");
    const fitted = later && uses.some((use) => isFitting(use) && guide.compare(later, use) < 0);
    const open = placed ?? (fitted ? undefined : later);
    if (!open) return;
    const them = (open.count ?? 1) > 1 ? "them" : "it";
    yield {
      at: useAt(open),
      message: () =>
        `${usedAmount(open, hardware)} ${doing(open)} in ${stepName(open)}, and no later step fits ${them}. Name ${them} in the step that fits ${them}.`,
    };
  },
};

function doing(use: Use): string {
  return use.role === "later" ? "put aside" : "placed";
}

function neverFitted(part: Part, held: Use): Finding {
  const name = partName(part);
  return {
    at: useAt(held),
    message: () =>
      held.role === "later"
        ? `${name} is put aside in ${stepName(held)}, and no later step fits it, so the builder is left with it. Name it in the step that fits it.`
        : `${name} is placed in ${stepName(held)}, and no later step solders it. Name it, without a role, in the step that solders it.`,
    explains: [part],
  };
}

function heldTooLate(part: Part, before: Use, held: Use): Finding {
  const name = partName(part);
  return {
    at: useAt(held),
    message: () =>
      `${name} is ${doing(held)} in ${stepName(held)}, but ${stepName(before)} has fitted it already. Move this mark before that step, or take one of the two out.`,
    related: [{ at: useAt(before), message: () => `Fitted in ${stepName(before)}.` }],
    explains: [part],
  };
}
