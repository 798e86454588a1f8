/** Finds the parts of one board that are out of height order, and what each of them stands against. */
import type { Guide, ResolvedItem, ResolvedMark, Use } from "../../model/guide.ts";
import type { Part } from "../../model/parts.ts";
import { fewestMoves, isTooLow } from "./fewestMoves.ts";
import { type Turn, turnsAt } from "./turns.ts";

/** A part in place, and the mark that put it there. */
export type Standing = Pick<Turn, "part" | "resolved">;

/** Parts of one mark item that would have to move. */
export interface Misplaced {
  readonly resolved: ResolvedMark;
  readonly item: ResolvedItem;
  /** Lowest first. */
  readonly turns: readonly Turn[];
  /** `late`: a taller part was in place before it. `early`: lower parts follow it. */
  readonly kind: "late" | "early";
  /** The tallest part before it, or the lowest that follows. */
  readonly against: Standing;
}

export interface Order {
  readonly misplaced: readonly Misplaced[];
  /** The tallest part in place at the end, of those that are in order. */
  readonly tallest: Standing | undefined;
}

/**
 * The order of one board and side over marks in the sequence given. `top` is the use that put the
 * tallest part in place before them.
 */
export function untangle(
  marks: Iterable<ResolvedMark>,
  lane: string,
  top: Use | undefined,
  guide: Guide,
): Order {
  const tolerance = guide.settings.heightTolerance;
  const turns: Turn[] = [];
  for (const resolved of marks) turns.push(...turnsAt(resolved, lane, guide));
  const before = top && standing(top);
  const moves = fewestMoves(unitsOf(turns), before ? heightOf(before) : -Infinity, tolerance);
  const units = new Set(moves);
  let unit = -1;
  const moved = turns.map((turn, i) => {
    if (!i || !sameUnit(turns[i - 1]!, turn)) unit++;
    return units.has(unit);
  });
  const tallestBefore = runningTallest(turns, moved, before);
  return {
    misplaced: gather(turns, moved, tallestBefore, tolerance),
    tallest: tallestBefore[turns.length],
  };
}

function standing(use: Use): Standing | undefined {
  return use.supply.kind === "part" ? { part: use.supply, resolved: use.resolved } : undefined;
}

function heightOf({ part }: { readonly part: Part }): number {
  return part.height!.mm;
}

function sameUnit(a: Turn, b: Turn): boolean {
  return a.resolved === b.resolved && a.height === b.height;
}

/** Turns of one height at one mark count as one. */
function unitsOf(turns: readonly Turn[]): { height: number; weight: number }[] {
  const units: { height: number; weight: number }[] = [];
  for (const [i, turn] of turns.entries()) {
    if (i > 0 && sameUnit(turns[i - 1]!, turn)) units.at(-1)!.weight++;
    else units.push({ height: turn.height, weight: 1 });
  }
  return units;
}

/** For each turn, and for the end, the tallest part that is in place before it and in order. */
function runningTallest(
  turns: readonly Turn[],
  moved: readonly boolean[],
  before: Standing | undefined,
): (Standing | undefined)[] {
  const tallest: (Standing | undefined)[] = [before];
  for (const [i, turn] of turns.entries()) {
    const last = tallest[i];
    const rises = !moved[i] && (!last || turn.height > heightOf(last));
    tallest.push(rises ? turn : last);
  }
  return tallest;
}

function gather(
  turns: readonly Turn[],
  moved: readonly boolean[],
  tallestBefore: readonly (Standing | undefined)[],
  tolerance: number,
): Misplaced[] {
  const lowestAfter = runningLowest(turns, moved);
  const found = new Map<ResolvedItem, Misplaced & { readonly turns: Turn[] }>();
  for (const [i, turn] of turns.entries()) {
    if (!moved[i]) continue;
    const known = found.get(turn.item);
    if (known) {
      known.turns.push(turn);
      continue;
    }
    const taller = tallestBefore[i];
    const late = taller !== undefined && isTooLow(turn.height, heightOf(taller), tolerance);
    const against = late ? taller : lowestAfter[i]!;
    const { resolved, item } = turn;
    found.set(item, { resolved, item, turns: [turn], kind: late ? "late" : "early", against });
  }
  return [...found.values()];
}

/** For each turn the lowest part that follows it and is in order. */
function runningLowest(
  turns: readonly Turn[],
  moved: readonly boolean[],
): (Standing | undefined)[] {
  const lowest: (Standing | undefined)[] = [];
  let last: Turn | undefined;
  for (let i = turns.length - 1; i >= 0; i--) {
    lowest[i] = last;
    if (!moved[i] && (!last || turns[i]!.height <= last.height)) last = turns[i];
  }
  return lowest;
}
