/** Completion at a place of a guide: a mark, a figure, a hazard note or the front matter. */
import type { GuideState } from "../../model/guideState.ts";
import type { Completions } from "./completion.ts";
import { completeFigure } from "./figure.ts";
import { completeFrontMatter } from "./frontMatter.ts";
import { completeMark } from "./mark.ts";
import { completeNote } from "./note.ts";
import { openingBefore, writingAt } from "./writing.ts";

/** What may be written at the offset of a page; undefined where nothing of a guide may. */
export function completeInGuide(
  guide: GuideState,
  uri: string,
  offset: number,
): Completions | undefined {
  const first = guide.pages[0]!;
  if (uri === first.uri && offset < guide.frontMatter.span.end) {
    return completeFrontMatter(guide, first.text, offset);
  }
  const writing = writingAt(guide, uri, offset);
  if (!writing) return undefined;
  const opening = openingBefore(writing);
  if (!opening) return completeNote(guide, writing);
  return opening.sign === "["
    ? completeMark(guide, opening, writing)
    : completeFigure(guide, opening, writing);
}
