/** Steps whose order matters for another reason than height: they do something to the same parts. */
import type { Guide, ResolvedMark, Step } from "../../model/guide.ts";
import type { Supply } from "../../model/parts.ts";
import { MOVING_ROLES } from "../../syntax/dialect.ts";

/**
 * Whether the moved step must stay on its side of the passed ones: both name a part (put aside,
 * made, matched, tried, removed, fitted twice), one has the other's socket, hardware is lent by one
 * of them, or a mark means "the rest" of something.
 */
export function dependOnEachOther(
  moved: readonly ResolvedMark[],
  passed: readonly ResolvedMark[],
  guide: Guide,
): boolean {
  if ([...moved, ...passed].some(takesRest)) return true;
  const bound = new Set<Supply>();
  for (const mark of moved) for (const supply of suppliesOf(mark, guide)) bound.add(supply);
  return passed.some((mark) => suppliesOf(mark, guide).some((supply) => bound.has(supply)));
}

/** All marks of a step and its sub-steps that do something to parts. */
export function marksOf(steps: readonly Step[]): ResolvedMark[] {
  const wanted = new Set(steps);
  const pieces = new Set(steps.map((step) => step.piece));
  return [...pieces].flatMap((piece) =>
    piece.marks.filter(
      ({ step, mark }) => step !== undefined && wanted.has(step) && MOVING_ROLES.has(mark.role),
    ),
  );
}

/** What the mark names, with the sockets and chips that belong to it. */
function suppliesOf(resolved: ResolvedMark, guide: Guide): Supply[] {
  return resolved.items.flatMap((item) =>
    item.supplies.flatMap((supply): Supply[] => {
      if (supply.kind === "hardware") return isLent(supply, guide) ? [supply] : [];
      const partners = [guide.socketOf(supply), guide.chipOf(supply)];
      return [supply, ...partners.filter((part) => part !== undefined)];
    }),
  );
}

/** Screws are used up in any order, but a loan must come before it is given back. */
function isLent(supply: Supply, guide: Guide): boolean {
  return guide.uses(supply).some((use) => use.role !== "fit");
}

function takesRest({ items }: ResolvedMark): boolean {
  return items.some(({ item }) => item.kind === "set" && item.which === "rest");
}
