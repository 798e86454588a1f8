/**
 * A page's text cut into pieces that are parsed alone, so that an edit costs what it touches.
 *
 * Candidates for a cut are headings and ordered-list markers at column 0. A candidate becomes a cut
 * only if the parser, given the piece and the candidate's sign, opens a root heading or an item of a root
 * ordered list exactly there. Block structure is decided line by line, and whether a heading or an item
 * opens by its sign and whether words follow it, not by which: nothing behind the sign can change the
 * answer, and the piece means alone what it means in the whole.
 */
import { endOfLine, type TextSource } from "../text/textSource.ts";
import { candidates } from "./cutCandidates.ts";
import { PieceMemory } from "./pieceMemory.ts";

/** A piece of the text. `start` moves when text before the piece changes. */
export interface Piece<Digest> {
  start: number;
  readonly length: number;
  readonly digest: Digest;
}

export interface PieceReader<Digest> {
  /** Length of the head (front matter) that is not cut. */
  headLength(text: TextSource): number;
  /**
   * Digest of `text` up to `candidate`, behind which the candidate's sign stands; undefined when no root
   * heading or root list item opens exactly there. Without a candidate the whole text is digested.
   */
  read(text: string, candidate: number | undefined): Digest | undefined;
}

export interface PieceChanges<Digest> {
  readonly removed: readonly Piece<Digest>[];
  readonly added: readonly Piece<Digest>[];
}

/** Uncut text is taken in pieces of about this many characters; an edited piece is cut finely. */
const COARSE = 2000;

export class PieceSequence<Digest> {
  #text: TextSource;
  #reader: PieceReader<Digest>;
  #head: number;
  /** Pieces that are certain; they cover the text from the head to `#frontier`. */
  #done: Piece<Digest>[] = [];
  #frontier: number;
  /** Pieces behind the frontier, valid wherever a cut falls on their start. */
  #rest: Piece<Digest>[] = [];
  /** Up to here pieces are cut at every candidate. */
  #fineUntil = 0;
  #removed = new Set<Piece<Digest>>();
  #added = new Set<Piece<Digest>>();
  #memory = new PieceMemory<Digest>();

  constructor(text: TextSource, reader: PieceReader<Digest>) {
    this.#text = text;
    this.#reader = reader;
    this.#head = reader.headLength(text);
    this.#frontier = this.#head;
  }

  get text(): TextSource {
    return this.#text;
  }

  get headLength(): number {
    return this.#head;
  }

  /** Whether the pieces cover the whole text. */
  get complete(): boolean {
    return this.#frontier >= this.#text.length;
  }

  get pieces(): readonly Piece<Digest>[] {
    return this.#done;
  }

