/**
 * Tokens in the protocol's numbers: five a token, each place counted from the token before. A piece's
 * numbers are made once; a page strings them together, so that after an edit only what is new is sent.
 * A long guide has some hundred thousand of them, hence the typed arrays.
 */

import { tokensOf } from "../features/tokens/pieceTokens.ts";
import { TOKEN_MODIFIERS, TOKEN_TYPES, type Token } from "../features/tokens/token.ts";
import type { GuideState } from "../model/guideState.ts";
import type { PieceNode } from "../model/pieceNode.ts";

const WIDTH = 5;

/** The tokens of a piece, the first counted from where the piece begins. */
interface PieceData {
  readonly data: readonly number[];
  /** Place of the last token, and how many lines the piece has; lines count in the piece. */
  readonly lastLine: number;
  readonly lastColumn: number;
  readonly lines: number;
}

const KNOWN = new WeakMap<PieceNode, PieceData>();

export interface DataEdit {
  readonly start: number;
  readonly deleteCount: number;
  readonly data: readonly number[];
}

/** All tokens of pieces that follow each other; the first begins on `line`. */
export function tokenData(
  pieces: readonly PieceNode[],
  guide: GuideState,
  line: number,
): Uint32Array {
  const all = pieces.map((piece) => dataOf(piece, guide));
  const data = new Uint32Array(all.reduce((sum, { data: own }) => sum + own.length, 0));
  let first = 0;
  let start = line;
  let last = { line: 0, column: 0 };
  for (const own of all) {
    if (own.data.length > 0) {
      for (let i = 0; i < own.data.length; i++) data[first + i] = own.data[i]!;
      const isSameLine = start + own.data[0]! === last.line;
      data[first] = start + own.data[0]! - last.line;
      if (isSameLine) data[first + 1] = own.data[1]! - last.column;
      last = { line: start + own.lastLine, column: own.lastColumn };
      first += own.data.length;
    }
    start += own.lines;
  }
  return data;
}

/** The one edit that makes the numbers sent before into those of now. */
export function changedData(before: Uint32Array, after: Uint32Array): DataEdit[] {
  const shorter = Math.min(before.length, after.length);
  let head = 0;
  while (head < shorter && before[head] === after[head]) head++;
  if (head === before.length && head === after.length) return [];
  let tail = 0;
  while (
    tail < shorter - head &&
    before[before.length - 1 - tail] === after[after.length - 1 - tail]
  ) {
    tail++;
  }
  // Whole tokens, as some editors want them.
  const start = head - (head % WIDTH);
  const kept = tail - (tail % WIDTH);
  return [
    {
      start,
      deleteCount: before.length - kept - start,
      data: [...after.subarray(start, after.length - kept)],
    },
  ];
}

function dataOf(piece: PieceNode, guide: GuideState): PieceData {
  const known = KNOWN.get(piece);
  if (known) return known;
  const text = piece.page.text.slice(piece.start, piece.start + piece.length);
  const made = encode(tokensOf(piece, guide), text);
  KNOWN.set(piece, made);
  return made;
}

function encode(tokens: readonly Token[], text: string): PieceData {
  const data: number[] = [];
  const reader = new LineReader(text);
  let [lastLine, lastColumn] = [0, 0];
  for (const token of tokens) {
    for (const { line, column, length } of reader.stretches(token)) {
      data.push(line - lastLine, line === lastLine ? column - lastColumn : column, length);
      data.push(TOKEN_TYPES.indexOf(token.type), modifierBits(token));
      [lastLine, lastColumn] = [line, column];
    }
  }
  return { data, lastLine, lastColumn, lines: reader.finish() };
}

function modifierBits({ modifier }: Token): number {
  return modifier === undefined ? 0 : 1 << TOKEN_MODIFIERS.indexOf(modifier);
}

/** Counts lines from the start of a piece, which is the start of a line. */
class LineReader {
  readonly #text: string;
  readonly #breaks: Iterator<RegExpExecArray, undefined>;
  #next: RegExpExecArray | undefined;
  #line = 0;
  #start = 0;

  constructor(text: string) {
    this.#text = text;
    this.#breaks = text.matchAll(/\r\n|\n|\r/g);
    this.#next = this.#breaks.next().value;
  }

  /** A token on several lines is sent as several, without the spaces that a line begins with. */
  *stretches({ span }: Token): Iterable<{ line: number; column: number; length: number }> {
    let from = span.start;
    while (from < span.end) {
      this.#goTo(from);
      const lineEnd = Math.min(span.end, this.#next?.index ?? this.#text.length);
      if (lineEnd > from) {
        yield { line: this.#line, column: from - this.#start, length: lineEnd - from };
      }
      if (lineEnd === span.end) return;
      from = this.#next!.index + this.#next![0].length;
      from += /^[ \t>]*/.exec(this.#text.slice(from, span.end))![0].length;
    }
  }

  /** The number of line ends in the text. */
  finish(): number {
    this.#goTo(this.#text.length);
    return this.#line;
  }

  #goTo(offset: number): void {
    while (this.#next && this.#next.index + this.#next[0].length <= offset) {
      this.#line++;
      this.#start = this.#next.index + this.#next[0].length;
      this.#next = this.#breaks.next().value;
    }
  }
}
