/** The source line of a finding with carets beneath the place it means. */
import type { ReportedFinding } from "../report.ts";
import { printable } from "../terminal.ts";

/** Longer lines are cut to the part around the place. */
const WIDTH = 100;
/** How much is shown before the place when a line is cut. */
const BEFORE = 30;

/** Two lines of text, each ending in a line break; empty when the file has no such line. */
export function excerpt(finding: ReportedFinding): string {
  const { line, column, endLine, endColumn, sourceLine } = finding;
  if (sourceLine.trim() === "") return "";
  const start = column - 1;
  const end = endLine === line ? endColumn - 1 : sourceLine.length;
  const from = sourceLine.length > WIDTH && start > BEFORE ? start - BEFORE : 0;
  const shown = printable(sourceLine.slice(from, from + WIDTH));
  const before = shown.slice(0, start - from);
  const marked = shown.slice(start - from, end - from);
  const cut = { left: from > 0 ? "…" : "", right: from + WIDTH < sourceLine.length ? "…" : "" };
  const number = String(line);
  const gutter = " ".repeat(number.length);
  const carets = "^".repeat(Math.max(1, widthOf(marked)));
  const pad = (cut.left && " ") + blank(before);
  return `  ${number} | ${cut.left}${shown}${cut.right}\n  ${gutter} | ${pad}${carets}\n`;
}

/** As wide as the text on a terminal, tabs kept so that they end at the same stops. */
function blank(text: string): string {
  return [...graphemes(text)].map((one) => (one === "\t" ? one : " ".repeat(width(one)))).join("");
}

function widthOf(text: string): number {
  let sum = 0;
  for (const one of graphemes(text)) sum += width(one);
  return sum;
}

function* graphemes(text: string): Generator<string, void, void> {
  for (const { segment } of new Intl.Segmenter().segment(text)) yield segment;
}

/** Columns of a grapheme: two for pictographs and East Asian wide scripts (Unicode UAX #11). */
function width(grapheme: string): number {
  const wide =
    /\p{Emoji_Presentation}|\uFE0F|[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}\uFF01-\uFF60]/u;
  return wide.test(grapheme) ? 2 : 1;
}
