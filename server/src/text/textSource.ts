/** A text that can be read in parts; any string is one. */
export interface TextSource {
  /** In UTF-16 units. */
  readonly length: number;
  charCodeAt(index: number): number;
  slice(start: number, end?: number): string;
  toString(): string;
}
