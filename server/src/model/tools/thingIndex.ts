/** Which tools and consumables a guide lists and names, kept current piece by piece. */
import type { Language } from "../../text/language.ts";
import type { Thing } from "../../trade/tools/tool.ts";
import type { PieceNode } from "../pieceNode.ts";
import { type Naming, namingsIn } from "./namedThings.ts";

export class ThingIndex {
  readonly #language: Language | undefined;
  /** Pieces not read yet: reading waits until somebody asks. */
  readonly #waiting = new Set<PieceNode>();
  readonly #pieces = new Set<PieceNode>();
  /** How many marks list a thing. */
  readonly #marked = new Map<Thing, number>();
  /** Pieces whose words name it. */
  readonly #named = new Map<Thing, Set<PieceNode>>();

  constructor(language: Language | undefined) {
    this.#language = language;
  }

  add(piece: PieceNode): void {
    this.#waiting.add(piece);
  }

  remove(piece: PieceNode): void {
    if (this.#waiting.delete(piece) || !this.#pieces.delete(piece)) return;
    this.#count(piece, -1);
  }

  /** Whether a mark lists the thing. */
  isMarked(thing: Thing): boolean {
    this.#read();
    return this.#marked.has(thing);
  }

  /** Things that words name. */
  named(): Iterable<Thing> {
    this.#read();
    return this.#named.keys();
  }

  /** The first place where words name the thing. */
  first(thing: Thing): Naming | undefined {
    this.#read();
    let first: PieceNode | undefined;
    for (const piece of this.#named.get(thing) ?? []) {
      if (!first || piece.order < first.order) first = piece;
    }
    return (
      first && this.#namings(first).find(({ by, things }) => by === "words" && things[0] === thing)
    );
  }

  /** All namings in document order. */
  all(): Naming[] {
    this.#read();
    const pieces = [...this.#pieces].sort((a, b) => a.order - b.order);
    return pieces.flatMap((piece) =>
      [...this.#namings(piece)].sort((a, b) => a.span.start - b.span.start),
    );
  }

  #read(): void {
    for (const piece of this.#waiting) {
      if (this.#namings(piece).length === 0) continue;
      this.#pieces.add(piece);
      this.#count(piece, 1);
    }
    this.#waiting.clear();
  }

  #namings(piece: PieceNode): readonly Naming[] {
    return namingsIn(piece, this.#language);
  }

  #count(piece: PieceNode, by: 1 | -1): void {
    for (const { by: how, things } of this.#namings(piece)) {
      for (const thing of things) {
        if (how === "words") this.#name(thing, piece, by);
        else this.#mark(thing, by);
      }
    }
  }

  #mark(thing: Thing, by: 1 | -1): void {
    const count = (this.#marked.get(thing) ?? 0) + by;
    if (count > 0) this.#marked.set(thing, count);
    else this.#marked.delete(thing);
  }

  #name(thing: Thing, piece: PieceNode, by: 1 | -1): void {
    const pieces = this.#named.get(thing) ?? new Set<PieceNode>();
    if (by > 0) pieces.add(piece);
    else pieces.delete(piece);
    if (pieces.size > 0) this.#named.set(thing, pieces);
    else this.#named.delete(thing);
  }
}
