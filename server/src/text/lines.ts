import type { Span } from "./span.ts";

/** A place as editors count it: both zero-based, columns in UTF-16 units. */
export interface Position {
  readonly line: number;
  readonly column: number;
}

/** Offsets where lines begin. A line ends at LF, CRLF or a lone CR, as in CommonMark and LSP. */
export class LineIndex {
  readonly #starts: number[] = [0];
  readonly #length: number;

  constructor(text: string) {
    this.#length = text.length;
    for (let i = 0; i < text.length; i++) {
      const code = text.charCodeAt(i);
      if (code === 13 && text.charCodeAt(i + 1) === 10) continue;
      if (code === 10 || code === 13) this.#starts.push(i + 1);
    }
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
    let low = 0;
    let high = this.#starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.#starts[middle]! <= at) low = middle;
      else high = middle - 1;
    }
    return { line: low, column: at - this.#starts[low]! };
  }

  offsetAt(position: Position): number {
    const start = this.lineStart(position.line);
    const next = this.lineStart(position.line + 1);
    return Math.min(start + position.column, next);
  }

  range(span: Span): { start: Position; end: Position } {
    return { start: this.positionAt(span.start), end: this.positionAt(span.end) };
  }
}
