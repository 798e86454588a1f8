/** Pieces that an edit has dropped, so that a fence or an undo that brings them back costs no parse. */
import { endOfLine, type TextSource } from "../text/textSource.ts";
import type { Piece } from "./pieces.ts";

/** Up to so many characters are kept, */
const MEMORY_CHARACTERS = 2_000_000;
/** and so many pieces. */
const MEMORY_PIECES = 12_000;

interface Remembered<Digest> {
  /** The piece and the line behind it, which decided its end. */
  readonly text: string;
  readonly length: number;
  readonly digest: Digest;
  /** The piece ran to the end of the text. */
  readonly last: boolean;
}

/** Remembers dropped pieces by their first line; when its room is used up it starts afresh. */
export class PieceMemory<Digest> {
  #characters = 0;
  #pieces = 0;
  readonly #byFirstLine = new Map<string, Remembered<Digest>[]>();

  keep(piece: Piece<Digest>, text: TextSource): void {
    const end = piece.start + piece.length;
    const size = endOfLine(text, end) - piece.start;
    if (size > MEMORY_CHARACTERS / 4) return;
    const isFull = this.#characters + size > MEMORY_CHARACTERS || this.#pieces + 1 > MEMORY_PIECES;
    if (isFull) this.clear();
    const line = firstLine(text, piece.start);
    const entries = this.#byFirstLine.get(line) ?? [];
    const slice = text.slice(piece.start, piece.start + size);
    // At each keystroke in a piece the one before it is dropped, and comes back as it was.
    if (entries.at(-1)?.digest === piece.digest && entries.at(-1)!.text === slice) return;
    entries.push({
      text: copied(slice),
      length: piece.length,
      digest: piece.digest,
      last: end >= text.length,
    });
    this.#byFirstLine.set(line, entries);
    this.#characters += size;
    this.#pieces++;
  }

  /** A remembered piece that stands at `start` again, the line behind it being the same too. */
  take(text: TextSource, start: number): Remembered<Digest> | undefined {
    if (this.#pieces === 0) return undefined;
    const entries = this.#byFirstLine.get(firstLine(text, start));
    return entries?.findLast((entry) => {
      const end = start + entry.text.length;
      const sameEnd = entry.last ? end === text.length : endOfLine(text, end) === end;
      return sameEnd && text.slice(start, end) === entry.text;
    });
  }

  clear(): void {
    this.#byFirstLine.clear();
    this.#characters = 0;
    this.#pieces = 0;
  }
}

function firstLine(text: TextSource, start: number): string {
  return copied(text.slice(start, endOfLine(text, start)));
}

/** A copy that does not hold the whole text it was cut from in memory. */
function copied(slice: string): string {
  return ` ${slice}`.slice(1);
}
