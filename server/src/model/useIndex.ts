/** Who uses which part, kept current as pieces come and go. */
import { accountsFor, isMissing } from "./accounting.ts";
import type { Part, Supply } from "./parts.ts";
import type { PieceNode, UseNode } from "./pieceNode.ts";

export class UseIndex {
  readonly #uses: UseNode[][] = [];
  readonly #missing = new Set<Part>();
  #missingSorted: readonly Part[] | undefined;
  /** Supplies whose uses changed since `takeChanged`. */
  #changed = new Set<Supply>();

  constructor(parts: readonly Part[]) {
    for (const part of parts) if (isMissing(part, [])) this.#missing.add(part);
  }

  add(uses: readonly UseNode[]): void {
    for (const use of uses) {
      const { id } = use.supply;
      const list = this.#uses[id];
      if (list) list.push(use);
      else this.#uses[id] = [use];
      this.#changed.add(use.supply);
    }
  }

  remove(uses: readonly UseNode[]): void {
    for (const use of uses) {
      const list = this.#uses[use.supply.id];
      const index = list?.indexOf(use) ?? -1;
      if (index >= 0) list!.splice(index, 1);
      this.#changed.add(use.supply);
    }
  }

  of(supply: Supply): readonly UseNode[] {
    return this.#uses[supply.id] ?? [];
  }

  /** Whether a step before `use` in the document settles where the part is. */
  isTaken(part: Part, before: { piece: PieceNode; mark: unknown }): boolean {
    return this.of(part).some((use) => accountsFor(use) && comesBefore(use, before));
  }

  /** Parts to be fitted that no mark accounts for, in the order of the lists. */
  get missing(): readonly Part[] {
    this.#missingSorted ??= [...this.#missing].sort((a, b) => a.id - b.id);
    return this.#missingSorted;
  }

  /** Supplies whose uses changed; their uses are in document order afterwards. */
  takeChanged(): ReadonlySet<Supply> {
    const changed = this.#changed;
    this.#changed = new Set();
    for (const supply of changed) {
      const uses = this.#uses[supply.id];
      if (uses && uses.length > 1) uses.sort(compareUses);
      if (supply.kind === "part") this.#keepMissing(supply);
    }
    return changed;
  }

  #keepMissing(part: Part): void {
    const missing = isMissing(part, this.of(part));
    if (missing === this.#missing.has(part)) return;
    if (missing) this.#missing.add(part);
    else this.#missing.delete(part);
    this.#missingSorted = undefined;
  }
}

function compareUses(a: UseNode, b: UseNode): number {
  return a.step.piece.order - b.step.piece.order || a.index - b.index;
}

function comesBefore(use: UseNode, mark: { piece: PieceNode; mark: unknown }): boolean {
  const { piece } = use.step;
  if (piece !== mark.piece) return piece.order < mark.piece.order;
  const marks = piece.marks as readonly unknown[];
  return marks.indexOf(use.resolved) < marks.indexOf(mark);
}
