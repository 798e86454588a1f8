/** A set of a kit's parts, cheap for lists of many thousands. */
import type { Part } from "../../model/parts.ts";

export class PartSet {
  readonly #parts: readonly Part[];
  readonly #has: Uint8Array;

  /** `all` are the parts of the kit, by their ids. */
  constructor(all: readonly Part[]) {
    this.#parts = all;
    this.#has = new Uint8Array(all.length);
  }

  add(part: Part): void {
    this.#has[part.id] = 1;
  }

  delete(part: Part): void {
    this.#has[part.id] = 0;
  }

  has(part: Part): boolean {
    return this.#has[part.id] === 1;
  }

  /** Leaves those that pass. */
  keep(passes: (part: Part) => boolean): void {
    for (const part of this.#parts) if (this.has(part) && !passes(part)) this.delete(part);
  }
}
