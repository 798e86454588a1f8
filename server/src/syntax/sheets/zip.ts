/**
 * Entries of a ZIP archive (PKWARE's APPNOTE 6.3.10), unpacked in small portions and only as far as a
 * budget reaches: what an archive claims of its sizes is not believed.
 */
import { Inflate } from "fflate";
import { DAMAGED, Refused } from "./refused.ts";

/** How much of a file may still be read. */
export interface Budget {
  /** Unpacked. */
  bytes: number;
  /** Of its XML parsed, in UTF-16 units: far more work than to unpack it. */
  text: number;
}

interface Entry {
  readonly method: number;
  readonly isEncrypted: boolean;
  readonly packedSize: number;
  /** What it claims to unpack to. */
  readonly claimedSize: number;
  /** Where its local header begins. */
  readonly at: number;
}

/** Packed bytes taken at a time: deflate makes 1032 bytes of one at most, so a portion stays below 9 MB. */
const PORTION = 8192;

/**
 * Rows of a sheet pack to a tenth or a fiftieth; what packs tighter than this, from so many bytes on,
 * is made to fill memory.
 */
const TIGHTEST = 500;
const SUSPECT = 4 * 2 ** 20;

const END = 0x06054b50;
const END_64 = 0x06064b50;
const LOCATOR_64 = 0x07064b50;
const CENTRAL = 0x02014b50;
const LOCAL = 0x04034b50;
/** The end record and the longest comment behind it. */
const MAX_END = 22 + 65_535;
const FULL_32 = 0xffffffff;

export class Archive {
  readonly #bytes: Uint8Array;
  readonly #view: DataView;
  readonly #entries = new Map<string, Entry>();

  /** Throws Refused when the bytes are no whole archive. */
  constructor(bytes: Uint8Array) {
    this.#bytes = bytes;
    this.#view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    this.#readDirectory();
  }

  has(name: string): boolean {
    return this.#entries.has(name);
  }

  /** The entry's bytes in portions. Throws Refused when it is damaged, locked or exceeds the budget. */
  *unpack(name: string, budget: Budget): Generator<Uint8Array, void, void> {
    const entry = this.#entries.get(name);
    if (!entry) throw new Refused(DAMAGED);
    if (entry.isEncrypted) throw new Refused(LOCKED);
    if (entry.claimedSize > budget.bytes) throw new Refused(TOO_LARGE);
    const packed = this.#packedBytes(entry);
    if (entry.method === 0) yield spend(packed, budget);
    else if (entry.method === 8) yield* inflate(packed, budget);
    else throw new Refused("The file is packed in a way that is not known. Save it again.");
  }

  #packedBytes({ at, packedSize }: Entry): Uint8Array {
    const bytes = this.#bytes;
    if (at + 30 > bytes.length || this.#view.getUint32(at, true) !== LOCAL)
      throw new Refused(DAMAGED);
    const names = this.#view.getUint16(at + 26, true) + this.#view.getUint16(at + 28, true);
    const start = at + 30 + names;
    if (start + packedSize > bytes.length) throw new Refused(DAMAGED);
    return bytes.subarray(start, start + packedSize);
  }

  #readDirectory(): void {
    const view = this.#view;
    let { count, at } = this.#directoryPlace();
    const text = new TextDecoder();
    for (; count > 0; count--) {
      if (at + 46 > view.byteLength || view.getUint32(at, true) !== CENTRAL)
        throw new Refused(DAMAGED);
      const nameLength = view.getUint16(at + 28, true);
      const extraLength = view.getUint16(at + 30, true);
      const name = text.decode(this.#bytes.subarray(at + 46, at + 46 + nameLength));
      const entry = this.#entryAt(at, at + 46 + nameLength, extraLength);
      // Of two with one name the first counts, whichever a program might take.
      if (!this.#entries.has(name)) this.#entries.set(name, entry);
      at += 46 + nameLength + extraLength + view.getUint16(at + 32, true);
    }
  }

  #directoryPlace(): { count: number; at: number } {
    const view = this.#view;
    const last = view.byteLength - 22;
    for (let at = last; at >= Math.max(0, view.byteLength - MAX_END); at--) {
      if (view.getUint32(at, true) !== END) continue;
      const place = { count: view.getUint16(at + 10, true), at: view.getUint32(at + 16, true) };
      return place.at === FULL_32 || place.count === 0xffff
        ? this.#directoryPlace64(at, place)
        : place;
    }
    throw new Refused(DAMAGED);
  }

