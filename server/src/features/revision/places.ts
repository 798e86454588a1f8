/** Where things stand in a guide: the step, the row of a table. */
import type { GuidePiece, ResolvedMark, Step } from "../../model/guide.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { RowFact } from "../../syntax/facts.ts";
import type { Touched, TouchedStep } from "./touched.ts";

/** The step that holds the offset of the piece. */
export function stepAt(piece: GuidePiece, offset: number): Step | undefined {
  return piece.steps.findLast(({ fact }) => fact.span.start <= offset);
}

/** What is told of a step; its span counts in the page. */
export function toldStep(step: Step): TouchedStep {
  const { piece, fact, stage, number } = step;
  const next = piece.steps[step.index + 1]?.fact.span.start ?? piece.length;
  const [start, end] = [piece.start + fact.span.start, piece.start + next];
  return {
    number,
    stage: stage.heading?.fact.title,
    stageNumber: stage.number,
    source: piece.page.text.slice(start, end),
    span: { start, end },
  };
}

/** The marks of a guide by where they stand, which is the same under both lists. */
export function marksByPlace(guide: GuideState): ReadonlyMap<string, ResolvedMark> {
  const marks = guide.pieces.flatMap((piece) => piece.marks);
  return new Map(
    marks.map((one) => [`${one.piece.page.uri} ${one.piece.start + one.mark.span.start}`, one]),
  );
}

/** The row of a table that holds the place. */
export function rowAt({ facts }: GuidePiece, offset: number): RowFact | undefined {
  for (const fact of facts.facts) {
    if (fact.kind === "row" && fact.span.start <= offset && offset < fact.span.end) return fact;
  }
  return undefined;
}

/** Whether the finding stands in what is touched, or in the same step. */
export function holds(touched: Pick<Touched, "uri" | "span" | "step">, uri: string, at: number) {
  if (touched.uri !== uri) return false;
  const { start, end } = touched.step?.span ?? touched.span;
  return start <= at && at <= end;
}
