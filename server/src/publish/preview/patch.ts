/** What a preview must change to show another row of blocks than it shows. */
import type { PreviewBlock } from "./preview.ts";

export interface SentBlock {
  /** The same for as long as the block stays what it is. */
  readonly id: number;
  readonly place: PreviewBlock["place"];
  readonly html: string;
}

/** Puts blocks in the place of `remove` others. */
export interface Splice {
  /** Index at the time when the splices before it have been done. */
  readonly at: number;
  readonly remove: number;
  readonly add: readonly SentBlock[];
}

export interface Shown {
  readonly id: number;
  /** Another object of the same content where the block's source has come to stand elsewhere. */
  block: PreviewBlock;
}

/** The row of blocks that a preview shows. */
export class ShownBlocks {
  #shown: readonly Shown[] = [];
  #lastId = 0;

  get all(): readonly Shown[] {
    return this.#shown;
  }

  /** Takes the blocks as shown and tells what changes by that; what is the same keeps its id. */
  show(blocks: readonly PreviewBlock[]): Splice[] {
    const before = this.#shown;
    const splices: Splice[] = [];
    const start = commonStart(before, blocks);
    const end = commonEnd(before, blocks, start);
    for (let i = 0; i < start; i++) kept(before[i]!, blocks[i]!);
    const shown = before.slice(0, start);
    const places = placesOf(before, start, before.length - end);
    let next = start;
    let added: Shown[] = [];
    const close = (until: number) => {
      if (added.length > 0 || until > next) {
        const add = added.map(({ id, block: { place, html } }) => ({ id, place, html }));
        splices.push({ at: shown.length - added.length, remove: until - next, add });
      }
      added = [];
      next = until;
    };
    for (let i = start; i < blocks.length - end; i++) {
      const block = blocks[i]!;
      const found = places.get(keyOf(block))?.find((index) => index >= next);
      if (found !== undefined) {
        close(found);
        next++;
        shown.push(kept(before[found]!, block));
      } else {
        const fresh = { id: ++this.#lastId, block };
        shown.push(fresh);
        added.push(fresh);
      }
    }
    close(before.length - end);
    for (let i = end; i > 0; i--) {
      kept(before[before.length - i]!, blocks[blocks.length - i]!);
    }
    this.#shown = shown.concat(before.slice(before.length - end));
    return splices;
  }
}

function kept(before: Shown, block: PreviewBlock): Shown {
  before.block = block;
  return before;
}

function isSame(a: PreviewBlock, b: PreviewBlock): boolean {
  return a === b || (a.html === b.html && a.place === b.place);
}

function commonStart(before: readonly Shown[], after: readonly PreviewBlock[]): number {
  const most = Math.min(before.length, after.length);
  let count = 0;
  while (count < most && isSame(before[count]!.block, after[count]!)) count++;
  return count;
}

function commonEnd(
  before: readonly Shown[],
  after: readonly PreviewBlock[],
  start: number,
): number {
  const most = Math.min(before.length, after.length) - start;
  let count = 0;
  while (count < most && isSame(before.at(-1 - count)!.block, after.at(-1 - count)!)) count++;
  return count;
}

/** Where each block stands between two indices; of some there are several. */
function placesOf(shown: readonly Shown[], from: number, to: number): Map<string, number[]> {
  const places = new Map<string, number[]>();
  for (let i = from; i < to; i++) {
    const key = keyOf(shown[i]!.block);
    const known = places.get(key);
    if (known) known.push(i);
    else places.set(key, [i]);
  }
  return places;
}

function keyOf({ place, html }: PreviewBlock): string {
  return `${place}\n${html}`;
}
