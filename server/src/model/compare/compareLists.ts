/** What changed between two parts lists, by designator, however the files group, order or spell. */
import { designatorKey } from "../../syntax/designators.ts";
import type { PartsList } from "../list/partsList.ts";
import { compareHardware, type HardwareChange } from "./compareHardware.ts";
import {
  QUALITIES,
  type Quality,
  QualityReader,
  type Told,
  type ToldQualities,
} from "./qualities.ts";
import { findRenumbered } from "./renumbered.ts";

/** A part of one list. */
export interface ComparedPart {
  readonly name: string;
  /** Empty where the list names no boards. */
  readonly board: string;
  readonly qualities: ToldQualities;
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
  // One for both, so that what is equal is one object.
  const reader = new QualityReader();
  const sides = [partsOf(before, reader), partsOf(after, reader)] as const;
  const [old, fresh] = sides;
  const uncompared: (Quality | "board")[] = QUALITIES.filter(
    (one) => tells(old, one) !== tells(fresh, one),
  );
  const hasBoards = sides.map((parts) => parts.some(({ board }) => board !== ""));
  const byBoard = hasBoards[0] === true && hasBoards[1] === true;
  if (hasBoards[0] !== hasBoards[1]) uncompared.push("board");
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

function partsOf({ lines }: PartsList, reader: QualityReader): ComparedPart[] {
  const parts: ComparedPart[] = [];
  for (const line of lines) {
    for (const listed of line.designators) {
      const { board = "" } = line;
      parts.push({ name: listed.name, board, qualities: reader.read(line, listed) });
    }
  }
  return parts;
}

function tells(parts: readonly ComparedPart[], quality: Quality): boolean {
  return parts.some((part) => part.qualities[quality] !== undefined);
}

/** Pairs parts of one name; a name listed several times (chip and socket) is paired by what is equal. */
function match(
  old: readonly ComparedPart[],
  fresh: readonly ComparedPart[],
  compared: readonly Quality[],
  byBoard: boolean,
) {
  const waiting = new Map<string, ComparedPart[]>();
  for (const part of old) {
    const key = keyOf(part, byBoard);
    const same = waiting.get(key);
    if (same) same.push(part);
    else waiting.set(key, [part]);
  }
  const unlike: ComparedPart[] = [];
  for (const part of fresh) {
    const same = waiting.get(keyOf(part, byBoard)) ?? [];
    const twin = same.findIndex((one) => differences(one, part, compared).length === 0);
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

function keyOf({ name, board }: ComparedPart, byBoard: boolean): string {
  const key = designatorKey(name);
  return byBoard ? `${board.toLowerCase()}/${key}` : key;
}

function differences(
  a: ComparedPart,
  b: ComparedPart,
  compared: readonly Quality[],
): QualityChange[] {
  const changes: QualityChange[] = [];
  for (const quality of a.qualities === b.qualities ? [] : compared) {
    const [before, after]: (Told | undefined)[] = [a.qualities[quality], b.qualities[quality]];
    if (before?.key !== after?.key)
      changes.push({ quality, before: before?.text, after: after?.text });
  }
  const bothNamed = a.board !== "" && b.board !== "";
  if (bothNamed && a.board.toLowerCase() !== b.board.toLowerCase()) {
    changes.push({ quality: "board", before: a.board, after: b.board });
  }
  return changes;
}
