/** Completion inside a part mark, by what has been written of it. */

import type { GuideState } from "../../model/guideState.ts";
import { shownValue } from "../../model/list/shownValue.ts";
import { boardAt, candidates, partsIn } from "./candidates.ts";
import type { Completion, Completions } from "./completion.ts";
import { hardwareCompletions } from "./hardware.ts";
import { kindsIn } from "./kinds.ts";
import { labelCompletions, missingLabels } from "./labels.ts";
import { type MarkWriting, readMarkWriting } from "./markWriting.ts";
import { PartSet } from "./partSet.ts";
import { partCompletions } from "./parts.ts";
import { roleCompletions } from "./roles.ts";
import { setCompletions } from "./sets.ts";
import { usedTexts } from "./usedTexts.ts";
import type { Opening, Writing } from "./writing.ts";

export function completeMark(
  guide: GuideState,
  opening: Opening,
  writing: Writing,
): Completions | undefined {
  const mark = readMarkWriting(opening, writing);
  if (!mark) return undefined;
  const all = (items: readonly Completion[]) => ({ span: mark.span, items, complete: true });
  switch (mark.role) {
    case "see":
      return all(labelCompletions(guide, mark.typed));
    case "tool":
    case "own":
      return all(usedTexts(guide, mark.role));
    default:
      break;
  }
  if (mark.mayTakeRole && mark.typed.startsWith("#")) {
    const span = { start: mark.span.start + 1, end: mark.span.end };
    return { span, items: missingLabels(guide), complete: true };
  }
  if (opening.inside.includes("=")) return completeValue(guide, opening, writing, mark);
  return completeItem(guide, writing, mark);
}

/** Parts, hardware, sets and role words, in this order. */
function completeItem(guide: GuideState, writing: Writing, mark: MarkWriting): Completions {
  const board = boardAt(guide, writing, mark);
  const { typed, span } = mark;
  const excepted = exceptedFrom(guide, mark, board);
  const kinds = kindsIn(excepted ?? candidates(guide, writing, mark), guide.kit);
  const named = partCompletions(guide, kinds, typed, board);
  if (excepted || /[+]|\sor\s/.test(typed)) return { span, ...named };
  const items = [
    ...named.items,
    ...hardwareCompletions(guide, typed),
    ...setCompletions(guide, kinds, typed),
    ...(mark.mayTakeRole ? roleCompletions(typed) : []),
  ];
  return { span, items, complete: named.complete };
}

/** The value that is stated for the whole mark: what the list says of its parts. */
function completeValue(
  guide: GuideState,
  { inside }: Opening,
  writing: Writing,
  mark: MarkWriting,
): Completions {
  const at = inside.indexOf("=");
  const list = inside.slice(0, at).replace(/^\s*\p{L}+\s*:/u, "");
  const values = new Set<string>();
  for (const { line } of partsIn(list, guide, boardAt(guide, writing, mark))) {
    const value = shownValue(line);
    if (value) values.add(value);
  }
  const typed = inside.slice(at + 1).trimStart();
  const span = { start: writing.offset - typed.length, end: mark.span.end };
  return { span, items: [...values].map((label) => ({ label, kind: "value" })), complete: true };
}

/** The set behind whose `except` the cursor stands, anywhere in the list. */
const EXCEPT = /(?:^|,)\s*(?:all|rest\s+of)\s+(?:(\p{L}[^,/]*)\/\s*)?([^,]*?)\s+except\s+(.*)$/isu;

function exceptedFrom(
  guide: GuideState,
  mark: MarkWriting,
  board: string | undefined,
): PartSet | undefined {
  const match = EXCEPT.exec(mark.listBefore + mark.typed);
  if (!match) return undefined;
  const [, , of, excepted] = match;
  const set = new PartSet(guide.parts);
  for (const part of guide.kit.partsOfSet(of!)) {
    if (part.fitted && (board === undefined || part.board === board)) set.add(part);
  }
  const others = excepted!.slice(0, excepted!.length - lastWord(mark));
  for (const part of partsIn(others, guide, board)) set.delete(part);
  return set;
}

function lastWord({ typed }: MarkWriting): number {
  return typed.length - (/^.*\sexcept\s+/is.exec(typed)?.[0].length ?? 0);
}
