/**
 * A quick look over a stage: which boards are out of height order, and the tallest part in place
 * at its end. It runs at each keystroke in the stage, so pieces in order are passed over as a whole, and
 * the history of a part is asked for only where it is taller than all before it, or too low.
 */
import type { Guide, ResolvedMark, Stage } from "../../model/guide.ts";
import type { Part } from "../../model/parts.ts";
import type { BoardTops } from "../check.ts";
import { isTooLow } from "./fewestMoves.ts";
import { heightsIn, type LaneHeights } from "./pieceHeights.ts";
import { candidates, hasPlace, laneOf, marksOfPiece, piecesOf, takesTurn, useOf } from "./turns.ts";

export interface Scan {
  /** Boards and sides with a part out of order. */
  readonly tangled: readonly string[];
  /** The tallest part in place at the end, where no part is out of order. */
  readonly after: BoardTops;
}

interface Lane {
  readonly name: string;
  /** Tallest in place before the mark that is looked at, in mm. */
  tallest: number;
  /** Tallest including that mark. */
  next: number;
  part: Part | undefined;
  resolved: ResolvedMark | undefined;
  tangled: boolean;
}

export function scanStage(stage: Stage, before: BoardTops, guide: Guide): Scan {
  const lanes = new Lanes(before);
  for (const piece of piecesOf(stage)) {
    const heights = heightsIn(piece, guide.settings.heightTolerance);
    if (heights && passOver(heights, lanes, guide)) lanes.endMark();
    else for (const resolved of marksOfPiece(piece, stage)) scanMark(resolved, lanes, guide);
  }
  return lanes.result(before, guide);
}

/** Takes a piece as a whole where all its parts are high enough. Gives whether that was so. */
function passOver(heights: readonly LaneHeights[], lanes: Lanes, guide: Guide): boolean {
  const tolerance = guide.settings.heightTolerance;
  for (const { lane, lowest, tallest, part, resolved } of heights) {
    const { tallest: top } = lanes.named(lane);
    if (isTooLow(lowest, top, tolerance)) return false;
    if (tallest > top && !takesTurn(part, resolved, guide)) return false;
  }
  for (const { lane, tallest, part, resolved } of heights) {
    const there = lanes.named(lane);
    if (tallest > there.tallest) raise(there, tallest, part, resolved);
  }
  return true;
}

function scanMark(resolved: ResolvedMark, lanes: Lanes, guide: Guide): void {
  const tolerance = guide.settings.heightTolerance;
  for (const item of resolved.items) {
    for (const part of candidates(item, tolerance)) {
      if (!hasPlace(part)) continue;
      const lane = lanes.of(part);
      const height = part.height.mm;
      if (height > lane.next) {
        if (takesTurn(part, resolved, guide)) raise(lane, height, part, resolved);
      } else if (!lane.tangled && isTooLow(height, lane.tallest, tolerance)) {
        lane.tangled = takesTurn(part, resolved, guide);
      }
    }
  }
  lanes.endMark();
}

function raise(lane: Lane, height: number, part: Part, resolved: ResolvedMark): void {
  lane.next = height;
  lane.part = part;
  lane.resolved = resolved;
}

class Lanes {
  readonly #byName = new Map<string, Lane>();
  readonly #all: Lane[] = [];
  #lastBoard: string | undefined;
  #lastSide: string | undefined;
  #last: Lane | undefined;

  constructor(before: BoardTops) {
    for (const [name, use] of before) {
      if (use.supply.kind === "part" && use.supply.height) this.#open(name, use.supply.height.mm);
    }
  }

  of(part: Part): Lane {
    if (this.#last && part.board === this.#lastBoard && part.side === this.#lastSide) {
      return this.#last;
    }
    this.#lastBoard = part.board;
    this.#lastSide = part.side;
    this.#last = this.named(laneOf(part));
    return this.#last;
  }

  named(name: string): Lane {
    return this.#byName.get(name) ?? this.#open(name, Number.NEGATIVE_INFINITY);
  }

  endMark(): void {
    for (const lane of this.#all) lane.tallest = lane.next;
  }

  result(before: BoardTops, guide: Guide): Scan {
    const raised = this.#all.filter((lane) => lane.part && !lane.tangled);
    const tangled = this.#all.filter((lane) => lane.tangled).map((lane) => lane.name);
    if (raised.length === 0) return { tangled, after: before };
    const after = new Map(before);
    for (const { name, part, resolved } of raised) {
      after.set(name, useOf({ part: part!, resolved: resolved! }, guide));
    }
    return { tangled, after };
  }

  #open(name: string, tallest: number): Lane {
    const lane: Lane = {
      name,
      tallest,
      next: tallest,
      part: undefined,
      resolved: undefined,
      tangled: false,
    };
    this.#byName.set(name, lane);
    this.#all.push(lane);
    return lane;
  }
}
