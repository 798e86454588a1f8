/** What changed between two parts lists, by designator, however the files group, order or spell. */
import { designatorKey } from "../../syntax/designators.ts";
import type { ListedDesignator, ListLine, PartsList } from "../list/partsList.ts";
import { compareHardware, type HardwareChange } from "./compareHardware.ts";
import {
  isToldAlike,
  QUALITIES,
  type Quality,
  qualitiesOf,
  type ToldQualities,
  tells,
} from "./qualities.ts";
import { findRenumbered } from "./renumbered.ts";

/** A part of one list. */
export class ComparedPart {
  readonly line: ListLine;
  readonly #listed: ListedDesignator;
  #qualities: ToldQualities | undefined;

  constructor(line: ListLine, listed: ListedDesignator) {
    this.line = line;
    this.#listed = listed;
  }

  get name(): string {
    return this.#listed.name;
  }

  /** The name as it is looked up. */
  get key(): string {
    return designatorKey(this.name);
  }

  /** Empty where the list names no boards. */
  get board(): string {
    return this.line.board ?? "";
  }

  /** Most parts of two lists are told in the same words, so that no one asks for their qualities. */
  get qualities(): ToldQualities {
    this.#qualities ??= qualitiesOf(this.line, this.#listed);
    return this.#qualities;
  }

  isToldAs(other: ComparedPart): boolean {
    const isOptional = this.#listed.optional === other.#listed.optional;
    return isOptional && isToldAlike(this.line, other.line);
  }
}

export interface QualityChange {
  readonly quality: Quality | "board";
  /** Undefined where that list says nothing of it. */
  readonly before: string | undefined;
  readonly after: string | undefined;
}

export interface PartChange {
  readonly part: ComparedPart;
  readonly changes: readonly QualityChange[];
}

export interface ListChanges {
  readonly added: readonly ComparedPart[];
  readonly removed: readonly ComparedPart[];
  readonly changed: readonly PartChange[];
  /** A guess: the same part under another designator. */
  readonly renumbered: readonly { readonly from: ComparedPart; readonly to: ComparedPart }[];
  readonly hardware: readonly HardwareChange[];
  /** What only one of the lists tells of its parts, so that it is not compared. */
  readonly uncompared: readonly (Quality | "board")[];
}

export function compareLists(before: PartsList, after: PartsList): ListChanges {
  const [old, fresh] = [partsOf(before), partsOf(after)];
  const uncompared: (Quality | "board")[] = QUALITIES.filter(
    (one) => tells(before, one) !== tells(after, one),
  );
  const hadBoards = old.some(({ board }) => board !== "");
  const hasBoards = fresh.some(({ board }) => board !== "");
  const byBoard = hadBoards && hasBoards;
  if (hadBoards !== hasBoards) uncompared.push("board");
  const compared = QUALITIES.filter((one) => !uncompared.includes(one));
  const { removed, added, changed } = match(old, fresh, compared, byBoard);
  const moved = byBoard ? match(removed, added, compared, false) : { removed, added, changed: [] };
  const { renumbered, gone, come } = findRenumbered(moved.removed, moved.added, compared);
  return {
    added: come,
    removed: gone,
    changed: [...changed, ...moved.changed],
    renumbered,
    hardware: compareHardware(before, after),
    uncompared,
  };
}

function partsOf({ lines }: PartsList): ComparedPart[] {
  const parts: ComparedPart[] = [];
  for (const line of lines) {
    for (const listed of line.designators) parts.push(new ComparedPart(line, listed));
  }
  return parts;
}

/** Pairs parts of one name; a name listed several times (chip and socket) is paired by what is equal. */
function match(
  old: readonly ComparedPart[],
  fresh: readonly ComparedPart[],
  compared: readonly Quality[],
  byBoard: boolean,
) {
  const isTwin = (a: ComparedPart, b: ComparedPart) =>
    hasKeyOf(a, b, byBoard) && differences(a, b, compared).length === 0;
  const apart = withoutTwinsInTurn(old, fresh, isTwin);
  const waiting = new Map<string, ComparedPart[]>();
  for (const part of apart.old) {
    const key = keyOf(part, byBoard);
    const same = waiting.get(key);
    if (same) same.push(part);
    else waiting.set(key, [part]);
  }
  const unlike: ComparedPart[] = [];
  for (const part of apart.fresh) {
    const same = waiting.get(keyOf(part, byBoard)) ?? [];
    const twin = same.findIndex((one) => isTwin(one, part));
    if (twin >= 0) same.splice(twin, 1);
    else unlike.push(part);
  }
  const added: ComparedPart[] = [];
  const changed: PartChange[] = [];
  for (const part of unlike) {
    const partner = waiting.get(keyOf(part, byBoard))?.shift();
    if (partner) changed.push({ part, changes: differences(partner, part, compared) });
    else added.push(part);
  }
  return { removed: [...waiting.values()].flat(), added, changed };
}

/** How many parts a revision may drop in one place before the others have to be searched for. */
const LOOK_AHEAD = 8;

/** Revisions mostly keep the order of parts, so that those which stay need no search. */
function withoutTwinsInTurn(
  old: readonly ComparedPart[],
  fresh: readonly ComparedPart[],
  isTwin: (a: ComparedPart, b: ComparedPart) => boolean,
) {
  const left: { old: ComparedPart[]; fresh: ComparedPart[] } = { old: [], fresh: [] };
  let at = 0;
  for (const part of fresh) {
    let twin = at;
    const end = Math.min(at + LOOK_AHEAD, old.length);
    while (twin < end && !isTwin(old[twin]!, part)) twin++;
    if (twin === end) {
      left.fresh.push(part);
      continue;
    }
    for (; at < twin; at++) left.old.push(old[at]!);
    at++;
  }
  for (; at < old.length; at++) left.old.push(old[at]!);
  return left;
}

function hasKeyOf(a: ComparedPart, b: ComparedPart, byBoard: boolean): boolean {
  const isWrittenAlike = a.name === b.name && (!byBoard || a.board === b.board);
  return isWrittenAlike || keyOf(a, byBoard) === keyOf(b, byBoard);
}

function keyOf({ key, board }: ComparedPart, byBoard: boolean): string {
  return byBoard ? `${board.toLowerCase()}/${key}` : key;
}

function differences(
  a: ComparedPart,
  b: ComparedPart,
  compared: readonly Quality[],
): QualityChange[] {
  const changes: QualityChange[] = [];
  for (const quality of a.isToldAs(b) ? [] : compared) {
    const [before, after] = [a.qualities[quality], b.qualities[quality]];
    if (before?.key !== after?.key)
      changes.push({ quality, before: before?.text, after: after?.text });
  }
  const bothNamed = a.board !== "" && b.board !== "";
  if (bothNamed && a.board.toLowerCase() !== b.board.toLowerCase()) {
    changes.push({ quality: "board", before: a.board, after: b.board });
  }
  return changes;
}
