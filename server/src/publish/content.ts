/** What a file of a publication holds. */

/** A long text in stretches, of which some are made only when they are written. */
export interface Stretches {
  readonly stretches: Iterable<string | (() => Uint8Array)>;
}

export type Content = string | Uint8Array | Stretches;

/** The content in order, as it is to be written: texts as UTF-8. */
export function* stretchesOf(content: Content): Generator<string | Uint8Array, void, void> {
  if (typeof content === "string" || content instanceof Uint8Array) {
    yield content;
    return;
  }
  for (const one of content.stretches) yield typeof one === "string" ? one : one();
}
