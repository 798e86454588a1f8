/** A polarised part is fitted, and neither its step nor its stage says which way round. */
import type { Guide, Use } from "../model/guide.ts";
import type { Language } from "../text/language.ts";
import { ByStage } from "./byStage.ts";
import type { Check, Finding } from "./check.ts";
import { insertNote } from "./hazards/insertNote.ts";
import type { PolarStep } from "./polarity/polarSteps.ts";
import { guideTells, untoldIn } from "./polarity/untold.ts";
import { joinWords, listNames } from "./words.ts";

export const check: Check = {
  meta: {
    code: "polarity-note",
    summary: "A polarised part is fitted, and nothing says which way round.",
    severity: "information",
    source: "common practice",
    late: true,
    tags: ["safety"],
  },
  *guide(guide) {
    const { language } = guide;
    if (!language || guideTells(guide, language)) return;
    for (const polar of UNTOLD.in(guide)) {
      const parts = polar.parts.filter(({ use }) => !isOnlySoldered(use, guide));
      if (parts.length > 0) yield finding({ ...polar, parts }, language);
    }
  },
};

const UNTOLD = new ByStage((stage, guide) => untoldIn(stage, guide.language!));

/** A part in its holes keeps its way round when it is soldered; before a chip comes its socket. */
function isOnlySoldered(use: Use, guide: Guide): boolean {
  if (use.role !== "fit") return false;
  return guide
    .uses(use.supply)
    .some((one) => one.role === "insert" || (one.role === "place" && guide.compare(one, use) < 0));
}

function finding({ step, parts }: PolarStep, language: Language): Finding {
  const [first] = parts;
  const kinds = [...new Set(parts.map(({ kind }) => kind))];
  return {
    at: { piece: step.piece, span: first!.use.span },
    message: () =>
      `Step ${step.number} fits ${listNames(parts.map(({ part }) => part))} (${joinWords(kinds, "and")}), and neither the step nor its stage says which way round. Reversed, such a part fails or takes others with it: say what shows it (ring, notch, longer lead), or put a NOTICE on polarity at the head of the stage.`,
    fixes: [() => insertNote(step, "wrong polarity", language)],
  };
}
