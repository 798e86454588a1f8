/** Hazards that steps bring under the new list and did not under the old one, and the reverse. */
import { type Covered, coverageOf } from "../../checks/hazards/coverage.ts";
import { openingOf } from "../../checks/hazards/tell.ts";
import { isOwedOnce } from "../../checks/hazards/triggers.ts";
import { placeOf } from "../../checks/verdict.ts";
import type { Stage } from "../../model/guide.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { Draft } from "./drafts.ts";
import type { Revision } from "./revisedParts.ts";

export function touchedHazards({ before, after }: Revision): Draft[] {
  const [old, fresh] = [hazardsOf(before), hazardsOf(after)];
  const notes = new Set([...fresh.values()].map(noteKey));
  const gained = [...fresh].flatMap(([key, one]) => (old.has(key) ? [] : one));
  const lost = [...old].flatMap(([key, one]) => (fresh.has(key) ? [] : one));
  const gone = lost.filter((one) => !gained.some((other) => isOfSameStep(one, other)));
  return [
    ...gained.map((one) => gainedDraft(one, lost)),
    ...gone.map((one) => lostDraft(one, notes)),
  ];
}

/** The step brings the hazard under both lists, though by another part. */
function isOfSameStep(a: Covered, b: Covered): boolean {
  return a.hazard === b.hazard && a.trigger.step.number === b.trigger.step.number;
}

/** By kind and by where a note for it is owed; the step that brings it first stands for the rest. */
function hazardsOf(guide: GuideState): ReadonlyMap<string, Covered> {
  const found = new Map<string, Covered>();
  for (const { stage, covered } of coverageOf(guide)) {
    for (const one of covered) {
      const { kind, of = "" } = one.trigger;
      const scope = isOwedOnce(kind) ? "" : stageKey(stage);
      const key = [kind, one.hazard, of, scope].join("\n");
      if (!found.has(key)) found.set(key, one);
    }
  }
  return found;
}

function stageKey({ heading }: Stage): string {
  return heading
    ? `${heading.piece.page.uri} ${heading.piece.start + heading.fact.span.start}`
    : "";
}

function gainedDraft(one: Covered, lost: readonly Covered[]): Draft {
  const { trigger, hazard, note } = one;
  const { step, span, evidence } = trigger;
  const isOld = lost.some((other) => isOfSameStep(one, other));
  const brings = isOld
    ? `Brings the hazard ${hazard} for another reason now.`
    : `Brings a hazard now: ${hazard}.`;
  const cover = note ? `The note ${quoted(note)} covers it.` : "No note before it covers it.";
  return {
    kind: "hazard",
    at: { piece: step.piece, span },
    step,
    message: `${brings} The step ${evidence}. ${cover}`,
    note: `${brings} The step ${evidence}.${note ? ` Heed the note ${quoted(note)}.` : ""}`,
    names: [hazard],
  };
}

function lostDraft(one: Covered, stillUsed: ReadonlySet<string>): Draft {
  const { trigger, hazard, note } = one;
  const { step, span, evidence } = trigger;
  const mayGo =
    note && !stillUsed.has(noteKey(one)) ? ` The note ${quoted(note)} may have become idle.` : "";
  return {
    kind: "hazard",
    at: note ? { piece: note.piece, span: note.fact.span } : { piece: step.piece, span },
    step,
    message: `No longer brings a hazard: ${hazard} (it was the step that ${evidence}).${mayGo}`,
    note: undefined,
    names: [hazard],
  };
}

function noteKey({ note }: Covered): string {
  if (!note) return "";
  const { uri, span } = placeOf({ piece: note.piece, span: note.fact.span });
  return `${uri} ${span.start}`;
}

function quoted(note: NonNullable<Covered["note"]>): string {
  return `“${openingOf(note)}”`;
}
