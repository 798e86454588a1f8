/** Lines of a text, and places in them as Markdown's trees count them. */
import type { Node } from "mdast";

type Position = NonNullable<Node["position"]>;
export type Point = Position["start"];

export interface Line {
  /** Counted from 1. */
  readonly number: number;
  readonly start: number;
  /** Before the line end. */
  readonly end: number;
}

/** A line and the part of it that counts, from `from` to `to`. */
export interface Stretch {
  readonly line: Line;
  readonly from: number;
  readonly to: number;
}

export function pointAt(line: Line, offset: number): Point {
  return { line: line.number, column: offset - line.start + 1, offset };
}

/** All lines of a text, the empty one behind its last line end included. */
export function* linesOf(text: string): Generator<Line, void, void> {
  let start = 0;
  for (let number = 1; ; number++) {
    const feed = text.indexOf("\n", start);
    if (feed < 0) {
      yield { number, start, end: text.length };
      return;
    }
    const end = feed > start && text.charCodeAt(feed - 1) === 13 ? feed - 1 : feed;
    yield { number, start, end };
    start = feed + 1;
  }
}
