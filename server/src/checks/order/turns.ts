/** Which parts take their turn in the height order of a board, and where. */
import type {
  Guide,
  GuidePiece,
  GuideSettings,
  ResolvedItem,
  ResolvedMark,
  Stage,
  Use,
} from "../../model/guide.ts";
import type { Part, Supply } from "../../model/parts.ts";
import type { Role } from "../../syntax/dialect.ts";

/** A part at the mark that puts it in its holes. */
export interface Turn {
  readonly part: Part;
  /** Body height in mm. */
  readonly height: number;
  readonly resolved: ResolvedMark;
  readonly item: ResolvedItem;
}

type Ground = Pick<Guide, "uses"> & { readonly settings: GuideSettings };

const NOBODY: readonly Supply[] = [];
/** Roles after which a plain mark of the part adds nothing to the height order. */
const SETTLED: ReadonlySet<Role> = new Set<Role>(["fit", "place", "insert", "later"]);

/** Pieces with steps of the stage, in document order. */
export function* piecesOf(stage: Stage): Generator<GuidePiece, void, void> {
  let piece: GuidePiece | undefined;
  for (const step of stage.steps) {
    if (step.piece === piece) continue;
    piece = step.piece;
    yield piece;
  }
}

/** Marks of the stage that put parts in their holes, in document order. */
export function* marksInOrder(stage: Stage): Generator<ResolvedMark, void, void> {
  for (const piece of piecesOf(stage)) yield* marksOfPiece(piece, stage);
}

/** As `marksInOrder`, of one piece. */
export function* marksOfPiece(
  piece: GuidePiece,
  stage: Stage,
): Generator<ResolvedMark, void, void> {
  for (const resolved of piece.marks) {
    if (putsInPlace(resolved) && resolved.step?.stage === stage) yield resolved;
  }
}

/** Whether the mark says that parts go into their holes here. */
export function putsInPlace({ mark }: ResolvedMark): boolean {
  return mark.role === "fit" || mark.role === "place";
}

/**
 * Parts of the item that have a place in the order. Which part of a choice the builder takes is not
 * known: it counts only where the choice makes no difference, and then as one part.
 */
export function candidates(item: ResolvedItem, tolerance: number): readonly Supply[] {
  if (item.item.kind !== "choice") return item.supplies;
  const parts = item.supplies.filter((supply) => supply.kind === "part");
  const heights = parts.map((part) => part.height?.mm ?? Number.NaN);
  const tallest = Math.max(...heights);
  return tallest - Math.min(...heights) <= tolerance
    ? parts.slice(heights.indexOf(tallest), heights.indexOf(tallest) + 1)
    : NOBODY;
}

/** Whether the supply is a part of known height that stands on a board. */
export function hasPlace(supply: Supply): supply is Part & { readonly height: object } {
  return supply.kind === "part" && supply.height !== undefined && !supply.offBoard;
}

/** Whether the part takes its turn at this mark: it was neither put aside nor in place before. */
export function takesTurn(part: Part, resolved: ResolvedMark, guide: Ground): boolean {
  for (const use of guide.uses(part)) {
    if (use.resolved === resolved) return true;
    if (SETTLED.has(use.role)) return false;
  }
  return false;
}

/** The turns at one mark on one board and side, lowest first: a mark sets no order of its own. */
export function turnsAt(resolved: ResolvedMark, lane: string, guide: Ground): Turn[] {
  const turns: Turn[] = [];
  for (const item of resolved.items) {
    for (const part of candidates(item, guide.settings.heightTolerance)) {
      if (!hasPlace(part) || laneOf(part) !== lane || !takesTurn(part, resolved, guide)) continue;
      turns.push({ part, height: part.height.mm, resolved, item });
    }
  }
  return turns.sort((a, b) => a.height - b.height);
}

/** Each board, and each side of it that the list tells apart, has an order of its own. */
export function laneOf(part: Part): string {
  return part.side === "bottom" ? `${part.board}\nbottom` : part.board;
}

/** The use by which the turn was taken. */
export function useOf(turn: Pick<Turn, "part" | "resolved">, guide: Ground): Use {
  return guide.uses(turn.part).find((use) => use.resolved === turn.resolved)!;
}
