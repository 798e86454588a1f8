/** How messages speak of hazards and of the steps that bring them. */
import { type Harm, type Hazard, harmOf } from "../../trade/hazards/hazards.ts";
import type { Severity } from "../check.ts";
import type { NoteReading } from "./note.ts";
import { guideNoteCovers, type Trigger } from "./triggers.ts";

const HARMS: Readonly<Record<Harm, string>> = {
  damage: "which destroys parts",
  injury: "which can injure",
  death: "which can kill",
};

/** `moving parts, which can injure` */
export function dread(hazard: Hazard): string {
  return `${hazard}, ${HARMS[harmOf(hazard)]}`;
}

/** `Step 4.7 drills ("Drill both holes")` */
export function deed({ step, evidence }: Trigger): string {
  return `Step ${step.number} ${evidence}`;
}

/** Where a note would cover the trigger. */
export function placesFor({ kind }: Trigger): string {
  return guideNoteCovers(kind)
    ? "before this step, at the stage's head or before the first stage"
    : "before this step or at the stage's head (one before the first stage does not cover it)";
}

/** How grave it is to say nothing of a hazard. */
export function gravity(hazard: Hazard): Severity {
  const grave: Readonly<Record<Harm, Severity>> = {
    damage: "information",
    injury: "warning",
    death: "error",
  };
  return grave[harmOf(hazard)];
}

/** `"WARNING: electric shock"`, or what else its opening says. */
export function openingOf({ fact }: NoteReading): string {
  if (fact.alert) return `[!${fact.signal}]`;
  const word = fact.word?.text ?? fact.signal;
  return fact.hazard === "" ? word : `${word}: ${fact.hazard}`;
}
