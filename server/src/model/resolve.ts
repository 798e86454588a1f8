/** Looks the marks of a piece up in the parts list: which parts and hardware each item means. */
import type { GroupItem, Item, PartItem, PartMark, RangeItem, SetItem } from "../syntax/dialect.ts";
import { MOVING_ROLES } from "../syntax/dialect.ts";
import type { Span } from "../text/span.ts";
import type { ResolvedItem } from "./guide.ts";
import type { Kit } from "./kit.ts";
import type { Hardware, Part, Supply } from "./parts.ts";

/** What an item of a mark means; sets take their board and `rest of` its leavings later. */
export function resolveItem(
  item: Item,
  mark: PartMark,
  kit: Kit,
  stageBoard?: string,
): ResolvedItem {
  if (!MOVING_ROLES.has(mark.role)) return NOTHING(item);
  switch (item.kind) {
    case "part":
    case "range":
      return resolveNames(item, [item], mark, kit, stageBoard);
    case "group":
    case "choice":
      return resolveNames(item, item.members, mark, kit, stageBoard);
    case "amount":
      return resolveAmount(item, kit);
    case "set":
      return resolveSet(item, kit, stageBoard, undefined);
    case "text":
      return NOTHING(item);
  }
}

/** Whether what the item means depends on other marks of the guide. */
export function isDynamic(item: Item, kit: Kit): item is SetItem {
  return item.kind === "set" && (item.which === "rest" || kit.boards.length > 1);
}

/** Parts of a set on a board; `taken` tells which parts earlier steps have fitted. */
export function resolveSet(
  item: SetItem,
  kit: Kit,
  board: string | undefined,
  taken: ((part: Part) => boolean) | undefined,
): ResolvedItem {
  const where = item.board ?? board;
  const unknown: ResolvedItem["unknown"][number][] = [];
  const except = new Set<Part>();
  for (const excluded of item.except) {
    for (const name of namesOfItem(excluded)) {
      const { part } = kit.find(name, excluded.board ?? item.board, board);
      if (part) except.add(part);
      else unknown.push({ name, board: where ?? "", span: excluded.span });
    }
  }
  const supplies = kit
    .partsOfSet(item.of)
    .filter(
      (part) =>
        part.fitted &&
        !except.has(part) &&
        (where === undefined || kit.boards.length === 0 || sameName(part.board, where)) &&
        !(item.which === "rest" && taken?.(part)),
    );
  return { item, supplies, unknown, doubtfulBoard: false, candidates: [] };
}

/** How many pieces or metres of the supply the item uses. */
export function amountOf(item: Item): { count: number | undefined; metres: number | undefined } {
  if (item.kind !== "amount") return { count: 1, metres: undefined };
  return item.amount.kind === "count"
    ? { count: item.amount.count, metres: undefined }
    : { count: undefined, metres: item.amount.metres };
}

/** Where the n-th supply of an item stands: members of groups have places of their own. */
export function spanOfSupply(item: Item, supply: Supply): Span {
  if ((item.kind === "group" || item.kind === "choice") && supply.kind === "part") {
    const key = supply.name.toUpperCase();
    return item.members.find((member) => member.name.toUpperCase() === key)?.span ?? item.span;
  }
  return item.span;
}

function NOTHING(item: Item): ResolvedItem {
  return { item, supplies: [], unknown: [], doubtfulBoard: false, candidates: [] };
}

function resolveNames(
  item: PartItem | RangeItem | GroupItem | Extract<Item, { kind: "choice" }>,
  named: readonly (PartItem | RangeItem)[],
  mark: PartMark,
  kit: Kit,
  stageBoard: string | undefined,
): ResolvedItem {
  const supplies: Part[] = [];
  const unknown: ResolvedItem["unknown"][number][] = [];
  let doubtfulBoard = false;
  for (const one of named) {
    for (const name of namesOfItem(one)) {
      const { part, doubtful } = kit.find(name, one.board, stageBoard);
      doubtfulBoard ||= doubtful;
      if (part) supplies.push(part);
      else if (mark.certain && mark.role !== "bridge") {
        unknown.push({ name, board: one.board ?? stageBoard ?? "", span: one.span });
      }
    }
  }
  return { item, supplies, unknown, doubtfulBoard, candidates: [] };
}

function resolveAmount(item: Extract<Item, { kind: "amount" }>, kit: Kit): ResolvedItem {
  const candidates: readonly Hardware[] = kit.findHardware(item.key);
  const supplies = candidates.length === 1 ? candidates : [];
  return { item, supplies, unknown: [], doubtfulBoard: false, candidates };
}

function namesOfItem(item: PartItem | RangeItem): readonly string[] {
  return item.kind === "range" ? item.names : [item.name];
}

function sameName(a: string, b: string): boolean {
  return a.toLowerCase() === b.toLowerCase();
}
