/** A text that can be read in parts; any string is one. */
export interface TextSource {
  /** In UTF-16 units. */
  readonly length: number;
  charCodeAt(index: number): number;
  slice(start: number, end?: number): string;
  toString(): string;
}

/** Where the line that holds `from` ends: the offset of its LF or CR, or of the text's end. */
export function endOfLine(text: TextSource, from: number): number {
  for (let i = from; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code === 10 || code === 13) return i;
  }
  return text.length;
}
