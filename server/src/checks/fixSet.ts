/** Fixes that are applied together: none touches a place that another one edits. */
import type { TextEdit } from "../text/span.ts";
import type { Fix } from "./check.ts";

export class FixSet {
  readonly #edits = new Map<string, TextEdit[]>();
  #size = 0;

  /** How many fixes were taken. */
  get size(): number {
    return this.#size;
  }

  /** Edits by file. */
  get edits(): ReadonlyMap<string, readonly TextEdit[]> {
    return this.#edits;
  }

  /** Takes the fix unless it gets in the way of one that was taken before. */
  take(fix: Fix): boolean {
    if (!fix.edits.every(({ uri, edits }) => this.#isFree(uri, edits))) return false;
    for (const { uri, edits } of fix.edits) {
      this.#edits.set(uri, [...(this.#edits.get(uri) ?? []), ...edits]);
    }
    this.#size++;
    return true;
  }

  #isFree(uri: string, edits: readonly TextEdit[]): boolean {
    const others = this.#edits.get(uri) ?? [];
    return edits.every(({ span }) =>
      others.every((other) => span.end < other.span.start || span.start > other.span.end),
    );
  }
}
