/**
 * The heights in one piece of the text, summed up once: a piece that is in order by itself is then
 * passed over with two comparisons, however many parts it fits.
 */
import type { GuidePiece, ResolvedMark } from "../../model/guide.ts";
import type { Part } from "../../model/parts.ts";
import { isTooLow } from "./fewestMoves.ts";
import { candidates, hasPlace, laneOf, putsInPlace } from "./turns.ts";

/** Parts of one board and side in a piece, whatever became of them elsewhere. */
export interface LaneHeights {
  readonly lane: string;
  readonly lowest: number;
  readonly tallest: number;
  readonly part: Part;
  readonly resolved: ResolvedMark;
}

const known = new WeakMap<GuidePiece, readonly LaneHeights[] | undefined>();
const NONE: readonly LaneHeights[] = [];

/**
 * Sums of a piece, one for each board and side; undefined when a part in it is too low beside one
 * before it, or when what its marks mean or where they belong can change while it stands.
 */
export function heightsIn(
  piece: GuidePiece,
  tolerance: number,
): readonly LaneHeights[] | undefined {
  if (piece.marks.length === 0) return NONE;
  if (known.has(piece)) return known.get(piece);
  const heights = sumUp(piece, tolerance);
  known.set(piece, heights);
  return heights;
}

function sumUp(piece: GuidePiece, tolerance: number): readonly LaneHeights[] | undefined {
  const sums = new Map<string, { -readonly [Key in keyof LaneHeights]: LaneHeights[Key] }>();
  const stage = piece.steps[0]?.stage;
  for (const resolved of piece.marks) {
    if (!putsInPlace(resolved)) continue;
    if (resolved.step?.stage !== stage) return undefined;
    const before = new Map([...sums].map(([lane, sum]) => [lane, sum.tallest]));
    for (const item of resolved.items) {
      if (item.item.kind === "set") return undefined;
      for (const part of candidates(item, tolerance)) {
        if (!hasPlace(part)) continue;
        const lane = laneOf(part);
        const height = part.height.mm;
        if (isTooLow(height, before.get(lane) ?? -Infinity, tolerance)) return undefined;
        const sum = sums.get(lane);
        if (!sum) {
          sums.set(lane, { lane, lowest: height, tallest: height, part, resolved });
        } else if (height > sum.tallest) {
          Object.assign(sum, { tallest: height, part, resolved });
        } else {
          sum.lowest = Math.min(sum.lowest, height);
        }
      }
    }
  }
  return [...sums.values()];
}
