/**
 * Where the author is writing: the text around the cursor within its block. Half-typed text is no
 * mark and no figure yet, so it is looked at as written; the facts of the piece tell only whether the
 * cursor stands in the words of a block, and not in code, HTML or an address.
 */
import type { GuideState } from "../../model/guideState.ts";
import type { PieceNode } from "../../model/pieceNode.ts";
import type { TextFact } from "../../syntax/facts.ts";
import { pieceAt } from "../pieceAt.ts";

export interface Writing {
  readonly piece: PieceNode;
  readonly block: TextFact;
  /** Offset of the cursor in the page. */
  readonly offset: number;
  /** The block up to the cursor, at most `LONGEST` characters of it. */
  readonly before: string;
  /** Whether `before` goes back to where the block begins. */
  readonly isWhole: boolean;
  /** From the cursor to the end of the line. */
  readonly after: string;
}

/** No mark and no figure is longer. */
const LONGEST = 2_000;
/** So much behind the cursor is looked at. */
const AHEAD = 400;

/** What may stand between the last word of a block and the cursor behind it. */
const BLANK = /^[ \t]*$/;

export function writingAt(guide: GuideState, uri: string, offset: number): Writing | undefined {
  const piece = pieceAt(guide, uri, offset);
  const block = piece && blockAt(piece, offset - piece.start);
  if (!piece || !block) return undefined;
  const { text } = piece.page;
  const start = Math.max(piece.start + block.span.start, offset - LONGEST);
  const ahead = text.slice(offset, offset + AHEAD);
  return {
    piece,
    block,
    offset,
    before: text.slice(start, offset),
    isWhole: start === piece.start + block.span.start,
    after: /^[^\r\n]*/.exec(ahead)![0],
  };
}

function blockAt(piece: PieceNode, at: number): TextFact | undefined {
  let block: TextFact | undefined;
  for (const fact of piece.facts.facts) {
    if (fact.kind === "text" && fact.span.start <= at) block = fact;
  }
  if (!block) return undefined;
  const textBetween = (from: number) => piece.page.text.slice(piece.start + from, piece.start + at);
  if (at > block.span.end && !BLANK.test(textBetween(block.span.end))) return undefined;
  const run = block.runs.findLast((one) => one.span.start <= at);
  if (!run) return undefined;
  const inside = at <= run.span.end || BLANK.test(textBetween(run.span.end));
  if (run.kind === "text") return inside ? block : undefined;
  const isDialect = run.kind === "mark" || run.kind === "figure";
  return isDialect && at > run.span.start && at < run.span.end ? block : undefined;
}

/** An open bracket or brace before the cursor. */
export interface Opening {
  readonly sign: "[" | "{";
  /** What follows it, up to the cursor. */
  readonly inside: string;
}

/** What has been opened and not closed where the author writes. */
export function openingBefore({ before }: Writing): Opening | undefined {
  for (let i = before.length - 1; i >= 0; i--) {
    const sign = before[i]!;
    if (sign === "]" || sign === "}" || sign === "`") return undefined;
    if (sign !== "[" && sign !== "{") continue;
    const foreign = sign === "[" ? /[\\!]/ : /[\\${]/;
    if (foreign.test(before[i - 1] ?? "")) return undefined;
    return { sign, inside: before.slice(i + 1) };
  }
  return undefined;
}
