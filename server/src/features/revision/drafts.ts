/** What is touched, before places are counted and findings are laid to it. */
import type { Fix } from "../../checks/check.ts";
import { placeOf } from "../../checks/verdict.ts";
import type { Anchor, Step } from "../../model/guide.ts";
import { rowAt, toldStep } from "./places.ts";
import type { RevisionFinding, Touched, TouchedKind } from "./touched.ts";

export interface Draft extends Pick<Touched, "message" | "note"> {
  readonly kind: TouchedKind;
  readonly at: Anchor;
  readonly step: Step | undefined;
  /** Words by which findings speak of the same thing. */
  readonly names: readonly string[];
}

export function touchedBy(draft: Draft, findings: readonly RevisionFinding[]): Touched {
  const { kind, at, step, message, note } = draft;
  return {
    kind: kind === "step" && "piece" in at && rowAt(at.piece, at.span.start) ? "table" : kind,
    ...placeOf(at),
    step: step && toldStep(step),
    message,
    note,
    findings,
    fixes: () => findings.flatMap(fixesOf),
  };
}

/** Of one that is gone the guide did not mean its neighbours. */
const GUESSES: ReadonlySet<string> = new Set(["unknown-part", "doubtful-mention"]);

/** The fixes of a finding that is new, but for guesses at what a name means. */
export function fixesOf(finding: RevisionFinding): readonly Fix[] {
  return GUESSES.has(finding.code) ? [] : finding.fixes();
}
