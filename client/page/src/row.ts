/** The row of blocks as elements: sections with what they hold, kept in step by splices. */
import type { SentBlock, SentSplice } from "../../../server/src/lsp/protocol.ts";
import { morph, morphAttributes } from "./morph.ts";

interface Entry {
  readonly id: number;
  readonly place: SentBlock["place"];
  readonly element: HTMLElement;
}

/** What says where reader and cursor are: it outlives an edit of the block. */
const READERS = ["tabindex", "aria-describedby", "aria-current"];

export class BlockRow {
  readonly #main: HTMLElement;
  /** Makes the nodes of a block fit to be shown. */
  readonly #prepare: (content: DocumentFragment) => void;
  #entries: Entry[] = [];

  constructor(main: HTMLElement, prepare: (content: DocumentFragment) => void) {
    this.#main = main;
    this.#prepare = prepare;
  }

  get length(): number {
    return this.#entries.length;
  }

  clear(): void {
    this.#entries = [];
    this.#main.replaceChildren();
  }

  apply(splices: readonly SentSplice[]): void {
    for (const splice of splices) this.#splice(splice);
  }

  /** The element that stands for the block alone: of a section its heading. */
  element(id: number): HTMLElement | undefined {
    const entry = this.#entries.find((one) => one.id === id);
    return entry && own(entry);
  }

  /** The block that holds the node. */
  idOf(node: Node): number | undefined {
    const inside = node instanceof Element ? node : node.parentElement;
    const element = inside?.closest<HTMLElement>("[data-block]");
    return element ? Number(element.dataset.block) : undefined;
  }

  /** From the block's top to that of the next one, in pixels from the top of the window. */
  extent(id: number): { top: number; height: number } | undefined {
    const index = this.#entries.findIndex((one) => one.id === id);
    return index < 0 ? undefined : this.#extent(index);
  }

  /** The block at a height of the window, and where in it. */
  at(y: number): { block: number; share: number } | undefined {
    let [low, high] = [0, this.#entries.length - 1];
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if (topOf(this.#entries[middle]!) <= y) low = middle;
      else high = middle - 1;
    }
    const entry = this.#entries[low];
    if (!entry) return undefined;
    const { top, height } = this.#extent(low);
    const share = height > 0 ? (y - top) / height : 0;
    return { block: entry.id, share: Math.min(1, Math.max(0, share)) };
  }

  #extent(index: number): { top: number; height: number } {
    const entry = this.#entries[index]!;
    const top = topOf(entry);
    const next = this.#entries[index + 1];
    const bottom = next ? topOf(next) : entry.element.getBoundingClientRect().bottom;
    return { top, height: Math.max(0, bottom - top) };
  }

  #splice({ at, remove, add }: SentSplice): void {
    const old = this.#entries.slice(at, at + remove);
    const made = add.map((block) => this.#make(block));
    const fresh = made.map((entry, index) => this.#inPlace(old[index], entry));
    this.#entries.splice(at, remove, ...fresh);
    const kept = new Set(fresh.map(({ element }) => element));
    for (const { element } of old) if (!kept.has(element)) element.remove();
    const isSame = old.length === fresh.length && kept.size === old.length;
    if (isSame && old.every(({ element }) => kept.has(element))) return;
    // Where a section comes or goes, the blocks behind it change hands.
    const sections = [...old, ...fresh].some(({ place }) => place !== "inside");
    this.#settle(at, at + fresh.length, sections);
  }

  #make({ id, place, html }: SentBlock): Entry {
    const template = document.createElement("template");
    template.innerHTML = html;
    this.#prepare(template.content);
    const [only, ...others] = template.content.childNodes;
    const isOne = only instanceof HTMLElement && others.length === 0;
    const element = isOne ? only : document.createElement("div");
    if (!isOne) element.append(template.content);
    element.dataset.block = String(id);
    return { id, place, element };
  }

  /** The old block's element made into the new one, where they are of a kind. */
  #inPlace(old: Entry | undefined, fresh: Entry): Entry {
    const same = old?.place === fresh.place && old.element.tagName === fresh.element.tagName;
    if (!old || !same) return fresh;
    for (const name of READERS) {
      const value = own(old).getAttribute(name);
      if (value !== null) own(fresh).setAttribute(name, value);
    }
    if (own(old).classList.contains("current")) own(fresh).classList.add("current");
    if (fresh.place === "section") {
      morphAttributes(old.element, fresh.element);
      morph(own(old), own(fresh));
    } else {
      morph(old.element, fresh.element);
    }
    return { ...fresh, element: old.element };
  }

  /** Puts the elements where they belong, from one index to another, or on to the next section. */
  #settle(from: number, to: number, sections: boolean): void {
    let section: HTMLElement | undefined;
    for (let i = from - 1; i >= 0 && !section; i--) {
      const { place, element } = this.#entries[i]!;
      if (place === "section") section = element;
    }
    for (let i = from; i < this.#entries.length; i++) {
      const { place, element } = this.#entries[i]!;
      if (i >= to && (!sections || place !== "inside")) break;
      const before = this.#entries[i - 1];
      if (place !== "inside") {
        putBehind(this.#main, section ?? before?.element, element);
        section = place === "section" ? element : undefined;
      } else if (section) {
        putBehind(section, before && own(before), element);
      } else {
        putBehind(this.#main, before?.element, element);
      }
    }
  }
}

function own({ place, element }: Entry): HTMLElement {
  return place === "section" ? (element.firstElementChild as HTMLElement) : element;
}

function topOf(entry: Entry): number {
  return own(entry).getBoundingClientRect().top;
}

function putBehind(parent: HTMLElement, before: Element | undefined, element: Element): void {
  const following = before ? before.nextSibling : parent.firstChild;
  if (following !== element) parent.insertBefore(element, following);
}
