/** Value and body height behind the parts of a mark, for authors who want to see them all the time. */

import type { ResolvedMark } from "../../model/guide.ts";
import type { GuideState } from "../../model/guideState.ts";
import { shownValue } from "../../model/list/shownValue.ts";
import type { Span } from "../../text/span.ts";

export interface PartHint {
  /** Offset in the page's text: behind an item of a mark. */
  readonly at: number;
  readonly text: string;
}

/** Hints between the offsets of a page. */
export function partHints(guide: GuideState, uri: string, within: Span): readonly PartHint[] {
  const hints: PartHint[] = [];
  for (const piece of guide.pieces) {
    if (piece.page.uri !== uri) continue;
    if (piece.start >= within.end || piece.start + piece.length <= within.start) continue;
    for (const resolved of piece.marks) {
      for (const { end, text } of hintsOf(resolved)) hints.push({ at: piece.start + end, text });
    }
  }
  return hints.filter(({ at }) => at >= within.start && at <= within.end);
}

/** For items whose parts are all of one line; a value that the mark states itself is not repeated. */
function* hintsOf({ mark, items }: ResolvedMark): Iterable<{ end: number; text: string }> {
  for (const { item, supplies } of items) {
    const [first, ...others] = supplies;
    if (first?.kind !== "part" || others.some(({ line }) => line !== first.line)) continue;
    const value = mark.stated ? undefined : shownValue(first.line);
    const height = first.height && `${first.height.mm} mm`;
    const text = [value, height].filter(Boolean).join(" · ");
    if (text) yield { end: item.span.end, text: ` ${text}` };
  }
}
