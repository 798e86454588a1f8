/** Tells whether a naming means one of some parts, with little work for the many that do not. */
import type { Kit } from "../../model/kit.ts";
import type { Part } from "../../model/parts.ts";
import { designatorKey, readDesignator } from "../../syntax/designators.ts";
import type { RangeItem } from "../../syntax/dialect.ts";
import type { Naming } from "./namings.ts";

export class PartMatcher {
  readonly #kit: Kit;
  readonly #parts: ReadonlySet<Part>;
  readonly #keys: ReadonlySet<string>;
  readonly #letters: ReadonlySet<string>;

  constructor(parts: readonly Part[], kit: Kit) {
    this.#kit = kit;
    this.#parts = new Set(parts);
    this.#keys = new Set(parts.map(({ name }) => designatorKey(name)));
    this.#letters = new Set(parts.map(({ letters }) => letters.toUpperCase()));
  }

  /** Whether the naming means one of the parts, alone or among others. */
  matches({ named, board }: Naming): boolean {
    if (named.kind === "part") return this.#means(named.name, named.board, board);
    return (
      this.#mayHold(named) && named.names.some((name) => this.#means(name, named.board, board))
    );
  }

  #means(name: string, board: string | undefined, stageBoard: string | undefined): boolean {
    const key = designatorKey(name);
    // A section means its part: U3A is of U3.
    if (!this.#keys.has(key) && !this.#keys.has(key.slice(0, -1))) return false;
    const { part } = this.#kit.find(name, board, stageBoard);
    return part !== undefined && this.#parts.has(part);
  }

  /** Whether the range need be written out. */
  #mayHold({ from, to }: RangeItem): boolean {
    const [first, last] = [readDesignator(from), readDesignator(to)];
    if (!first || !last || !this.#letters.has(first.letters.toUpperCase())) return false;
    if (this.#parts.size > 1 || first.suffix) return true;
    const [part] = this.#parts;
    const own = readDesignator(part!.name);
    if (!own) return true;
    const number = Number(own.digits);
    return number >= Number(first.digits) && number <= Number(last.digits);
  }
}