  /** The place as the ZIP64 record before the end record has it, if there is one. */
  #directoryPlace64(end: number, place: { count: number; at: number }) {
    const view = this.#view;
    const locator = end - 20;
    if (locator < 0 || view.getUint32(locator, true) !== LOCATOR_64) return place;
    const at = Number(view.getBigUint64(locator + 8, true));
    if (at + 56 > view.byteLength || view.getUint32(at, true) !== END_64)
      throw new Refused(DAMAGED);
    return {
      count: Number(view.getBigUint64(at + 32, true)),
      at: Number(view.getBigUint64(at + 48, true)),
    };
  }

  #entryAt(at: number, extraAt: number, extraLength: number): Entry {
    const view = this.#view;
    let packedSize = view.getUint32(at + 20, true);
    let local = view.getUint32(at + 42, true);
    if (extraAt + extraLength > view.byteLength) throw new Refused(DAMAGED);
    if (packedSize === FULL_32 || local === FULL_32) {
      // ZIP64's extra field holds, in this order, only those figures that did not fit.
      const wide = this.#wideFigures(extraAt, extraAt + extraLength);
      if (view.getUint32(at + 24, true) === FULL_32) wide.shift();
      if (packedSize === FULL_32) packedSize = wide.shift() ?? packedSize;
      if (local === FULL_32) local = wide.shift() ?? local;
    }
    return {
      method: view.getUint16(at + 10, true),
      isEncrypted: (view.getUint16(at + 8, true) & 1) !== 0,
      packedSize,
      claimedSize: view.getUint32(at + 24, true) % FULL_32,
      at: local,
    };
  }

  #wideFigures(from: number, to: number): number[] {
    const view = this.#view;
    for (let at = from; at + 4 <= to; ) {
      const size = view.getUint16(at + 2, true);
      if (view.getUint16(at, true) !== 1) {
        at += 4 + size;
        continue;
      }
      const figures: number[] = [];
      for (let i = at + 4; i + 8 <= Math.min(to, at + 4 + size); i += 8) {
        figures.push(Number(view.getBigUint64(i, true)));
      }
      return figures;
    }
    return [];
  }
}

export const LOCKED =
  "The file is locked with a password, so nothing in it can be read. Save a copy without password.";

function* inflate(packed: Uint8Array, budget: Budget): Generator<Uint8Array, void, void> {
  let portions: Uint8Array[] = [];
  let isComplete = false;
  let unpacked = 0;
  const inflater = new Inflate((bytes, final) => {
    portions.push(spend(bytes, budget));
    isComplete ||= final;
  });
  for (let at = 0; at < packed.length; at += PORTION) {
    const end = Math.min(at + PORTION, packed.length);
    pushed(inflater, packed.subarray(at, end), end === packed.length);
    unpacked += portions.reduce((sum, { length }) => sum + length, 0);
    if (unpacked > SUSPECT && unpacked > end * TIGHTEST) throw new Refused(TOO_LARGE);
    yield* portions;
    portions = [];
  }
  if (!isComplete) throw new Refused(DAMAGED);
}

/** fflate throws where the packed bytes make no sense. */
function pushed(inflater: Inflate, bytes: Uint8Array, final: boolean): void {
  try {
    inflater.push(bytes, final);
  } catch (error) {
    if (error instanceof Refused) throw error;
    if (error instanceof Error && "code" in error) throw new Refused(DAMAGED);
    throw error;
  }
}

function spend(bytes: Uint8Array, budget: Budget): Uint8Array {
  budget.bytes -= bytes.length;
  if (budget.bytes < 0) throw new Refused(TOO_LARGE);
  return bytes;
}

/** Passes a text on as far as the budget reaches. Throws Refused beyond it. */
export function* spendText(text: Iterable<string>, budget: Budget): Generator<string, void, void> {
  for (const part of text) {
    budget.text -= part.length;
    if (budget.text < 0) throw new Refused(TOO_LARGE);
    yield part;
  }
}

const TOO_LARGE =
  "Unpacked, the file is larger than any parts list (more than 40 MB), so it is not read. Check that it is the right file; if cells beside or below the list are formatted, delete them, and if it has other large sheets, name the list's own after a `#`.";
