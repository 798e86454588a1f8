/** The steps and texts that name parts which are gone, new, or of another kind or look. */

import { cellAt } from "../../checks/places.ts";
import { listNames } from "../../checks/words.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { Part } from "../../model/parts.ts";
import type { PieceNode } from "../../model/pieceNode.ts";
import { type Naming, namingsIn, partsNamed } from "../naming/namings.ts";
import type { Draft } from "./drafts.ts";
import { rowAt, stepAt } from "./places.ts";
import { nameIn, type RevisedPart, type Revision, revisedParts } from "./revisedParts.ts";

/** One entry for each step (or text outside them) and each thing to be told of parts in it. */
export function touchedSteps(revision: Revision): Draft[] {
  const parts = revisedParts(revision);
  const old = parts.filter(({ kind }) => kind === "gone" || kind === "renumbered");
  const fresh = parts.filter(({ kind }) => kind === "new" || kind === "changed");
  return [
    ...new Namings(revision.before, old, ({ before }) => before).drafts(),
    ...new Namings(revision.after, fresh, ({ after }) => after).drafts(),
    ...unplaced(revision.after, parts),
  ];
}

interface Group {
  /** Whether a mark names one of the parts there, and not the running text alone. */
  isMarked: boolean;
  /** The first of the namings, of those in marks if there are any. */
  place: Naming;
  readonly parts: Set<RevisedPart>;
}

class Namings {
  readonly #guide: GuideState;
  readonly #revised = new Map<Part, RevisedPart[]>();
  readonly #groups = new Map<string, Group>();

  constructor(
    guide: GuideState,
    revised: readonly RevisedPart[],
    partOf: (one: RevisedPart) => Part | undefined,
  ) {
    this.#guide = guide;
    for (const one of revised) {
      const part = partOf(one);
      if (part) this.#revised.set(part, [...(this.#revised.get(part) ?? []), one]);
    }
  }

  drafts(): Draft[] {
    if (this.#revised.size === 0) return [];
    for (const piece of this.#guide.pieces) {
      for (const naming of namingsIn(piece)) {
        for (const part of partsNamed(naming, this.#guide.kit)) {
          for (const one of this.#revised.get(part) ?? []) this.#add(piece, naming, one);
        }
      }
    }
    return [...this.#groups.values()].map((group) => this.#draft(group));
  }

  #add(piece: PieceNode, naming: Naming, one: RevisedPart): void {
    const home = homeOf(piece, naming.span.start);
    const isMarked = naming.mark !== undefined;
    const key = [piece.page.uri, piece.start + home, one.kind, one.what, one.look].join("\n");
    const group = this.#groups.get(key);
    if (!group) {
      this.#groups.set(key, { isMarked, place: naming, parts: new Set([one]) });
      return;
    }
    if (isMarked && !group.isMarked) group.place = naming;
    group.isMarked ||= isMarked;
    group.parts.add(one);
  }

  #draft({ place, isMarked, parts }: Group): Draft {
    const { piece, span } = place;
    return {
      kind: "step",
      at: { piece, span },
      step: stepAt(piece, span.start),
      message: told([...parts], this.#guide, isMarked),
      note: isMarked ? noteOf([...parts], this.#guide) : undefined,
      names: [...parts].flatMap(namesOf),
    };
  }
}

/** Where the step, or the block of text outside steps, begins in the piece. */
function homeOf(piece: PieceNode, offset: number): number {
  const home = stepAt(piece, offset)?.fact ?? rowAt(piece, offset);
  if (home) return home.span.start;
  for (const fact of piece.facts.facts) {
    if (fact.kind === "text" && fact.span.start <= offset && offset < fact.span.end) {
      return fact.span.start;
    }
  }
  return offset;
}

/** New parts that are to be fitted, and no step does. */
function unplaced(guide: GuideState, parts: readonly RevisedPart[]): Draft[] {
  const missing = new Set(guide.missing);
  const byLine = new Map<string, RevisedPart[]>();
  for (const one of parts) {
    if (one.kind !== "new" || !one.after || !missing.has(one.after)) continue;
    const key = `${one.after.line.index} ${one.what}`;
    byLine.set(key, [...(byLine.get(key) ?? []), one]);
  }
  return [...byLine.values()].map((group): Draft => {
    const [first] = group;
    const { list, line } = first!.after!;
    const verb = group.length === 1 ? "fits it" : "fits them";
    return {
      kind: "step",
      at: cellAt(list, line, "designator"),
      step: undefined,
      message: `${told(group, guide, true).slice(0, -1)}, and no step ${verb}.`,
      note: undefined,
      names: group.flatMap(namesOf),
    };
  });
}

function namesOf({ before, after }: RevisedPart): string[] {
  return [before, after].flatMap((part) => part?.name ?? []);
}

/** `isMarked`: in a mark it must be put right, in running text the author must see whether it holds. */
function told(parts: readonly RevisedPart[], guide: GuideState, isMarked: boolean): string {
  const [{ kind, what, brief }] = parts as readonly [RevisedPart];
  if (isMarked || kind !== "changed") return saying(parts, guide, what, "list");
  return `Names ${namesIn(parts, guide)}, which changed (${brief}): see whether the text still holds.`;
}

/** The same for a builder, who has the parts in hand and not the list. */
function noteOf(parts: readonly RevisedPart[], guide: GuideState): string {
  return saying(parts, guide, parts[0]!.look, "kit");
}

function saying(
  parts: readonly RevisedPart[],
  guide: GuideState,
  what: string,
  where: "list" | "kit",
): string {
  const [{ kind, after }] = parts as readonly [RevisedPart];
  const names = namesIn(parts, guide);
  const [is, look] = [parts.length === 1 ? "is" : "are", what === "" ? "" : ` (${what})`];
  switch (kind) {
    case "gone":
      return `${names}${look} ${is} no longer in the ${where}.`;
    case "new":
      return `${names}${look} ${is} new in the ${where}.`;
    case "changed":
      return `${names}: ${what}.`;
    case "renumbered":
      return `${names} seems to be ${after!.name} now, which is a guess: the same kind of part.`;
  }
}

function namesIn(parts: readonly RevisedPart[], guide: GuideState): string {
  const named = parts.map((one) => {
    const part = (one.before ?? one.after)!;
    return nameIn(guide, part) === part.name ? { name: part.name } : part;
  });
  return listNames(named);
}
