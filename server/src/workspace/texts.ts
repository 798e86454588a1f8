/** Texts as editors hold them, with their lines. */
import { LineIndex } from "../text/lines.ts";

export class OpenText {
  version: number;
  text: string;
  readonly lines: LineIndex;

  constructor(version: number, text: string) {
    this.version = version;
    this.text = text;
    this.lines = new LineIndex(text);
  }

  edit(version: number, start: number, end: number, replacement: string): void {
    this.text = this.text.slice(0, start) + replacement + this.text.slice(end);
    this.lines.edit(start, end, replacement, this.text);
    this.version = version;
  }
}
