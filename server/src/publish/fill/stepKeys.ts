/**
 * Keys that a step keeps while its text is the same, so that ticks survive a new edition of the page
 * wherever the step has moved to.
 */
import type { Step } from "../../model/guide.ts";

export class StepKeys {
  readonly #keys = new Map<Step, string>();
  readonly #used = new Map<string, number>();

  /** Steps with one text are told apart by their order; ask for them in document order. */
  of(step: Step): string {
    const known = this.#keys.get(step);
    if (known) return known;
    const { piece, fact } = step;
    const from = piece.start + fact.span.start;
    const text = piece.page.text.slice(from, piece.start + fact.span.end);
    const hash = fingerprint(text.replace(/^\s*\d+[.)]/, ""));
    const count = this.#used.get(hash) ?? 0;
    this.#used.set(hash, count + 1);
    const key = count === 0 ? hash : `${hash}.${count}`;
    this.#keys.set(step, key);
    return key;
  }
}

/** FNV-1a of the text's UTF-16 units in 32 bits, in base 36 (draft-eastlake-fnv). */
export function fingerprint(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) {
    hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  }
  return (hash >>> 0).toString(36);
}
