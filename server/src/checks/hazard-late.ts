/** A hazard note comes after the step that brings the hazard. */
import type { Check, Finding } from "./check.ts";
import { type Covered, coverageOf } from "./hazards/coverage.ts";
import { moveNote } from "./hazards/insertNote.ts";
import { KeptFindings } from "./hazards/kept.ts";
import { deed, gravity } from "./hazards/tell.ts";

export const check: Check = {
  meta: {
    code: "hazard-late",
    summary: "A hazard note comes after the step that brings the hazard.",
    severity: "error",
    source: "IEC/IEEE 82079-1:2019",
    late: true,
    tags: ["safety"],
  },
  *guide(guide) {
    for (const { covered } of coverageOf(guide)) {
      for (const one of covered) if (one.late) yield KEPT.of(one, () => late(one));
    }
  },
};

const KEPT = new KeptFindings<Covered>();

function late(one: Covered): Finding {
  const { trigger, hazard } = one;
  const { piece, fact } = one.late!;
  return {
    at: { piece: trigger.step.piece, span: trigger.span },
    severity: gravity(hazard) === "information" ? "warning" : "error",
    message: () =>
      `${deed(trigger)}, but the note on ${hazard} comes after it, to be read when the harm is done. Move it before this step.`,
    related: [{ at: { piece, span: fact.opening }, message: () => "The note is here." }],
    fixes: [() => moveNote(one)],
  };
}
