/**
 * Steps that are read together: a step with its sub-steps, and with the rows of a table below it.
 * What one of them says holds for all.
 */
import type { GuidePiece, Step } from "../model/guide.ts";
import type { TextBlock } from "../model/prose.ts";

/** The steps read together, by each of them. */
type Families = ReadonlyMap<Step, readonly Step[]>;

const known = new WeakMap<GuidePiece, Families>();

/** The steps that are read together with this one, itself included, in order. */
export function familyOf(step: Step): readonly Step[] {
  const { piece } = step;
  const families = known.get(piece) ?? familiesIn(piece);
  known.set(piece, families);
  return families.get(step) ?? [step];
}

/** The blocks of text of the step's family. */
export function familyProse(step: Step): readonly TextBlock[] {
  return familyOf(step).flatMap((one) => [...one.prose]);
}

function familiesIn(piece: GuidePiece): Families {
  const rows = new Set(
    piece.facts.facts.flatMap((fact) => (fact.kind === "row" ? [fact.span.start] : [])),
  );
  const families = new Map<Step, Step[]>();
  let family: Step[] = [];
  for (const step of piece.steps) {
    const { depth, span } = step.fact;
    const isPart = depth > 0 || rows.has(span.start);
    if (!isPart) family = [];
    family.push(step);
    families.set(step, family);
  }
  return families;
}
