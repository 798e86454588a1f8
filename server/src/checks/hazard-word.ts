/** The signal word of a hazard note does not fit its hazard. */

import type { Guide } from "../model/guide.ts";
import { languageOfSignal, type Signal, signalWord } from "../syntax/signalWords.ts";
import { type Harm, harmOf, signalsFor } from "../trade/hazards/hazards.ts";
import type { Check, Finding, Fix } from "./check.ts";
import type { NoteReading } from "./hazards/note.ts";
import { notesOf } from "./hazards/notesOf.ts";
import { openingOf } from "./hazards/tell.ts";
import { replace } from "./places.ts";

export const check: Check = {
  meta: {
    code: "hazard-word",
    summary: "The signal word of a hazard note does not fit its hazard.",
    severity: "warning",
    source: "ANSI Z535.6, ISO 3864-2:2016",
    late: true,
    tags: ["safety"],
  },
  *piece(piece, guide) {
    for (const note of notesOf(piece, guide)) {
      const harm = harmIn(note);
      const fits = harm && signalsFor(harm);
      if (!harm || !fits || note.fact.alert || fits.includes(note.fact.signal)) continue;
      yield misfit(note, harm, fits[0]!, guide);
    }
  },
};

/** The gravest that the note speaks of; undefined when it does not say. */
function harmIn({ named, says }: NoteReading): Harm | undefined {
  const harm = named && harmOf(named);
  if (says.kills || harm === "death") return "death";
  if (says.hurts || harm === "injury") return "injury";
  return harm ?? (says.breaks ? "damage" : undefined);
}

const WHY: Readonly<Record<Harm, string>> = {
  damage:
    "speaks of damage alone, and its signal word is for injury. Words that cry too loud are soon not heard: write NOTICE",
  injury:
    "speaks of injury, and NOTICE is for damage alone. Write CAUTION, or WARNING where the injury can be grave",
  death:
    "speaks of what can kill, and its signal word is for less. Write WARNING, or DANGER where it will kill",
};

function misfit(note: NoteReading, harm: Harm, signal: Signal, guide: Guide): Finding {
  const { piece, fact } = note;
  return {
    at: { piece, span: fact.word?.span ?? fact.opening },
    ...(harm === "death" && fact.signal === "NOTICE" && { severity: "error" }),
    message: () => `The note "${openingOf(note)}" ${WHY[harm]}.`,
    fixes: [() => changeWord(note, signal, guide)],
  };
}

function changeWord({ piece, fact }: NoteReading, signal: Signal, guide: Guide): Fix | undefined {
  if (!fact.word) return undefined;
  const { text, span } = fact.word;
  const word = signalWord(signal, languageOfSignal(text, guide.language ?? "en"));
  return replace(piece, span, word, `Write ${word}`);
}
