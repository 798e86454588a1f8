/**
 * A quick look over a stage: which boards are out of height order, and the tallest part in place
 * at its end. It runs at each keystroke in the stage, so it makes no objects and asks for the
 * history of a part only where the part is taller than all before it, or too low.
 */
import type { Guide, ResolvedMark, Stage } from "../../model/guide.ts";
import type { Part } from "../../model/parts.ts";
import type { BoardTops } from "../check.ts";
import { isTooLow } from "./fewestMoves.ts";
import { candidates, hasPlace, laneOf, marksInOrder, takesTurn, useOf } from "./turns.ts";

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
  const tolerance = guide.settings.heightTolerance;
  const lanes = new Lanes(before);
  for (const resolved of marksInOrder(stage)) {
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
  return lanes.result(before, guide);
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
    const name = laneOf(part);
    this.#lastBoard = part.board;
    this.#lastSide = part.side;
    this.#last = this.#byName.get(name) ?? this.#open(name, Number.NEGATIVE_INFINITY);
    return this.#last;
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
