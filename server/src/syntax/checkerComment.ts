/** Comments that speak to the checker: `<!-- allow height-order: the LEDs sit level with Q5 -->`. */
import type { Span } from "../text/span.ts";
import type { CheckerComment } from "./facts.ts";
import { readTime } from "./workTime.ts";

const COMMENT = /<!--([\s\S]*?)-->/g;
const ALLOW = /^(\s*allow\s+)([A-Za-z][\w-]*)\s*(?::\s*([\s\S]*))?$/;
const TAKES = /^(\s*takes\s+)(\S[\s\S]*)$/i;
/** Whether a text speaks of a time, well written or not: `takes some care` is a remark. */
const SPEAKS_OF_TIME = /\d|\b(?:seconds?|minutes?|min|hours?|h)\b/i;
const BOARD = /^(\s*board\s+)(\S[\s\S]*?)\s*$/;

/** All checker comments in a stretch of HTML; `offset` is added to their spans. */
export function readComments(
  html: string,
  offset: number,
): { span: Span; comment: CheckerComment }[] {
  const found: { span: Span; comment: CheckerComment }[] = [];
  for (const match of html.matchAll(COMMENT)) {
    const start = offset + match.index;
    const comment = readComment(match[1]!, start + 4);
    if (comment) found.push({ span: { start, end: start + match[0].length }, comment });
  }
  return found;
}

function readComment(body: string, offset: number): CheckerComment | undefined {
  const allow = ALLOW.exec(body);
  if (allow) {
    const start = offset + allow[1]!.length;
    const code = allow[2]!;
    return {
      kind: "allow",
      code,
      codeSpan: { start, end: start + code.length },
      reason: (allow[3] ?? "").trim(),
    };
  }
  const board = BOARD.exec(body);
  if (board) {
    const start = offset + board[1]!.length;
    const name = board[2]!;
    return { kind: "board", board: name, boardSpan: { start, end: start + name.length } };
  }
  const takes = TAKES.exec(body);
  if (takes && SPEAKS_OF_TIME.test(takes[2]!)) {
    const start = offset + takes[1]!.length;
    const time = takes[2]!.trimEnd();
    const timeSpan = { start, end: start + time.length };
    return { kind: "takes", seconds: readTime(time), time, timeSpan };
  }
  const words = body.trim().replace(/\s+/g, " ");
  if (words === "power on") return { kind: "power on" };
  if (words === "parts table") return { kind: "parts table", end: false };
  if (words === "end") return { kind: "parts table", end: true };
  return undefined;
}
