/** The parts of a guide that a revision of one of its lists changes. */
import { partName } from "../../checks/words.ts";
import type { ComparedPart, ListChanges, QualityChange } from "../../model/compare/compareLists.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { Part } from "../../model/parts.ts";
import { designatorKey } from "../../syntax/designators.ts";
import { builderLook, inBuilderWords } from "./builderWords.ts";
import { lookChanges } from "./looks.ts";

/** The guide under the old list and under the new one; its text is the same. */
export interface Revision {
  readonly before: GuideState;
  readonly after: GuideState;
  /** The list that is replaced, by the URI that it has in both. */
  readonly list: string;
  readonly changes: ListChanges;
}

/** A part that is no longer what it was. */
export interface RevisedPart {
  /** Of the guide under the old list; undefined for a new part. */
  readonly before: Part | undefined;
  /** Of the guide under the new list; undefined for one that is gone. */
  readonly after: Part | undefined;
  readonly kind: "gone" | "new" | "changed" | "renumbered";
  /** What is to be told of it to the author; parts of which the same is told are told of together. */
  readonly what: string;
  /** The same in few words. */
  readonly brief: string;
  /** The same to a builder. */
  readonly look: string;
}

export function revisedParts({ before, after, list, changes }: Revision): RevisedPart[] {
  const old = new ListedParts(before, list);
  const fresh = new ListedParts(after, list);
  return [
    ...changes.removed.map((part) =>
      one("gone", old.find(part), undefined, lookText(part), builderLook(part)),
    ),
    ...changes.changed.map(({ part, changes }) => {
      const [was, is] = [old.find(part), fresh.find(part)];
      const told = changes.map(changeText);
      const isMade = is !== undefined && after.uses(is).some(({ role }) => role === "make");
      const seen = looks(was, is, changes, isMade);
      const toBuilder = changes.map((change) => changeText(inBuilderWords(change)));
      const [what, look] = [told, toBuilder].map((all) => [...all, ...seen].join("; "));
      return one("changed", was, is, what!, look!, told[0]);
    }),
    ...changes.renumbered.map(({ from, to }) =>
      one("renumbered", old.find(from), fresh.find(to), to.name, to.name),
    ),
    ...changes.added.map((part) =>
      one("new", undefined, fresh.find(part), lookText(part), builderLook(part)),
    ),
  ];
}

function one(
  kind: RevisedPart["kind"],
  before: Part | undefined,
  after: Part | undefined,
  what: string,
  look: string,
  brief = what,
): RevisedPart {
  return { kind, before, after, what, look, brief };
}

/** `R17`, or `relay/R17` where several boards have one. */
export function nameIn(guide: GuideState, part: Part): string {
  return guide.kit.find(part.name).doubtful ? partName(part) : part.name;
}

/** The parts of one list, by name and board. */
class ListedParts {
  readonly #parts = new Map<string, Part>();

  constructor(guide: GuideState, list: string) {
    for (const part of guide.parts) {
      if (part.list.uri !== list) continue;
      const key = designatorKey(part.name);
      const byBoard = `${(part.line.board ?? "").toLowerCase()}/${key}`;
      if (!this.#parts.has(key)) this.#parts.set(key, part);
      if (!this.#parts.has(byBoard)) this.#parts.set(byBoard, part);
    }
  }

  find({ name, board }: ComparedPart): Part | undefined {
    const key = designatorKey(name);
    return this.#parts.get(`${board.toLowerCase()}/${key}`) ?? this.#parts.get(key);
  }
}

function lookText({ qualities }: ComparedPart): string {
  return [qualities.value?.text, qualities.package?.text].filter(Boolean).join(", ");
}

/** `value 4k7 → 5k6`, or a word for what is told in words. */
function changeText({ quality, before, after }: QualityChange): string {
  if (quality === "fitted") return after === "no" ? "do-not-fit now" : "to be fitted now";
  if (quality === "optional") return after === "yes" ? "optional now" : "no longer optional";
  return `${quality} ${before ?? "(none)"} → ${after ?? "(none)"}`;
}

/** How it looks otherwise; a height that the list tells is told already. */
function looks(
  was: Part | undefined,
  is: Part | undefined,
  changes: readonly QualityChange[],
  isMade: boolean,
): string[] {
  if (!was || !is) return [];
  const isTold = changes.some(({ quality }) => quality === "height");
  return lookChanges(was, is, isMade).filter((look) => !isTold || !look.startsWith("body height"));
}
