/** Where the front matter of a Markdown text begins and ends. */
import type { Span } from "../text/span.ts";

export interface Fences {
  /** From the opening fence to behind the closing one, its line end included. */
  readonly span: Span;
  /** The YAML between the fences. */
  readonly body: Span;
  readonly closed: boolean;
}

const OPEN = /^---[ \t]*(?:\r\n|\n|\r)/;
const CLOSE = /(?<=[\r\n])(?:---|\.\.\.)[ \t]*(?:\r\n|\n|\r|$)/g;
const BLANK_LINE = /(?<=\n|\r(?!\n))[ \t]*(?:[\r\n]|$)/g;

/**
 * The fences: a first line of `---`, closed by a line of `---` or `...`, spaces behind them allowed.
 * When the closing fence is missing the front matter is taken to end before the first blank line.
 * Undefined for a text that does not open with a fence.
 */
export function findFences(text: string): Fences | undefined {
  const open = OPEN.exec(text);
  if (!open) return undefined;
  const start = open[0].length;
  const close = matchFrom(CLOSE, text, start);
  if (close) {
    const body = { start, end: close.index };
    return { span: { start: 0, end: close.index + close[0].length }, body, closed: true };
  }
  const end = matchFrom(BLANK_LINE, text, start)?.index ?? text.length;
  return { span: { start: 0, end }, body: { start, end }, closed: false };
}

function matchFrom(pattern: RegExp, text: string, start: number): RegExpExecArray | null {
  pattern.lastIndex = start;
  return pattern.exec(text);
}
