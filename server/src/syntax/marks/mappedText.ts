/**
 * Text with escapes and entities decoded, that still knows where each character stands in the source.
 * Marks and figures are read from it, so their spans are exact in quotes, lists and table cells.
 */
import { decodeString } from "micromark-util-decode-string";
import type { Span } from "../../text/span.ts";

/** A stretch of one source line, without the prefixes of the blocks around it. */
export interface SourceLine {
  readonly raw: string;
  readonly offset: number;
  /** The line break behind it; empty on the last line. */
  readonly ending: string;
}

/** As in CommonMark: a backslash before ASCII punctuation, or a character reference. */
const ESCAPE_OR_REFERENCE = /\\[!-/:-@[-`{-~]|&(?:#(?:\d{1,7}|x[\da-f]{1,6})|[\da-z]{1,31});/gi;

export class MappedText {
  readonly text: string;
  readonly #first: number;
  /** Source offset of each character and of the end; absent where nothing was decoded. */
  readonly #offsets: readonly number[] | undefined;

  /** `first` is the source offset of the text, or where it begins in `offsets`. */
  constructor(text: string, first = 0, offsets?: readonly number[]) {
    this.text = text;
    this.#first = first;
    this.#offsets = offsets;
  }

  /** Decoded text of the lines; a line break counts as a space. */
  static decode(lines: readonly SourceLine[]): MappedText {
    const only = lines.length === 1 ? lines[0]! : undefined;
    if (only && !/[\\&]/.test(only.raw)) return new MappedText(only.raw, only.offset);
    let text = "";
    const offsets: number[] = [];
    for (const { raw, offset, ending } of lines) {
      let done = 0;
      for (const match of raw.matchAll(ESCAPE_OR_REFERENCE)) {
        const decoded = decodeString(match[0]);
        if (decoded === match[0]) continue;
        for (let i = done; i < match.index; i++) offsets.push(offset + i);
        for (let i = 0; i < decoded.length; i++) offsets.push(offset + match.index);
        text += raw.slice(done, match.index) + decoded;
        done = match.index + match[0].length;
      }
      for (let i = done; i < raw.length; i++) offsets.push(offset + i);
      text += raw.slice(done);
      if (ending) {
        offsets.push(offset + raw.length);
        text += " ";
      }
    }
    const last = lines.at(-1);
    offsets.push(last ? last.offset + last.raw.length : 0);
    return new MappedText(text, 0, offsets);
  }

  /** Source offset of the character at `index`; the text's length gives the end. */
  offsetAt(index: number): number {
    return this.#offsets ? this.#offsets[this.#first + index]! : this.#first + index;
  }

  /** Where a stretch of the text, or all of it, stands in the source. */
  span(start = 0, end = this.text.length): Span {
    return { start: this.offsetAt(start), end: this.offsetAt(end) };
  }

  /** Source offset of each character and of the end; undefined where they follow each other. */
  get offsets(): readonly number[] | undefined {
    return this.#offsets?.slice(this.#first, this.#first + this.text.length + 1);
  }

  slice(start: number, end = this.text.length): MappedText {
    return new MappedText(this.text.slice(start, end), this.#first + start, this.#offsets);
  }

  trim(): MappedText {
    const start = this.text.length - this.text.trimStart().length;
    return this.slice(start, Math.max(start, this.text.trimEnd().length));
  }
}

/** What a plain Markdown renderer shows for the lines. */
export function shownText(lines: readonly SourceLine[]): string {
  return lines
    .map(({ raw, ending }) => decodeString(ending ? raw.replace(/[ \t]+$/, "") : raw) + ending)
    .join("");
}
