/** Renames a part among the heights and the off-board parts of the front matter. */
import type { GuideState } from "../../model/guideState.ts";
import { namesOf } from "../../model/heightNotes.ts";
import type { Part } from "../../model/parts.ts";
import { designatorKey } from "../../syntax/designators.ts";
import type { Span } from "../../text/span.ts";
import type { TextSource } from "../../text/textSource.ts";
import { type NewName, type RenameEdit, renamed } from "./edit.ts";
import { rangeWithout, readRangeText } from "./rangeText.ts";

/** An entry of `heights` or `off-board`: its name, and for a height the text from there to its end. */
interface Entry {
  readonly span: Span;
  readonly end: number;
}

export function* renameInFrontMatter(
  guide: GuideState,
  part: Part,
  name: NewName,
): Iterable<RenameEdit> {
  const { uri, text } = guide.pages[0]!;
  const { heights, offBoard } = guide.frontMatter;
  const entries: Entry[] = [
    ...heights.map(({ nameSpan, span }) => ({ span: nameSpan, end: span.end })),
    ...offBoard.map(({ span }) => ({ span, end: span.end })),
  ];
  const isMeant = (one: string) => {
    if (designatorKey(one) !== designatorKey(name.from)) return false;
    const found = guide.kit.find(one);
    // A height of a name that several boards have is for all of them.
    return found.part === part && !found.doubtful;
  };
  for (const { span, end } of entries) {
    const source = text.slice(span.start, span.end);
    const names = namesOf(source);
    if (!names.some(isMeant)) continue;
    const pieces =
      names.length === 1 ? [renamed(source, name)] : split(source, names, isMeant, name);
    const between = separator(text, span.start, text.slice(span.end, end));
    yield { uri, span, text: pieces.join(between), kind: "front matter" };
  }
}

function split(
  source: string,
  names: readonly string[],
  isMeant: (name: string) => boolean,
  name: NewName,
): readonly string[] {
  const [first, last] = [names[0]!, names.at(-1)!];
  const text = readRangeText(source, first) ?? { board: "", first, sign: "–", last };
  return rangeWithout(text, names, isMeant, name);
}

/** What parts two entries: a comma in brackets, else a line of their own; each keeps its value. */
function separator(text: TextSource, start: number, value: string): string {
  const head = text.slice(0, start);
  const lineStart = Math.max(head.lastIndexOf("\n"), head.lastIndexOf("\r")) + 1;
  const before = head.slice(lineStart);
  if (/[[{,]\s*["']?$/.test(before) || !/^\s*(?:- )?\s*$/.test(before)) return `${value}, `;
  const lineEnd = /(?:\r\n|\n|\r)$/.exec(head.slice(0, lineStart))?.[0] ?? "\n";
  return `${value}${lineEnd}${before}`;
}
