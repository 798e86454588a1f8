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

/**
 * FNV-1a in 32 bits, in base 36 (draft-eastlake-fnv): of the text's UTF-16 units, and of the bytes
 * behind it.
 */
export function fingerprint(text: string, bytes: Uint8Array = NOTHING): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = mixed(hash, text.charCodeAt(i));
  // By index: a picture has hundreds of thousands, and iterating takes six times as long.
  for (let i = 0; i < bytes.length; i++) hash = mixed(hash, bytes[i]!);
  return (hash >>> 0).toString(36);
}

const NOTHING = new Uint8Array();

function mixed(hash: number, unit: number): number {
  return Math.imul(hash ^ unit, 0x01000193);
}
