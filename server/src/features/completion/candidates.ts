/** Which parts a mark of each role may want next. */
import { openEnds } from "../../checks/progress.ts";
import { accountsFor } from "../../model/accounting.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { Part } from "../../model/parts.ts";
import { resolveItem } from "../../model/resolve.ts";
import type { Item, PartMark, Role } from "../../syntax/dialect.ts";
import { itemsIn, type MarkWriting } from "./markWriting.ts";
import { PartSet } from "./partSet.ts";
import type { Writing } from "./writing.ts";

/** The parts to offer. */
export function candidates(guide: GuideState, writing: Writing, mark: MarkWriting): PartSet {
  const board = boardAt(guide, writing, mark);
  const set = new PartSet(guide.parts);
  for (const part of ofRole(mark.role, guide)) set.add(part);
  // What the item at the cursor names is accounted for by this very mark.
  for (const part of partsIn(mark.item, guide, board)) {
    if (!isAccountedElsewhere(part, guide, writing)) set.add(part);
  }
  for (const part of partsIn(`${mark.listBefore},${mark.listAfter}`, guide, board)) {
    set.delete(part);
  }
  if (board !== undefined) set.keep((part) => part.board === "" || sameName(part.board, board));
  return set;
}

function isAccountedElsewhere(part: Part, guide: GuideState, { piece, offset }: Writing): boolean {
  const at = offset - piece.start;
  return guide.uses(part).some((use) => {
    const { span } = use.resolved.mark;
    const isHere = use.resolved.piece === piece && span.start < at && at < span.end;
    return accountsFor(use) && !isHere;
  });
}

/** The board that bare names in the mark mean; undefined where the kit has one or it is open. */
export function boardAt(
  guide: GuideState,
  { piece, offset }: Writing,
  mark: MarkWriting,
): string | undefined {
  if (guide.boards.length === 0) return undefined;
  const list = mark.listBefore + mark.typed;
  const slash = list.lastIndexOf("/");
  const prefix = list.slice(list.lastIndexOf(",", slash) + 1, Math.max(0, slash)).trim();
  const own = prefix && guide.boards.find((board) => sameName(board, prefix));
  if (own !== undefined && own !== "") return own;
  const stage = stageAt(guide, piece.order, offset - piece.start);
  if (stage?.board !== undefined) return stage.board;
  for (const use of stage?.uses() ?? []) if (use.supply.kind === "part") return use.supply.board;
  return undefined;
}

function stageAt(guide: GuideState, order: number, at: number) {
  return guide.stages.findLast(({ heading }) => {
    if (!heading) return true;
    const { piece, fact } = heading;
    return piece.order < order || (piece.order === order && fact.span.start <= at);
  });
}

function* ofRole(role: Role, guide: GuideState): Iterable<Part> {
  switch (role) {
    case "remove":
      for (const part of guide.parts) {
        const { held, tried } = openEnds(guide.uses(part));
        if (tried ?? held) yield part;
      }
      return;
    case "empty":
      for (const part of guide.parts) if (!part.fitted && isUnused(part, guide)) yield part;
      yield* unfitted(guide);
      return;
    case "insert":
      for (const part of unfitted(guide)) if (guide.socketOf(part) || part.socketLine) yield part;
      return;
    default:
      yield* unfitted(guide);
  }
}

/** Parts that no step accounts for; optional ones behind the others. */
function* unfitted(guide: GuideState): Iterable<Part> {
  yield* guide.missing;
  for (const part of optionalOf(guide.parts)) if (isUnused(part, guide)) yield part;
}

const OPTIONAL = new WeakMap<readonly Part[], readonly Part[]>();

/** The optional parts of a kit that are fitted: few, among thousands asked for at each keystroke. */
function optionalOf(parts: readonly Part[]): readonly Part[] {
  const known = OPTIONAL.get(parts);
  if (known) return known;
  const optional = parts.filter((part) => part.optional && part.fitted);
  OPTIONAL.set(parts, optional);
  return optional;
}

function isUnused(part: Part, guide: GuideState): boolean {
  return !guide.uses(part).some(accountsFor);
}

/** The parts that a list of items means, half-typed ones left aside. */
export function partsIn(list: string, guide: GuideState, board: string | undefined): Part[] {
  return itemsIn(list).flatMap((item) => partsOf(item, guide, board));
}

function partsOf(item: Item, guide: GuideState, board: string | undefined): Part[] {
  const mark: PartMark = { span: item.span, role: "fit", items: [item], certain: false };
  const { supplies } = resolveItem(item, mark, guide.kit, board);
  return supplies.filter((supply) => supply.kind === "part");
}

function sameName(a: string, b: string): boolean {
  return a.toLowerCase() === b.toLowerCase();
}
