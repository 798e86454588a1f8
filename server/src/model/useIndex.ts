/** Who uses which part, kept current as pieces come and go. */
import { accountsFor, isMissing } from "./accounting.ts";
import type { Part, Supply } from "./parts.ts";
import type { PieceNode, UseNode } from "./pieceNode.ts";

export class UseIndex {
  readonly #uses: UseNode[][] = [];
  readonly #parts: readonly Part[];
  /** By the part's id: 1 where no mark accounts for it. */
  readonly #isMissing: Uint8Array;
  #missing: readonly Part[] | undefined;
  /** Supplies whose uses changed since `takeChanged`. */
  #changed = new Set<Supply>();

  constructor(parts: readonly Part[]) {
    this.#parts = parts;
    this.#isMissing = new Uint8Array(parts.length);
    for (const part of parts) if (isMissing(part, [])) this.#isMissing[part.id] = 1;
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
    this.#missing ??= this.#parts.filter(({ id }) => this.#isMissing[id] === 1);
    return this.#missing;
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
    const missing = isMissing(part, this.of(part)) ? 1 : 0;
    if (missing === this.#isMissing[part.id]) return;
    this.#isMissing[part.id] = missing;
    this.#missing = undefined;
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
