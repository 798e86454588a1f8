/** A step brings a hazard that no note before it speaks of. */

import type { Guide } from "../model/guide.ts";
import type { Check, Finding } from "./check.ts";
import { type Covered, coverageOf } from "./hazards/coverage.ts";
import { insertNote } from "./hazards/insertNote.ts";
import { KeptFindings } from "./hazards/kept.ts";
import { deed, dread, gravity, placesFor } from "./hazards/tell.ts";

export const check: Check = {
  meta: {
    code: "hazard-missing",
    summary: "A step brings a hazard that no note before it speaks of.",
    severity: "warning",
    source: "IEC/IEEE 82079-1:2019, ANSI Z535.6",
    late: true,
    tags: ["safety"],
  },
  *guide(guide) {
    for (const { covered } of coverageOf(guide)) {
      for (const one of covered) {
        if (!one.note && !one.late) yield KEPT.of(one, () => missing(one, guide));
      }
    }
  },
};

const KEPT = new KeptFindings<Covered>();

function missing(one: Covered, guide: Guide): Finding {
  const { trigger, hazard } = one;
  return {
    at: { piece: trigger.step.piece, span: trigger.span },
    severity: gravity(hazard),
    message: () =>
      `${deed(trigger)}, and no note before it speaks of ${dread(hazard)}. Put a hazard note ${placesFor(trigger)}: the hazard, what comes of it, how to avoid it. Local rules and qualified practice decide what it must say.`,
    fixes: [
      () => (guide.language ? insertNote(one.trigger.step, one.hazard, guide.language) : undefined),
    ],
  };
}
