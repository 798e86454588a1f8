/**
 * What brings a hazard. Each kind says which hazards, how often its note is owed, and whether a note
 * before the first stage will do: not for what a stage brings anew (IEC/IEEE 82079-1: a warning
 * stands before the first step, or directly before the step it concerns).
 */
import type { Step } from "../../model/guide.ts";
import type { Span } from "../../text/span.ts";
import type { Act } from "../../trade/acts/form.ts";
import type { Hazard } from "../../trade/hazards/hazards.ts";

interface Kind {
  readonly hazards: readonly Hazard[];
  /** A note is owed once in the guide, or again in each stage. */
  readonly owed: "once" | "each stage";
  /** Whether a note before the first stage covers it. */
  readonly guideNote: boolean;
}

/** Common practice in workshops and in soldering courses, but where a line names its source. */
const KINDS = {
  soldering: { hazards: ["hot surface", "fumes"], owed: "once", guideNote: true },
  cutting: { hazards: ["eye injury"], owed: "once", guideNote: true },
  "burning enamel": { hazards: ["fumes"], owed: "once", guideNote: true },
  heating: { hazards: ["hot surface"], owed: "once", guideNote: true },
  solvent: { hazards: ["fire", "fumes"], owed: "each stage", guideNote: true },
  "sheet metal": { hazards: ["sharp edge"], owed: "each stage", guideNote: true },
  sawing: { hazards: ["sharp edge"], owed: "each stage", guideNote: true },
  spring: { hazards: ["eye injury"], owed: "each stage", guideNote: true },
  // ISO 11228-1, for loads from 3 kg on.
  lifting: { hazards: ["heavy load"], owed: "each stage", guideNote: true },
  // IEC 61340-5-1.
  static: { hazards: ["static discharge"], owed: "each stage", guideNote: true },
  drilling: { hazards: ["moving parts", "eye injury"], owed: "each stage", guideNote: false },
  grinding: { hazards: ["moving parts", "eye injury"], owed: "each stage", guideNote: false },
  // The product standards of voltageLimits.ts.
  voltage: { hazards: ["electric shock"], owed: "each stage", guideNote: false },
  // IEC 62368-1 5.5.2.2.
  "stored charge": { hazards: ["stored charge"], owed: "each stage", guideNote: false },
  // ISO 13732-1.
  "hot part": { hazards: ["hot surface"], owed: "once", guideNote: false },
} as const satisfies Readonly<Record<string, Kind>>;

export type TriggerKind = keyof typeof KINDS;

export interface Trigger {
  readonly kind: TriggerKind;
  readonly step: Step;
  /** The words or the mark that tell of it; counts in the step's piece. */
  readonly span: Span;
  /** What the step does, as the end of a sentence: `drills ("Drill both holes")`. */
  readonly evidence: string;
  /** Parts triggers of a kind that are owed once each: the boards of soldering. */
  readonly of?: string;
}

export function hazardsOf(kind: TriggerKind): readonly Hazard[] {
  return KINDS[kind].hazards;
}

export function isOwedOnce(kind: TriggerKind): boolean {
  return KINDS[kind].owed === "once";
}

export function guideNoteCovers(kind: TriggerKind): boolean {
  return KINDS[kind].guideNote;
}

/** The kind that an act told in a step is of, and what the step then does. */
export const ACT_KINDS: Readonly<Partial<Record<Act, { kind: TriggerKind; does: string }>>> = {
  drill: { kind: "drilling", does: "drills" },
  grind: { kind: "grinding", does: "grinds" },
  saw: { kind: "sawing", does: "saws" },
  "cut leads": { kind: "cutting", does: "cuts leads" },
  "cut wire": { kind: "cutting", does: "cuts wire" },
  "work sheet metal": { kind: "sheet metal", does: "works sheet metal" },
  "load a spring": { kind: "spring", does: "loads or releases a spring" },
  solder: { kind: "soldering", does: "solders" },
  "burn off enamel": { kind: "burning enamel", does: "burns off enamel" },
  heat: { kind: "heating", does: "heats" },
  "use a solvent": { kind: "solvent", does: "uses a solvent" },
  lift: { kind: "lifting", does: "lifts a heavy part" },
  "handle mains": { kind: "voltage", does: "handles mains" },
};
