/** Completion of the parts of a mark: whole kinds and ranges first, then single parts. */

import { partName } from "../../checks/words.ts";
import type { GuideState } from "../../model/guideState.ts";
import { shownValue } from "../../model/list/shownValue.ts";
import type { Part } from "../../model/parts.ts";
import { designatorKey } from "../../syntax/designators.ts";
import { describeSupplies } from "../hover.ts";
import { type Completion, MOST_ITEMS } from "./completion.ts";
import type { Kind } from "./kinds.ts";
import { splitTyped, type Typed } from "./typed.ts";

/** A kind in more runs than this is not offered as a whole. */
const MOST_RUNS = 8;
/** Packages are cut to this length in the list. */
const LONGEST_PACKAGE = 30;

export interface PartCompletions {
  readonly items: readonly Completion[];
  readonly complete: boolean;
}

/** Completions of `typed`, the item up to the cursor, with the kinds of parts to choose from. */
export function partCompletions(
  guide: GuideState,
  kinds: readonly Kind[],
  typed: string,
  board: string | undefined,
): PartCompletions {
  const list = new PartList(guide, splitTyped(typed), board);
  list.fill(kinds);
  return { items: list.items, complete: !list.isCut };
}

class PartList {
  readonly items: Completion[] = [];
  isCut = false;
  readonly #guide: GuideState;
  readonly #typed: Typed;
  readonly #wanted: string;
  readonly #namesBoards: boolean;

  constructor(guide: GuideState, typed: Typed, board: string | undefined) {
    this.#guide = guide;
    this.#typed = typed;
    this.#wanted = typed.word.trim().toLowerCase();
    this.#namesBoards = board === undefined && guide.boards.length > 1;
  }

  fill(kinds: readonly Kind[]): void {
    const { from, wantsOne } = this.#typed;
    if (from !== undefined) {
      this.#ranges(kinds, designatorKey(from));
      return;
    }
    if (!wantsOne) this.#groups(kinds);
    for (const { parts } of kinds) {
      if (parts.length === 1 && !wantsOne) continue;
      for (const part of parts) if (!this.isCut) this.#offer([[part]]);
    }
  }

  /** The ways on from the first end of a range: to the end of its run, then to each part in it. */
  #ranges(kinds: readonly Kind[], from: string): void {
    for (const { runs } of kinds) {
      for (const run of runs) {
        const first = run.findIndex(({ name }) => designatorKey(name) === from);
        if (first < 0 || first === run.length - 1) continue;
        const rest = run.slice(first);
        this.#offer([rest.slice(-1)], rest);
        for (let end = 1; end < rest.length - 1 && !this.isCut; end++) {
          this.#offer([[rest[end]!]], rest.slice(0, end + 1));
        }
      }
    }
  }

  /** Whole kinds, one part or more, then the runs of those that have several. */
  #groups(kinds: readonly Kind[]): void {
    for (const { runs } of kinds) {
      if (!this.isCut && runs.length <= MOST_RUNS) this.#offer(runs);
    }
    for (const { runs } of kinds) {
      if (runs.length === 1) continue;
      for (const run of runs) if (!this.isCut && run.length > 1) this.#offer([run]);
    }
  }

  /** `meant` are the parts that the item then names, where that is more than its new text says. */
  #offer(runs: readonly (readonly Part[])[], meant: readonly Part[] = runs.flat()): void {
    if (!this.#matches(runs)) return;
    if (this.items.length === MOST_ITEMS) {
      this.isCut = true;
      return;
    }
    const { head } = this.#typed;
    const names = runs.map((run) => this.#run(run)).join(", ");
    const value = shownValue(meant[0]!.line);
    const description = sizeOf(meant[0]!);
    const others = runs.length === 1 && runs[0]!.length === 1 ? [] : runs.map(nameEach);
    this.items.push({
      label: head + names,
      kind: "part",
      ...(value && { detail: value }),
      ...(description && { description }),
      filter: `${head}${[names, ...others, value].join(" ").trim()}`,
      documentation: () => describeSupplies(meant, this.#guide),
    });
  }

  /** Whether a name or the value begins as what is typed. */
  #matches(runs: readonly (readonly Part[])[]): boolean {
    const wanted = this.#wanted;
    if (wanted === "") return true;
    const value = shownValue(runs[0]![0]!.line).toLowerCase();
    if (value.startsWith(wanted)) return true;
    return runs.some((run) => run.some(({ name }) => name.toLowerCase().startsWith(wanted)));
  }

  #run(run: readonly Part[]): string {
    const first = this.#namesBoards ? partName(run[0]!) : run[0]!.name;
    if (run.length === 1) return first;
    const last = run.at(-1)!.name;
    return run.length === 2 ? `${first}, ${last}` : `${first}–${last}`;
  }
}

/** So many members of a run are named for the filter of the editor. */
const MOST_NAMED = 20;

function nameEach(run: readonly Part[]): string {
  return run
    .slice(0, MOST_NAMED)
    .map(({ name }) => name)
    .join(" ");
}

/** `DO-35 · 2.1 mm` */
function sizeOf({ line, height, offBoard }: Part): string {
  const footprint = line.cells.package?.text.replace(/^[^:]*:/, "") ?? "";
  const short =
    footprint.length > LONGEST_PACKAGE ? `${footprint.slice(0, LONGEST_PACKAGE)}…` : footprint;
  const mm = height && !offBoard ? `${Number(height.mm.toFixed(1))} mm` : "";
  return [short, mm].filter((text) => text !== "").join(" · ");
}
