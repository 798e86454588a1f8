/** A hazard note does not say what comes of the hazard, or how it is avoided. */
import type { Check, Finding } from "./check.ts";
import type { NoteReading } from "./hazards/note.ts";
import { notesOf } from "./hazards/notesOf.ts";
import { openingOf } from "./hazards/tell.ts";

export const check: Check = {
  meta: {
    code: "hazard-incomplete",
    summary: "A hazard note does not say what comes of the hazard, or how it is avoided.",
    severity: "warning",
    source: "ANSI Z535.6, IEC/IEEE 82079-1:2019",
    late: true,
    tags: ["safety"],
  },
  *piece(piece, guide) {
    for (const note of notesOf(piece, guide)) {
      if (!note.hasAvoidance) yield withoutAvoidance(note);
      else if (!note.hasConsequence) yield withoutConsequence(note);
    }
  },
};

function withoutAvoidance(note: NoteReading): Finding {
  const { piece, fact, hasConsequence } = note;
  const lacks = hasConsequence
    ? "says what may happen, but not how it is avoided"
    : "says neither what may happen nor how it is avoided";
  return {
    at: { piece, span: fact.opening },
    message: () =>
      `The note "${openingOf(note)}" ${lacks}: it frightens, and does not help. Add a sentence that tells the builder what to do.`,
  };
}

/** Where the readers know at once what happens, the consequence may be left out (EN 82079-1). */
function withoutConsequence(note: NoteReading): Finding {
  const { piece, fact } = note;
  return {
    at: { piece, span: fact.opening },
    severity: "information",
    message: () =>
      `The note "${openingOf(note)}" says what to do, but not what happens otherwise: who does not know why skips it. Add the consequence, unless every builder knows it.`,
  };
}