  /**
   * Replaces text; the pieces it touches are cut again by `advance`. Whoever has the text after the
   * edit already gives it as `text`: a second copy of a long text costs more than the parse.
   */
  edit(start: number, end: number, replacement: string, text?: TextSource): void {
    const old = this.#text;
    this.#text = text ?? old.slice(0, start) + replacement + old.slice(end);
    const by = replacement.length - (end - start);
    const all = this.#rest.length > 0 ? [...this.#done, ...this.#rest] : this.#done;
    const first = firstTouched(all, old, start);
    const after = firstFrom(all, end, first);
    for (let i = first; i < after; i++) this.#drop(all[i]!, old);
    const kept = Math.min(first, this.#done.length);
    for (let i = after; i < all.length; i++) all[i]!.start += by;
    const touchedEnd = all[after]?.start ?? this.#text.length;
    this.#rest = all.slice(after);
    if (kept < first) this.#rest = [...all.slice(kept, first), ...this.#rest];
    this.#done = all.slice(0, kept);
    this.#fineUntil = Math.max(touchedEnd, this.#fineUntil > start ? this.#fineUntil + by : 0);
    this.#placeFrontier();
  }

  /** Cuts and reads on until the pieces cover the text; yields after each piece read. */
  *advance(): Generator<void, void, void> {
    while (this.#frontier < this.#text.length) {
      if (this.#absorb()) continue;
      const piece = this.#cut(this.#frontier);
      this.#done.push(piece);
      this.#added.add(piece);
      this.#frontier = piece.start + piece.length;
      yield;
    }
    for (const piece of this.#rest) this.#drop(piece, this.#text);
    this.#rest = [];
    this.#fineUntil = 0;
  }

  /** Reads pieces again whose digest no longer holds though their text does. */
  reread(stale: (piece: Piece<Digest>, text: string) => boolean): void {
    this.#memory.clear();
    for (const [index, piece] of this.#done.entries()) {
      const text = this.#text.slice(piece.start, piece.start + piece.length);
      if (!stale(piece, text)) continue;
      const digest = this.#reader.read(text, undefined)!;
      const fresh = { start: piece.start, length: piece.length, digest };
      this.#forget(piece);
      this.#added.add(fresh);
      this.#done[index] = fresh;
    }
  }

  /** What came and went since the last call. */
  takeChanges(): PieceChanges<Digest> {
    const changes = { removed: [...this.#removed], added: [...this.#added] };
    this.#removed.clear();
    this.#added.clear();
    return changes;
  }

  #placeFrontier(): void {
    const head = this.#reader.headLength(this.#text);
    if (head !== this.#head) {
      this.#head = head;
      this.#rest = [...this.#done, ...this.#rest];
      this.#done = [];
    }
    const last = this.#done.at(-1);
    this.#frontier = last ? last.start + last.length : this.#head;
  }

  /** Takes over known pieces from the frontier on. Gives whether there were any. */
  #absorb(): boolean {
    let taken = 0;
    while (taken < this.#rest.length) {
      const piece = this.#rest[taken]!;
      if (piece.start > this.#frontier) break;
      taken++;
      if (piece.start < this.#frontier) {
        this.#drop(piece, this.#text);
        continue;
      }
      this.#done.push(piece);
      this.#frontier = piece.start + piece.length;
    }
    if (taken === 0) return false;
    this.#rest = this.#rest.slice(taken);
    return true;
  }

  #cut(start: number): Piece<Digest> {
    const known = this.#memory.take(this.#text, start);
    if (known) return { start, length: known.length, digest: known.digest };
    const fine = start < this.#fineUntil;
    let least = 1;
    for (const candidate of candidates(this.#text, start)) {
      const length = candidate.start - start;
      if (length < least || (!fine && !candidate.heading && length < COARSE)) continue;
      const text = this.#text.slice(start, candidate.start) + candidate.opening;
      const digest = this.#reader.read(text, length);
      if (digest !== undefined) return { start, length, digest };
      // A refused candidate costs a parse; asking again only at twice the length keeps the sum linear.
      least = length * 2;
    }
    const digest = this.#reader.read(this.#text.slice(start), undefined)!;
    return { start, length: this.#text.length - start, digest };
  }

  /** `text` is the text that the piece's offsets count in now. */
  #drop(piece: Piece<Digest>, text: TextSource): void {
    this.#forget(piece);
    this.#memory.keep(piece, text);
  }

  #forget(piece: Piece<Digest>): void {
    if (!this.#added.delete(piece)) this.#removed.add(piece);
  }
}

/** Index of the first piece that an edit at `start` may change, its own first line included. */
function firstTouched<D>(pieces: readonly Piece<D>[], text: TextSource, start: number): number {
  const index = Math.max(0, firstFrom(pieces, start + 1, 0) - 1);
  const piece = pieces[index];
  if (!piece || index === 0) return index;
  const lineEnd = endOfLine(text, piece.start);
  // The piece before was cut by looking at this line.
  return start <= lineEnd + 1 ? index - 1 : index;
}

/** Index of the first piece that starts at or after `offset`, looking from `low` on. */
function firstFrom<D>(pieces: readonly Piece<D>[], offset: number, low: number): number {
  let from = low;
  let to = pieces.length;
  while (from < to) {
    const middle = (from + to) >> 1;
    if (pieces[middle]!.start < offset) from = middle + 1;
    else to = middle;
  }
  return from;
}
