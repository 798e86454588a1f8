/** Parts of which a finding already says what is wrong, so that `missing-part` stays silent. */
import type { Part } from "../model/parts.ts";

export class ExplainedParts {
  /** How many findings explain a part. */
  readonly #counts = new Map<Part, number>();
  #turned = new Set<Part>();
  /** Another number whenever other parts are explained. */
  edition = 0;

  has(part: Part): boolean {
    return this.#counts.has(part);
  }

  /** One finding more, or one less, explains the part. */
  count(part: Part, by: 1 | -1): void {
    const before = this.#counts.get(part) ?? 0;
    const count = before + by;
    if (count > 0) this.#counts.set(part, count);
    else this.#counts.delete(part);
    if (before > 0 === count > 0) return;
    this.#turned.add(part);
    this.edition++;
  }

  /** Parts that may have come to be explained, or not to be, since this was last asked. */
  takeTurned(): ReadonlySet<Part> {
    const turned = this.#turned;
    this.#turned = new Set();
    return turned;
  }

  clear(): void {
    this.#counts.clear();
    this.#turned.clear();
    this.edition++;
  }
}
