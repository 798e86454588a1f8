/** Sets whose meaning depends on other marks: `rest of`, and those that take their stage's board. */
import type { Kit } from "./kit.ts";
import type { Supply } from "./parts.ts";
import { inOrder, type MarkNode, type PieceNode } from "./pieceNode.ts";
import { resolveSet } from "./resolve.ts";
import { StageNode } from "./stageNode.ts";
import type { UseIndex } from "./useIndex.ts";

export class DependentSets {
  readonly #kit: Kit;
  readonly #index: UseIndex;
  readonly #pieces = new Set<PieceNode>();

  constructor(kit: Kit, index: UseIndex) {
    this.#kit = kit;
    this.#index = index;
  }

  add(piece: PieceNode): void {
    if (piece.dynamic.length > 0) this.#pieces.add(piece);
  }

  remove(piece: PieceNode): void {
    this.#pieces.delete(piece);
  }

  /** Looks them up in document order. Gives the pieces where one changed its meaning. */
  settle(): ReadonlySet<PieceNode> {
    const changed = new Set<PieceNode>();
    for (const node of inOrder(this.#pieces)) {
      for (const { mark, place } of node.dynamic) {
        const before = mark.items[place]!;
        if (before.item.kind !== "set") continue;
        const board = this.#boardFor(mark);
        const after = resolveSet(before.item, this.#kit, board, (part) =>
          this.#index.isTaken(part, mark),
        );
        if (sameMembers(before.supplies, after.supplies)) continue;
        mark.items[place] = after;
        this.#index.remove(node.uses);
        node.uses = node.listUses();
        this.#index.add(node.uses);
        changed.add(node);
      }
    }
    return changed;
  }

  /** The board of a set: what its stage says, else the board of the stage's other marks. */
  #boardFor(mark: MarkNode): string | undefined {
    const stage = mark.step?.stage;
    if (!(stage instanceof StageNode) || this.#kit.boards.length < 2) return undefined;
    if (stage.board !== undefined) return stage.board;
    // Marks of sets say nothing: they look for their board themselves.
    for (const { resolved, supply, item } of stage.uses()) {
      if (resolved !== mark && supply.kind === "part" && item.kind !== "set") return supply.board;
    }
    return undefined;
  }
}

function sameMembers(a: readonly Supply[], b: readonly Supply[]): boolean {
  return a.length === b.length && a.every((one, index) => one === b[index]);
}
