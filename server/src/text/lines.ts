import type { Span } from "./span.ts";
import type { TextSource } from "./textSource.ts";

/** A place as editors count it: both zero-based, columns in UTF-16 units. */
export interface Position {
  readonly line: number;
  readonly column: number;
}

/**
 * Offsets where lines begin. A line ends at LF, CRLF or a lone CR, as in CommonMark and LSP.
 * `edit` keeps the index current without reading the whole text again.
 */
export class LineIndex {
  #starts: number[];
  #length: number;

  constructor(text: string) {
    this.#length = text.length;
    this.#starts = [0, ...lineStarts(text, 0, text.length)];
  }

  get count(): number {
    return this.#starts.length;
  }

  /** Offset of a line's first character; lines past the end give the text's length. */
  lineStart(line: number): number {
    return this.#starts[line] ?? this.#length;
  }

  positionAt(offset: number): Position {
    const at = Math.max(0, Math.min(offset, this.#length));
    const line = this.#lineOf(at);
    return { line, column: at - this.#starts[line]! };
  }

  offsetAt(position: Position): number {
    const start = this.lineStart(position.line);
    const next = this.lineStart(position.line + 1);
    return Math.min(start + Math.max(0, position.column), next);
  }

  /** Whether the offset has that position. */
  isAt(offset: number, { line, column }: Position): boolean {
    if (this.lineStart(line) + column !== offset) return false;
    return line + 1 < this.count ? offset < this.lineStart(line + 1) : offset <= this.#length;
  }

  range(span: Span): { start: Position; end: Position } {
    return { start: this.positionAt(span.start), end: this.positionAt(span.end) };
  }

  /** Follows the replacement of `start` to `end`; `text` is the whole text after it. */
  edit(start: number, end: number, replacement: string, text: TextSource): void {
    const by = replacement.length - (end - start);
    // One character more on each side: an edit may split or join a CRLF.
    const from = Math.max(0, start - 1);
    const first = this.#lineOf(from) + 1;
    const after = this.#lineOf(Math.min(this.#length, end + 1)) + 1;
    const added = lineStarts(text, from, Math.min(text.length, start + replacement.length + 1));
    this.#put(added, first, after);
    const starts = this.#starts;
    if (by !== 0) for (let i = first + added.length; i < starts.length; i++) starts[i]! += by;
    this.#length = text.length;
  }

  /** Puts starts in the place of those from `first` to `after`: in place where they are as many. */
  #put(added: readonly number[], first: number, after: number): void {
    if (added.length === after - first) {
      for (const [i, start] of added.entries()) this.#starts[first + i] = start;
    } else {
      this.#starts = this.#starts.slice(0, first).concat(added, this.#starts.slice(after));
    }
  }

  #lineOf(offset: number): number {
    let low = 0;
    let high = this.#starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.#starts[middle]! <= offset) low = middle;
      else high = middle - 1;
    }
    return low;
  }
}

/** Starts of the lines that follow line ends between `from` and `to`. */
function lineStarts(text: TextSource, from: number, to: number): number[] {
  const starts: number[] = [];
  for (let i = from; i < to; i++) {
    const code = text.charCodeAt(i);
    if (code === 13 && text.charCodeAt(i + 1) === 10) continue;
    if (code === 10 || code === 13) starts.push(i + 1);
  }
  return starts;
}
