/** A step asks for several kinds of work. */
import type { GuidePiece, Step } from "../model/guide.ts";
import type { Language } from "../text/language.ts";
import type { Span } from "../text/span.ts";
import type { Check, Finding } from "./check.ts";
import { limitOf } from "./limits.ts";
import { actsIn } from "./wording/actions.ts";
import type { Action } from "./wording/verbs/verbs.ts";
import { joinWords } from "./words.ts";

export const check: Check = {
  meta: {
    code: "several-actions",
    summary: "A step asks for several kinds of work.",
    severity: "information",
    source: "IEC/IEEE 82079-1:2019: one action in a step; ASD-STE100, rule 5.2",
    late: true,
    tags: ["wording"],
    limit: { default: 1, summary: "Most kinds of work in a step." },
  },
  *piece(piece, guide) {
    if (!guide.language) return;
    const most = limitOf(check.meta, guide);
    for (const [step, verbs] of verbsOf(piece, guide.language)) {
      if (verbs.size > most) yield several(piece, step, [...verbs.values()]);
    }
  },
};

/** The first verb of each kind of work, by step. */
function verbsOf(piece: GuidePiece, language: Language): Map<Step, Map<Action, Span>> {
  const bySteps = new Map<Step, Map<Action, Span>>();
  for (const block of piece.prose) {
    if (!block.instructs) continue;
    const verbs = bySteps.get(block.step!) ?? new Map<Action, Span>();
    bySteps.set(block.step!, verbs);
    for (const sentence of block.sentences) {
      for (const { action, verb } of actsIn(sentence, block, language)) {
        if (!verbs.has(action)) verbs.set(action, verb);
      }
    }
  }
  return bySteps;
}

function several(piece: GuidePiece, step: Step, verbs: readonly Span[]): Finding {
  const said = verbs.map((span) => {
    const { page, start } = piece;
    return `"${page.text.slice(start + span.start, start + span.end).toLowerCase()}"`;
  });
  return {
    at: { piece, span: verbs[1]! },
    message: () =>
      `Step ${step.number} asks for ${verbs.length} kinds of work: ${joinWords(said, "and")}. A builder who ticks it off after the first forgets the rest: make a step or a sub-step of each.`,
  };
}
