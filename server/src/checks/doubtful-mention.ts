/** A designator in the prose that no list has, one slip away from one that is listed. */
import type { Guide, GuidePiece } from "../model/guide.ts";
import type { Part } from "../model/parts.ts";
import { readDesignator } from "../syntax/designators.ts";
import type { MentionFact } from "../syntax/facts.ts";
import type { Check, Finding } from "./check.ts";
import { CONTEXT, isOtherThing } from "./mentions/notParts.ts";
import { listsAreRead, replace } from "./places.ts";
import { joinWords } from "./words.ts";

export const check: Check = {
  meta: {
    code: "doubtful-mention",
    summary: "A designator in the text is one slip away from a listed one.",
    severity: "hint",
    source: "common practice",
    tags: ["form"],
  },
  *piece(piece, guide) {
    for (const fact of piece.facts.facts) {
      if (fact.kind === "mention" && isDoubtful(fact, piece, guide)) {
        yield doubtful(fact, piece, guide);
      }
    }
  },
};

function isDoubtful({ name, span }: MentionFact, piece: GuidePiece, guide: Guide): boolean {
  if (guide.find(name)) return false;
  const letters = readDesignator(name)?.letters.toUpperCase();
  if (letters === undefined || !lettersInUse(guide).has(letters)) return false;
  if (isBridge(name, piece) || !listsAreRead(guide)) return false;
  const { text } = piece.page;
  const start = piece.start + span.start;
  const end = piece.start + span.end;
  const before = text.slice(Math.max(piece.start, start - CONTEXT), start);
  if (isOtherThing(name, before, text.slice(end, end + CONTEXT))) return false;
  return guide.nearest(name).length > 0 && !listedWords(guide).has(name.toUpperCase());
}

function doubtful({ name, span }: MentionFact, piece: GuidePiece, guide: Guide): Finding {
  const near = guide.nearest(name);
  return {
    at: { piece, span },
    message: () =>
      `The parts list has no ${name}. Did you mean ${joinWords(near, "or")}? A reader will look for the part on the board.`,
    fixes: near.map((other) => () => replace(piece, span, other, `Write ${other}`)),
  };
}

/** Links closed on the board need no line in the list. */
function isBridge(name: string, piece: GuidePiece): boolean {
  return piece.marks.some(
    ({ mark }) =>
      mark.role === "bridge" &&
      mark.items.some((item) => item.kind === "part" && item.name === name),
  );
}

/** Bounded, or a word of many letters would be read to its end from each of them. */
const LIKE_DESIGNATOR = /\p{L}[\p{L}_]{0,20}\d+\p{L}?/gu;

const words = new WeakMap<readonly Part[], ReadonlySet<string>>();
const NAMING = ["value", "part number", "description", "package", "notes"] as const;

/** Words of the lists' other columns that look like designators: a J113 may be a transistor. */
function listedWords({ parts, lists }: Guide): ReadonlySet<string> {
  const known = words.get(parts);
  if (known) return known;
  const found = new Set<string>();
  for (const { cells } of lists.flatMap((list) => list.lines)) {
    for (const meaning of NAMING) {
      for (const [word] of (cells[meaning]?.text ?? "").matchAll(LIKE_DESIGNATOR)) {
        found.add(word.toUpperCase());
      }
    }
  }
  words.set(parts, found);
  return found;
}

const inUse = new WeakMap<readonly Part[], ReadonlySet<string>>();

/** Class letters that the lists use. */
function lettersInUse({ parts }: Guide): ReadonlySet<string> {
  const known = inUse.get(parts);
  if (known) return known;
  const letters = new Set(parts.map((part) => part.letters.toUpperCase()));
  inUse.set(parts, letters);
  return letters;
}
