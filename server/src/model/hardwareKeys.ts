/** Finds the hardware line that an amount such as `6 × M3x10` means, and names lines so that they are found. */
import type { ListLine } from "./list/partsList.ts";
import type { Hardware } from "./parts.ts";

/** Cells that may carry the name of a hardware line, in the order of trust. */
const NAMING = ["part number", "value", "description", "package"] as const;

export class HardwareKeys {
  readonly #hardware: readonly Hardware[];
  readonly #found = new Map<string, readonly Hardware[]>();
  #names: ReadonlyMap<Hardware, readonly string[]> | undefined;

  constructor(hardware: readonly Hardware[]) {
    this.#hardware = hardware;
  }

  /**
   * Lines that fit the key equally well: a whole cell first, then whole words of one, then words out
   * of several (`M3 nut`).
   */
  find(key: string): readonly Hardware[] {
    const folded = foldKey(key);
    const known = this.#found.get(folded);
    if (known) return known;
    const found = this.#search(folded);
    this.#found.set(folded, found);
    return found;
  }

  #search(key: string): readonly Hardware[] {
    const item = /^item (\S+)$/.exec(key);
    if (item) return this.#hardware.filter((line) => foldKey(cell(line, "item")) === item[1]);
    this.#names ??= new Map(
      this.#hardware.map((line) => [line, NAMING.map((meaning) => foldKey(cell(line, meaning)))]),
    );
    const names = this.#names;
    const whole = this.#hardware.filter((line) => names.get(line)!.includes(key));
    if (whole.length > 0) return whole;
    const inOne = this.#hardware.filter((line) => holdsWordsIn(names.get(line)!, key));
    if (inOne.length > 0) return inOne;
    const words = key.split(" ");
    return this.#hardware.filter((line) =>
      words.every((one) => holdsWordsIn(names.get(line)!, one)),
    );
  }
}

/** Cells that people call a line by: a part number or a package says little. */
const SPOKEN = ["value", "description", "part number"] as const;

/**
 * What each line is called in messages: the first of its cells that no other line shares, so that
 * the name is also a key.
 */
export function hardwareNames(lines: readonly ListLine[]): readonly string[] {
  const counts = new Map<string, number>();
  for (const line of lines) {
    for (const key of new Set(SPOKEN.map((meaning) => foldKey(line.cells[meaning]?.text ?? "")))) {
      counts.set(key, (counts.get(key) ?? 0) + 1);
    }
  }
  return lines.map((line) => {
    const texts = SPOKEN.map((meaning) => line.cells[meaning]?.text ?? "").filter(Boolean);
    const own = texts.find((text) => counts.get(foldKey(text)) === 1);
    return own ?? texts[0] ?? line.place;
  });
}

/** A comma that is no decimal comma. */
const COMMA = /(?<!\d),|,(?!\d)/;
/** The signs of a key that would end it, or the mark, or be Markdown. */
const NO_KEY = new RegExp(String.raw`[[\]=<>\`*_\\|]|${COMMA.source}`);

/**
 * A text for a mark that means this line and no other: a whole cell or its words before a comma,
 * else its words up to the first sign that a mark cannot hold. Undefined where none can be written.
 */
export function writtenKey(hardware: Hardware, all: readonly Hardware[]): string | undefined {
  const others = all.filter((other) => other !== hardware);
  const texts = [...SPOKEN, "package" as const].map((meaning) => cell(hardware, meaning));
  const isOwn = (text: string) => isKey(text) && !others.some((other) => isCalled(other, text));
  const isOwnHead = (head: string) =>
    isKey(head) && /\p{L}{2}/u.test(head) && !others.some((other) => holdsKey(other, head));
  for (const text of texts) {
    if (isOwn(text)) return text;
    const head = text.slice(0, Math.max(0, text.search(COMMA))).trim();
    if (isOwnHead(head)) return head;
  }
  const heads = texts.map((text) => text.slice(0, NO_KEY.exec(text)?.index).trim());
  const item = cell(hardware, "item");
  return heads.find(isOwnHead) ?? (isKey(item) ? `item ${item}` : undefined);
}

/** Whether a mark can hold the text as a key. */
export function isKey(text: string): boolean {
  return text !== "" && !NO_KEY.test(text);
}

function isCalled(hardware: Hardware, text: string): boolean {
  const key = foldKey(text);
  return NAMING.some((meaning) => foldKey(cell(hardware, meaning)) === key);
}

function holdsKey(hardware: Hardware, text: string): boolean {
  const key = foldKey(text);
  return NAMING.some((meaning) => holdsWords(foldKey(cell(hardware, meaning)), key));
}

function cell(hardware: Hardware, meaning: (typeof NAMING)[number] | "item"): string {
  return hardware.line.cells[meaning]?.text ?? "";
}

/** Lower case, single spaces, `×` as `x`, none of either around an `x` between sizes, decimal points. */
export function foldKey(text: string): string {
  return text
    .toLowerCase()
    .replace(/×/g, "x")
    .replace(/[\s\u00a0\u2009\u202f]+/g, " ")
    .replace(/(\d) ?x ?(?=\d)/g, "$1x")
    .replace(/(\d),(?=\d)/g, "$1.")
    .trim();
}

function holdsWordsIn(texts: readonly string[], words: string): boolean {
  return texts.some((text) => holdsWords(text, words));
}

function holdsWords(text: string, words: string): boolean {
  if (words === "") return false;
  for (let at = text.indexOf(words); at >= 0; at = text.indexOf(words, at + 1)) {
    if (isEdge(text[at - 1]) && isEdge(text[at + words.length])) return true;
  }
  return false;
}

function isEdge(character: string | undefined): boolean {
  return character === undefined || !/[\p{L}\p{N}]/u.test(character);
}
