/** Reads what a mark lists: items parted by commas, each able to carry on the one before. */
import type { Item, SetItem, SyntaxProblem } from "../dialect.ts";
import { readAmount, startsWithAmount, startsWithLength, tightStar } from "./amounts.ts";
import type { MappedText } from "./mappedText.ts";
import { type Carry, type Reading, readJoined, readPart, readRange } from "./parts.ts";
import { exceptFrom, readSet } from "./sets.ts";

/** A list of items as far as it could be read. */
export interface ItemList {
  readonly items: readonly Item[];
  /** How many items are beyond doubt: designators, ranges, sets, amounts. */
  readonly certain: number;
  /** What is written strangely though it is understood. */
  readonly problems: readonly SyntaxProblem[];
  /** Items that were meant but cannot be. */
  readonly wrong: readonly SyntaxProblem[];
  /** Places between commas where nothing stands. */
  readonly empty: readonly MappedText[];
  readonly unread: readonly MappedText[];
}

export function readItems(list: MappedText): ItemList {
  return new ItemReader().read(list);
}

/** Whether a text is a list of items that is beyond doubt. */
export function isCertainList(list: MappedText): boolean {
  const read = readItems(list);
  return read.certain > 0 && read.certain === read.items.length && isWhole(read);
}

/** Whether everything in the list was understood. */
export function isWhole({ wrong, empty, unread }: ItemList): boolean {
  return wrong.length + empty.length + unread.length === 0;
}

class ItemReader {
  readonly #items: Item[] = [];
  readonly #problems: SyntaxProblem[] = [];
  readonly #wrong: SyntaxProblem[] = [];
  readonly #empty: MappedText[] = [];
  readonly #unread: MappedText[] = [];
  readonly #carry: Carry = {};
  #certain = 0;
  /** The set whose `except` takes the designators that follow. */
  #openSet: SetItem | undefined;

  read(list: MappedText): ItemList {
    for (const piece of splitItems(list)) this.#item(piece);
    return {
      items: this.#items,
      certain: this.#certain,
      problems: this.#problems,
      wrong: this.#wrong,
      empty: this.#empty,
      unread: this.#unread,
    };
  }

  #item(piece: MappedText): void {
    const text = piece.trim();
    if (text.text === "") this.#empty.push(piece);
    else if (this.#openSet && this.#excepted(text)) return;
    else if (!this.#set(text)) this.#plain(text);
  }

  #set(text: MappedText): boolean {
    const head = readSet(text, this.#carry);
    if (!head) return false;
    this.#openSet = head.except && head.item;
    this.#add({ item: head.item, certain: head.certain });
    if (head.except && !this.#excepted(head.except.trim())) {
      this.#wrong.push(emptyExcept(text));
    }
    return true;
  }

  /** Reads one part or range that the open set leaves out. */
  #excepted(text: MappedText): boolean {
    const read = readRange(text, this.#carry) ?? readPart(text, this.#carry);
    if (!read) return false;
    if ("wrong" in read) {
      this.#wrong.push(read.wrong);
      return true;
    }
    const wider = exceptFrom(this.#openSet!, read.item);
    this.#items[this.#items.length - 1] = wider;
    this.#openSet = wider;
    if (read.problem) this.#problems.push(read.problem);
    return true;
  }

  #plain(text: MappedText): void {
    const amount = readAmount(text);
    const star = amount && tightStar(text);
    const read: Reading<Item> | undefined = amount
      ? { item: amount, certain: true, ...(star && { problem: star }) }
      : (readRange(text, this.#carry) ??
        readJoined(text, this.#carry) ??
        readPart(text, this.#carry));
    this.#openSet = undefined;
    if (!read) this.#unread.push(text);
    else if ("wrong" in read) this.#wrong.push(read.wrong);
    else this.#add(read);
  }

  #add(read: { item: Item; certain: boolean; problem?: SyntaxProblem }): void {
    this.#items.push(read.item);
    if (read.certain) this.#certain++;
    if (read.problem) this.#problems.push(read.problem);
  }
}

/** Pieces between commas; a decimal comma in an amount (`1,5 m × CuL 0,8`) parts nothing. */
function splitItems(list: MappedText): MappedText[] {
  const pieces: MappedText[] = [];
  let start = 0;
  for (const { index } of list.text.matchAll(/,/g)) {
    if (isDecimal(list, start, index)) continue;
    pieces.push(list.slice(start, index));
    start = index + 1;
  }
  pieces.push(list.slice(start));
  return pieces;
}

/** Whether the comma stands in the length that opens the item at `start`, or in its key. */
function isDecimal(list: MappedText, start: number, comma: number): boolean {
  if (!/^\d,\d/.test(list.text.slice(comma - 1, comma + 2))) return false;
  const item = list.slice(start, comma).trim();
  if (/^\d+$/.test(item.text)) return startsWithLength(list.text.slice(start).trimStart());
  return readAmount(item) !== undefined && !startsWithAmount(list.text.slice(comma + 1));
}

function emptyExcept(text: MappedText): SyntaxProblem {
  return {
    span: text.span(),
    message: `No part follows "except" in ${text.text}. Name the parts that the set leaves out.`,
  };
}
