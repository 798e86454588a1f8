/** What the stages before a stage leave behind, as far as its hazards depend on it. */
import type { Part } from "../../model/parts.ts";
import type { NoteReading } from "./note.ts";

export interface Before {
  /** Whether a stage with steps has been. */
  readonly started: boolean;
  /** Notes before the first stage: they cover the guide. */
  readonly guideNotes: readonly NoteReading[];
  /** Notes that stand between stages: they cover the next one. */
  readonly nextNotes: readonly NoteReading[];
  /** Triggers owed once that have been met. */
  readonly met: readonly string[];
  /** Dangerous parts in place, and those of them that have been under power. */
  readonly inPlace: readonly Part[];
  readonly powered: readonly Part[];
  /** Whether power has been applied, and whether a step has looked for faults before. */
  readonly powerApplied: boolean;
  readonly inspected: boolean;
}

export const START: Before = {
  started: false,
  guideNotes: [],
  nextNotes: [],
  met: [],
  inPlace: [],
  powered: [],
  powerApplied: false,
  inspected: false,
};

export function sameBefore(a: Before, b: Before): boolean {
  return (
    a === b ||
    (a.started === b.started &&
      a.powerApplied === b.powerApplied &&
      a.inspected === b.inspected &&
      sameList(a.guideNotes, b.guideNotes) &&
      sameList(a.nextNotes, b.nextNotes) &&
      sameList(a.met, b.met) &&
      sameList(a.inPlace, b.inPlace) &&
      sameList(a.powered, b.powered))
  );
}

/** The same object where nothing changes, so that it is quickly told to be the same. */
export function carriedOn(after: Before, before: Before): Before {
  return sameBefore(after, before) ? before : after;
}

function sameList<T>(a: readonly T[], b: readonly T[]): boolean {
  if (a === b) return true;
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}
