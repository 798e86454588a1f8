/** What the builder has ticked and entered, kept in the browser from one visit to the next. */

export interface Kept {
  /** Keys of steps that are done. */
  readonly done: Record<string, true>;
  /** Entries of fields by their place on the page. */
  readonly fields: Record<string, string>;
}

export class Store {
  readonly kept: Kept;
  readonly #key: string;

  constructor(guide: string) {
    this.#key = `kitquill:${guide}`;
    this.kept = { done: {}, fields: {}, ...this.#read() };
  }

  save(): void {
    try {
      localStorage.setItem(this.#key, JSON.stringify(this.kept));
    } catch {
      // A browser may refuse to keep anything; the page then works until it is closed.
    }
  }

  #read(): Partial<Kept> {
    try {
      return JSON.parse(localStorage.getItem(this.#key) ?? "{}");
    } catch {
      return {};
    }
  }
}
