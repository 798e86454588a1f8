/** What must be edited in one text to make another of it, line by line. */
import type { TextEdit } from "./span.ts";

/**
 * Where both have the same number of lines, one short edit for each line that differs; else one for
 * all between the first and the last that do.
 */
export function lineEdits(before: string, after: string): TextEdit[] {
  if (before === after) return [];
  const [old, fresh] = [linesOf(before), linesOf(after)];
  if (old.length !== fresh.length) return [shortEdit(before, after, 0)];
  const edits: TextEdit[] = [];
  let start = 0;
  for (const [index, line] of old.entries()) {
    if (line !== fresh[index]) edits.push(shortEdit(line, fresh[index]!, start));
    start += line.length;
  }
  return edits;
}

/** Without what both begin and end with. */
function shortEdit(before: string, after: string, at: number): TextEdit {
  const most = Math.min(before.length, after.length);
  let head = 0;
  while (head < most && before[head] === after[head]) head++;
  let tail = 0;
  while (tail < most - head && before.at(-1 - tail) === after.at(-1 - tail)) tail++;
  const span = { start: at + head, end: at + before.length - tail };
  return { span, text: after.slice(head, after.length - tail) };
}

/** Each with its line end. */
function linesOf(text: string): string[] {
  return text.match(/[^\r\n]*(?:\r\n|\r|\n)|[^\r\n]+$/g) ?? [];
}
