/** What checks find in a stage alone: it is kept as long as the stage stands. */
import type { Guide, Stage } from "../model/guide.ts";

/** A stage whose text, marks or uses change is another stage, and is looked at again. */
export class ByStage<Item> {
  readonly #find: (stage: Stage, guide: Guide) => readonly Item[];
  readonly #known = new WeakMap<Stage, readonly Item[]>();

  constructor(find: (stage: Stage, guide: Guide) => readonly Item[]) {
    this.#find = find;
  }

  /** Of all stages of the guide, in order; nearly all have nothing. */
  in(guide: Guide): readonly Item[] {
    const items: Item[] = [];
    for (const stage of guide.stages) {
      const own = this.#of(stage, guide);
      for (const item of own) items.push(item);
    }
    return items;
  }

  #of(stage: Stage, guide: Guide): readonly Item[] {
    const known = this.#known.get(stage);
    if (known) return known;
    const found = this.#find(stage, guide);
    this.#known.set(stage, found);
    return found;
  }
}
