/** What a revised parts list touches in a guide: each thing with its place, for the author to see to. */
import type { Fix } from "../../checks/check.ts";
import type { Span } from "../../text/span.ts";

/** In the order in which they are told, with what each is called. */
export const TOUCHED_KINDS = {
  step: "Steps to reword",
  table: "Rows of tables to change",
  set: "Sets and matches",
  order: "Order of the steps",
  clearance: "Clearance",
  figure: "Figures",
  rating: "Ratings, readings and fits",
  hazard: "Hazards",
  list: "The parts list itself",
  other: "Other findings that are new",
} as const;

export type TouchedKind = keyof typeof TOUCHED_KINDS;

/** A finding as far as it matters here. */
export interface RevisionFinding {
  readonly code: string;
  readonly uri: string;
  readonly span: Span;
  readonly message: string;
  fixes(): readonly Fix[];
}

export interface Touched {
  readonly kind: TouchedKind;
  readonly uri: string;
  readonly span: Span;
  /** The step that it stands in; undefined outside the steps. */
  readonly step: TouchedStep | undefined;
  readonly message: string;
  /** What a builder is told who has the old kit; undefined where he does nothing else than before. */
  readonly note: string | undefined;
  /** What the check of the guide finds here since the revision. */
  readonly findings: readonly RevisionFinding[];
  /** As the text stands when the guide was looked at. */
  fixes(): readonly Fix[];
}

export interface TouchedStep {
  readonly number: string;
  readonly stage: string | undefined;
  readonly stageNumber: number;
  /** Its whole source: an author who has changed it has seen to it. */
  readonly source: string;
  readonly span: Span;
}

/** What goes into the bags of one kit, by kind of part. */
export interface PackingChange {
  readonly name: string;
  /** Its name for a builder. */
  readonly look: string;
  /** Pieces, or a length; undefined where the list has none. */
  readonly before: string | undefined;
  readonly after: string | undefined;
}
