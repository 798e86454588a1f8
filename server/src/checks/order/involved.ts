/**
 * Leaves out of a stage whatever is in height order with all the rest of it, so that looking for the
 * fewest moves costs what is out of order and not what the stage holds.
 */
import type { Guide, GuidePiece, ResolvedMark, Stage } from "../../model/guide.ts";
import { isTooLow } from "./fewestMoves.ts";
import { heightsIn, type LaneHeights } from "./pieceHeights.ts";
import { marksOfPiece, piecesOf, takesTurn } from "./turns.ts";
import type { Standing } from "./untangle.ts";

export interface Involved {
  readonly marks: readonly ResolvedMark[];
  /** The tallest part of what is left out. */
  readonly tallest: Standing | undefined;
}

/** One piece as a board's order sees it; `sum` is undefined where it must be looked at in detail. */
interface Run {
  readonly piece: GuidePiece;
  readonly sum: LaneHeights | undefined;
  readonly lowest: number;
  readonly tallest: number;
}

/** Marks whose parts may be out of order on the board; `top` (mm) is in place before the stage. */
export function involvedMarks(stage: Stage, lane: string, top: number, guide: Guide): Involved {
  const tolerance = guide.settings.heightTolerance;
  const runs = runsOf(stage, lane, tolerance);
  const lowestFrom = new Float64Array(runs.length + 1).fill(Number.POSITIVE_INFINITY);
  for (let i = runs.length - 1; i >= 0; i--) {
    lowestFrom[i] = Math.min(lowestFrom[i + 1]!, runs[i]!.lowest);
  }
  const marks: ResolvedMark[] = [];
  let before = top;
  let aside: LaneHeights | undefined;
  for (const [i, { piece, sum, lowest, tallest }] of runs.entries()) {
    const inOrder =
      sum &&
      !isTooLow(lowest, before, tolerance) &&
      !isTooLow(lowestFrom[i + 1]!, tallest, tolerance) &&
      takesTurn(sum.part, sum.resolved, guide);
    if (!inOrder) marks.push(...marksOfPiece(piece, stage));
    else if (!aside || tallest > aside.tallest) aside = sum;
    before = Math.max(before, tallest);
  }
  return { marks, tallest: aside };
}

function runsOf(stage: Stage, lane: string, tolerance: number): Run[] {
  const runs: Run[] = [];
  for (const piece of piecesOf(stage)) {
    const sums = heightsIn(piece, tolerance);
    const sum = sums?.find((one) => one.lane === lane);
    if (sum) runs.push({ piece, sum, lowest: sum.lowest, tallest: sum.tallest });
    else if (!sums) runs.push(detailed(piece, stage));
  }
  return runs;
}

/** A piece that has no sums: anything may stand in it. */
function detailed(piece: GuidePiece, stage: Stage): Run {
  let lowest = Number.POSITIVE_INFINITY;
  let tallest = Number.NEGATIVE_INFINITY;
  for (const { items } of marksOfPiece(piece, stage)) {
    for (const { supplies } of items) {
      for (const supply of supplies) {
        if (supply.kind !== "part" || !supply.height) continue;
        lowest = Math.min(lowest, supply.height.mm);
        tallest = Math.max(tallest, supply.height.mm);
      }
    }
  }
  return { piece, sum: undefined, lowest, tallest };
}
