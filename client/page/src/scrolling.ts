/** Scrolling in step with the text, without either side answering to its own echo. */
import type { PreviewPlace } from "../../../server/src/lsp/protocol.ts";
import type { BlockRow } from "./row.ts";

/** The place that counts as the top, below the edge of the window (px). */
const TOP = 8;
/** Scrolling by the page itself, or by what was put into it, is over after so long (ms). */
const ECHO_MS = 200;

export class Scrolling {
  readonly #row: BlockRow;
  #quietUntil = 0;
  /** Where the page has scrolled itself to. */
  #ownY: number | undefined;
  #waiting = false;

  /** `moved` is told where the reader has scrolled to. */
  constructor(row: BlockRow, moved: (place: PreviewPlace) => void) {
    this.#row = row;
    addEventListener("scroll", () => {
      if (this.#waiting || this.#isEcho()) return;
      this.#waiting = true;
      requestAnimationFrame(() => {
        this.#waiting = false;
        const place = this.#row.at(TOP);
        if (place) moved(place);
      });
    });
  }

  /** Does what may scroll the page, in a while too, and keeps still about it. */
  quietly(work: () => void): void {
    work();
    this.#ownY = undefined;
    this.#quietUntil = performance.now() + ECHO_MS;
  }

  /** A reader who scrolls on at once is somewhere else than where the page went. */
  #isEcho(): boolean {
    if (performance.now() >= this.#quietUntil) return false;
    return this.#ownY === undefined || Math.abs(scrollY - this.#ownY) < 1;
  }

  #go(scroll: () => void): void {
    this.quietly(scroll);
    this.#ownY = scrollY;
  }

  /** Brings a place of a block to the top. */
  reveal({ block, share }: PreviewPlace): void {
    const extent = this.#row.extent(block);
    if (!extent) return;
    const isFirst = this.#row.at(-Infinity)?.block === block && share === 0;
    const y = isFirst ? 0 : scrollY + extent.top + share * extent.height - TOP;
    this.to(y);
  }

  /** Brings an element into view if it is out of it. */
  show(element: Element): void {
    const { top, bottom } = element.getBoundingClientRect();
    if (bottom > TOP && top < innerHeight - TOP) return;
    this.#go(() => element.scrollIntoView({ block: "nearest", behavior: "instant" }));
  }

  to(y: number): void {
    this.#go(() => scrollTo({ top: y, behavior: "instant" }));
  }
}
