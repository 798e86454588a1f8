/** Texts as editors hold them, with their lines. */
import { ChunkedText } from "../text/chunkedText.ts";
import { LineIndex } from "../text/lines.ts";

export class OpenText {
  version: number;
  source: ChunkedText;
  readonly lines: LineIndex;

  constructor(version: number, text: string) {
    this.version = version;
    this.source = ChunkedText.from(text);
    this.lines = new LineIndex(text);
  }

  get text(): string {
    return this.source.toString();
  }

  edit(version: number, start: number, end: number, replacement: string): void {
    this.source = this.source.replaced(start, end, replacement);
    this.lines.edit(start, end, replacement, this.source);
    this.version = version;
  }
}
