/** Sets that hold other parts than before, and parts picked for likeness from fewer or more. */

import { textAt } from "../../checks/places.ts";
import { listNames } from "../../checks/words.ts";
import type { ResolvedItem, ResolvedMark } from "../../model/guide.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { ListLine } from "../../model/list/partsList.ts";
import type { Part } from "../../model/parts.ts";
import type { Draft } from "./drafts.ts";
import { marksByPlace } from "./places.ts";
import { nameIn, type Revision } from "./revisedParts.ts";

export function touchedSets({ before, after }: Revision): Draft[] {
  const old = marksByPlace(before);
  const drafts: Draft[] = [];
  for (const [place, mark] of marksByPlace(after)) {
    const was = old.get(place);
    if (!was) continue;
    for (const [index, item] of mark.items.entries()) {
      if (item.item.kind !== "set") continue;
      const draft = setDraft(mark, was.items[index]!, item, before, after);
      if (draft) drafts.push(draft);
    }
    if (mark.mark.role === "match") drafts.push(...lotDrafts(mark, was));
  }
  return drafts;
}

function setDraft(
  mark: ResolvedMark,
  was: ResolvedItem,
  is: ResolvedItem,
  before: GuideState,
  after: GuideState,
): Draft | undefined {
  const [old, fresh] = [partsOf(was), partsOf(is)];
  const [oldNames, names] = [namesIn(before, old), namesIn(after, fresh)];
  const lost = oldNames.filter((name) => !names.includes(name));
  const taken = names.filter((name) => !oldNames.includes(name));
  if (lost.length + taken.length === 0) return undefined;
  const told = [
    taken.length > 0 ? `takes in ${listed(taken)} now` : "",
    lost.length > 0 ? `no longer holds ${listed(lost)}` : "",
  ].filter((text) => text !== "");
  const written = textAt(mark.piece, is.item.span);
  const message = `"${written}" ${told.join(" and ")}: ${count(fresh.length)}, before ${old.length}.`;
  return {
    kind: "set",
    at: { piece: mark.piece, span: is.item.span },
    step: mark.step,
    message,
    note: message,
    names: [...lost, ...taken],
  };
}

/** Parts of a match whose lot, the pieces of their line, is another than before. */
function* lotDrafts(mark: ResolvedMark, was: ResolvedMark): Iterable<Draft> {
  for (const [index, item] of mark.items.entries()) {
    const [old, fresh] = [partsOf(was.items[index]!), partsOf(item)];
    const [lot, before] = [lotOf(fresh), lotOf(old)];
    if (lot === before || lot === undefined || before === undefined) continue;
    const names = fresh.map(({ name }) => ({ name }));
    const are = names.length === 1 ? "is" : "are";
    const message = `${listNames(names)} ${are} picked from ${count(lot, "piece")} now, before from ${before}.`;
    yield {
      kind: "set",
      at: { piece: mark.piece, span: item.item.span },
      step: mark.step,
      message,
      note: message,
      names: fresh.map(({ name }) => name),
    };
  }
}

/** Pieces that the lines of the parts supply; undefined where a line does not tell. */
function lotOf(parts: readonly Part[]): number | undefined {
  const lines = new Set<ListLine>(parts.map(({ line }) => line));
  let pieces = 0;
  for (const { quantity, designators } of lines) pieces += quantity ?? designators.length;
  return lines.size === 0 ? undefined : pieces;
}

function partsOf({ supplies }: ResolvedItem): Part[] {
  return supplies.filter((one): one is Part => one.kind === "part");
}

function namesIn(guide: GuideState, parts: readonly Part[]): string[] {
  return parts.map((part) => nameIn(guide, part));
}

function listed(names: readonly string[]): string {
  return listNames(names.map((name) => ({ name })));
}

function count(number: number, word = "part"): string {
  return `${number} ${word}${number === 1 ? "" : "s"}`;
}
