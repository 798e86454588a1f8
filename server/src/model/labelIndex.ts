/** The step labels of a guide and the references to them, kept current as pieces come and go. */
import { inOrder, type Label, type PieceNode } from "./pieceNode.ts";

export class LabelIndex {
  /** Pieces with labels or references. */
  readonly #pieces = new Set<PieceNode>();
  #labels: ReadonlyMap<string, readonly Label[]> | undefined;

  add(piece: PieceNode): void {
    if (piece.labels.length + piece.references.length === 0) return;
    this.#pieces.add(piece);
    this.#labels = undefined;
  }

  remove(piece: PieceNode): void {
    if (this.#pieces.delete(piece)) this.#labels = undefined;
  }

  /** In document order. */
  named(name: string): readonly Label[] {
    return this.#all().get(name) ?? [];
  }

  names(): Iterable<string> {
    return this.#all().keys();
  }

  *references(): Iterable<Label> {
    for (const piece of inOrder(this.#pieces)) yield* piece.references;
  }

  #all(): ReadonlyMap<string, readonly Label[]> {
    if (this.#labels) return this.#labels;
    const labels = new Map<string, Label[]>();
    for (const piece of inOrder(this.#pieces)) {
      for (const label of piece.labels) {
        labels.set(label.name, [...(labels.get(label.name) ?? []), label]);
      }
    }
    this.#labels = labels;
    return labels;
  }
}
