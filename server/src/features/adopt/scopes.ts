/** Stretches whose parts an author may have marked at a place: the step or block there, or a whole stage. */
import type { GuideState } from "../../model/guideState.ts";
import type { HeadingFact, StepFact, TextFact } from "../../syntax/facts.ts";
import { contains, shift } from "../../text/span.ts";
import { stepAt } from "../actions/stepAt.ts";
import { pieceAt } from "../pieceAt.ts";
import type { Scope } from "./candidates.ts";

export interface NamedScope extends Scope {
  readonly name: string;
}

/** On a stage's heading the stage too. */
export function* scopesAt(guide: GuideState, uri: string, offset: number): Iterable<NamedScope> {
  const here = blockAt(guide, uri, offset);
  if (here) yield here;
  const index = guide.stages.findIndex(({ heading }) => {
    if (heading?.piece.page.uri !== uri) return false;
    return contains(shift(heading.fact.span, heading.piece.start), offset);
  });
  if (index < 0) return;
  const next = guide.stages.slice(index + 1).find(({ heading }) => heading)?.heading;
  const end =
    next?.piece.page.uri === uri
      ? next.piece.start + next.fact.span.start
      : Number.MAX_SAFE_INTEGER;
  yield { uri, start: offset, end, name: "this stage" };
}

function blockAt(guide: GuideState, uri: string, offset: number): NamedScope | undefined {
  const piece = pieceAt(guide, uri, offset);
  if (!piece) return undefined;
  const step = stepAt(guide, uri, offset);
  if (step) {
    const next = step.piece.facts.facts.find(
      (fact): fact is StepFact | HeadingFact =>
        (fact.kind === "step" || fact.kind === "heading") && fact.span.start > step.fact.span.start,
    );
    const span = { start: step.fact.span.start, end: next?.span.start ?? step.piece.length };
    return { uri, ...shift(span, piece.start), name: "this step" };
  }
  const block = piece.facts.facts.find(
    (fact): fact is TextFact => fact.kind === "text" && contains(fact.span, offset - piece.start),
  );
  return block && { uri, ...shift(block.span, piece.start), name: "this line" };
}
