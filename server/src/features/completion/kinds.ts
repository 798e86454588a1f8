/** Parts brought together by kind (value, package, height), and runs of neighbours among them. */
import type { Kit } from "../../model/kit.ts";
import type { ListLine } from "../../model/list/partsList.ts";
import type { Part } from "../../model/parts.ts";
import { readDesignator } from "../../syntax/designators.ts";
import type { PartSet } from "./partSet.ts";

/** Parts of one class that share value, package, height and board, in the order of their numbers. */
export interface Kind {
  readonly parts: readonly Part[];
  /** Neighbours by number, each run as long as it goes; one part may be a run. */
  readonly runs: readonly (readonly Part[])[];
}

/** The kinds in a set, lowest bodies first; unknown heights behind them, parts off the board last. */
export function kindsIn(set: PartSet, kit: Kit): readonly Kind[] {
  const { parts, kinds, numbers } = shelvesOf(kit);
  const found: Kind[] = [];
  let members: Part[] = [];
  let kind = -1;
  for (const part of parts) {
    if (!set.has(part)) continue;
    if (kinds[part.id] !== kind) {
      kind = kinds[part.id]!;
      members = [];
      found.push(kindOf(members, numbers));
    }
    members.push(part);
  }
  return found;
}

function kindOf(parts: readonly Part[], numbers: Float64Array): Kind {
  let runs: readonly (readonly Part[])[] | undefined;
  return {
    parts,
    get runs() {
      runs ??= runsOf(parts, numbers);
      return runs;
    },
  };
}

/** All parts of a kit sorted by kind and number, once for a kit, since a list may be long. */
interface Shelves {
  readonly parts: readonly Part[];
  /** By the part's id. */
  readonly kinds: Int32Array;
  readonly numbers: Float64Array;
}

const SHELVES = new WeakMap<Kit, Shelves>();

function shelvesOf(kit: Kit): Shelves {
  const known = SHELVES.get(kit);
  if (known) return known;
  const kinds = new Int32Array(kit.parts.length);
  const numbers = new Float64Array(kit.parts.length);
  const firsts: Part[] = [];
  const byKey = new Map<string, number>();
  let last: Part | undefined;
  for (const part of kit.parts) {
    numbers[part.id] = Number(readDesignator(part.name)?.digits ?? -1);
    kinds[part.id] = last && isLike(part, last) ? kinds[last.id]! : kindFor(part, byKey, firsts);
    last = part;
  }
  const order = (kind: number) => rank(firsts[kind]!);
  const parts = [...kit.parts].sort((a, b) => {
    const [one, other] = [kinds[a.id]!, kinds[b.id]!];
    if (one !== other) return order(one) - order(other) || one - other;
    return numbers[a.id]! - numbers[b.id]! || a.id - b.id;
  });
  const shelves = { parts, kinds, numbers };
  SHELVES.set(kit, shelves);
  return shelves;
}

/** Whether the parts are of one kind beyond doubt, as those of one line are. */
function isLike(a: Part, b: Part): boolean {
  const sameLine = a.line === b.line && a.letters === b.letters && a.board === b.board;
  return sameLine && a.height?.mm === b.height?.mm && a.offBoard === b.offBoard;
}

function kindFor(part: Part, byKey: Map<string, number>, firsts: Part[]): number {
  const key = keyOf(part);
  const known = byKey.get(key);
  if (known !== undefined) return known;
  const kind = firsts.push(part) - 1;
  byKey.set(key, kind);
  return kind;
}

/** Place in the height order: the body height in mm. */
function rank({ height, offBoard }: Part): number {
  if (offBoard) return 2e9;
  return height ? height.mm : 1e9;
}

const LINE_KEYS = new WeakMap<ListLine, string>();

function keyOf({ line, letters, board, height, offBoard }: Part): string {
  let key = LINE_KEYS.get(line);
  if (key === undefined) {
    const { value, package: footprint } = line.cells;
    key = `${value?.text ?? ""}\n${footprint?.text ?? ""}`;
    LINE_KEYS.set(line, key);
  }
  return `${letters}\n${board}\n${height?.mm}\n${offBoard}\n${key}`;
}

function runsOf(parts: readonly Part[], numbers: Float64Array): Part[][] {
  const runs: Part[][] = [];
  let last: Part | undefined;
  for (const part of parts) {
    if (last && numbers[part.id] === numbers[last.id]! + 1 && isPlain(part) && isPlain(last)) {
      runs.at(-1)!.push(part);
    } else {
      runs.push([part]);
    }
    last = part;
  }
  return runs;
}

/** Whether the name ends in its number, without a suffix letter. */
function isPlain({ name }: Part): boolean {
  const code = name.charCodeAt(name.length - 1);
  return code >= 48 && code <= 57;
}
