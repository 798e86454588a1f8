/**
 * A long text in chunks, of which an edit copies only those it touches. Editing a plain string
 * copies all of it, which for a megabyte costs more than checking the edit.
 */
import type { TextSource } from "./textSource.ts";

const CHUNK = 16_384;

export class ChunkedText implements TextSource {
  readonly length: number;
  readonly #chunks: readonly string[];
  /** Where each chunk begins. */
  readonly #starts: readonly number[];
  #whole: string | undefined;
  /** The chunk last read from; reading goes on from there as a rule. */
  #last = 0;

  private constructor(chunks: readonly string[]) {
    const starts: number[] = [];
    let length = 0;
    for (const chunk of chunks) {
      starts.push(length);
      length += chunk.length;
    }
    this.#chunks = chunks;
    this.#starts = starts;
    this.length = length;
  }

  static from(text: string): ChunkedText {
    const chunked = new ChunkedText(inChunks(text));
    chunked.#whole = text;
    return chunked;
  }

  /** The text with `start` to `end` replaced; this one stays as it is. */
  replaced(start: number, end: number, replacement: string): ChunkedText {
    if (this.#chunks.length === 0) return ChunkedText.from(replacement);
    const first = this.#chunkAt(start);
    const last = this.#chunkAt(end);
    const head = this.#chunks[first]!.slice(0, start - this.#starts[first]!);
    const tail = this.#chunks[last]!.slice(end - this.#starts[last]!);
    return new ChunkedText([
      ...this.#chunks.slice(0, first),
      ...inChunks(head + replacement + tail),
      ...this.#chunks.slice(last + 1),
    ]);
  }

  charCodeAt(index: number): number {
    if (index < 0 || index >= this.length) return Number.NaN;
    const chunk = this.#chunkAt(index);
    return this.#chunks[chunk]!.charCodeAt(index - this.#starts[chunk]!);
  }

  /** As of a string, but with offsets counted from the start only. */
  slice(start: number, end = this.length): string {
    const to = Math.min(end, this.length);
    const from = Math.max(0, start);
    if (from >= to) return "";
    const first = this.#chunkAt(from);
    let text = this.#chunks[first]!.slice(from - this.#starts[first]!, to - this.#starts[first]!);
    for (let i = first + 1; i < this.#chunks.length && this.#starts[i]! < to; i++) {
      text += this.#chunks[i]!.slice(0, to - this.#starts[i]!);
    }
    return text;
  }

  toString(): string {
    this.#whole ??= this.#chunks.join("");
    return this.#whole;
  }

  /** The chunk that holds the offset; the last one for the end of the text. */
  #chunkAt(offset: number): number {
    const starts = this.#starts;
    const last = this.#last;
    if (offset >= starts[last]! && offset < (starts[last + 1] ?? this.length)) return last;
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (starts[middle]! <= offset) low = middle;
      else high = middle - 1;
    }
    this.#last = low;
    return low;
  }
}

/** Chunks of even size, none longer than twice the usual. */
function inChunks(text: string): string[] {
  if (text === "") return [];
  if (text.length <= 2 * CHUNK) return [text];
  const count = Math.ceil(text.length / CHUNK);
  const size = Math.ceil(text.length / count);
  return Array.from({ length: count }, (_, i) => text.slice(i * size, (i + 1) * size));
}
