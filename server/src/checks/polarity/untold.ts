/** Which steps of a stage fit polarised parts without a word on their orientation. */
import type { Guide, Remark, Stage, Step } from "../../model/guide.ts";
import type { Language } from "../../text/language.ts";
import type { PolarKind } from "../../trade/polarity/polarParts.ts";
import { type PolarStep, polarSteps, tells } from "./polarSteps.ts";

/**
 * Those steps, each with the parts that nothing is said of. A step is told by its own words, by the
 * stage's text or a hazard note before it, or by an earlier step of the stage on the same kind of
 * part.
 */
export function untoldIn(stage: Stage, language: Language): PolarStep[] {
  const untold: { readonly index: number; readonly polar: PolarStep }[] = [];
  const told = new Set<PolarKind>();
  for (const [index, polar] of polarStepsOf(stage, language)) {
    const parts = polar.parts.filter(({ kind }) => !told.has(kind));
    if (polar.tells) for (const { kind } of polar.parts) told.add(kind);
    else if (parts.length > 0) untold.push({ index, polar: { ...polar, parts } });
  }
  if (untold.length === 0) return [];
  const remark = stage.remarks.find((one) => remarkTells(one, language));
  const from = remark ? remark.stepsBefore : Number.POSITIVE_INFINITY;
  return untold.filter(({ index }) => index < from).map(({ polar }) => polar);
}

/** Whether a hazard note before the first stage speaks of it for the whole guide. */
export function guideTells({ stages }: Guide, language: Language): boolean {
  for (const stage of stages) {
    if (stage.steps.length > 0) return false;
    const notes = stage.remarks.filter(({ fact }) => fact.kind === "note");
    if (notes.some((note) => remarkTells(note, language))) return true;
  }
  return false;
}

/** Steps with polarised parts, and where they stand in the stage. */
function* polarStepsOf(stage: Stage, language: Language): Generator<[number, PolarStep]> {
  let piece: Step["piece"] | undefined;
  let bySteps = new Map<Step, PolarStep>();
  for (const [index, step] of stage.steps.entries()) {
    if (step.piece !== piece) {
      piece = step.piece;
      bySteps = new Map(polarSteps(piece, language).map((polar) => [polar.step, polar]));
    }
    const polar = bySteps.get(step);
    if (polar) yield [index, polar];
  }
}

function remarkTells({ piece, fact }: Remark, language: Language): boolean {
  return piece.prose.some(
    (block) => (block.fact === fact || block.note === fact) && tells(block, language),
  );
}
