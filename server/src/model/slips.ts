/** Names one slip of the pen away: a character changed, left out, doubled in, or two swapped. */

const DIGITS = "0123456789";
const LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";

/** The kinds of slips, likeliest first. */
const KINDS = [swapped, changed, extra, missing];

/** Heads whose slips are kept. */
const MAX_KEPT = 1_000;

/**
 * Finds names that are known and one slip away. There are hundreds of slips for a name, but few that
 * leave it with a head (`R` of `R12`, `U3A` of itself) that any known name has.
 */
export class Slips {
  readonly #heads = new Set<string>();
  /** By head, of each kind those that lead to another known head. */
  readonly #byHead = new Map<string, readonly (readonly string[])[]>();

  constructor(known: Iterable<string>) {
    for (const name of known) this.#heads.add(headOf(name));
  }

  /** Texts one slip away from an upper-case name that may be known names, likeliest slips first. */
  *of(name: string): Generator<string, void, void> {
    const head = headOf(name);
    const number = name.slice(head.length);
    const heads = this.#slipsOf(head);
    const isKnown = this.#heads.has(head);
    for (const [kind, slips] of KINDS.entries()) {
      // A letter or a digit alone is no designator.
      if (slips === missing && name.length <= 2) continue;
      if (isKnown) for (const other of slips(number, DIGITS)) yield head + other;
      for (const other of heads[kind]!) yield other + number;
    }
  }

  #slipsOf(head: string): readonly (readonly string[])[] {
    const kept = this.#byHead.get(head);
    if (kept) return kept;
    const found = KINDS.map((slips) =>
      [...slips(head, LETTERS)].filter((other) => this.#heads.has(headOf(other))),
    );
    if (this.#byHead.size < MAX_KEPT) this.#byHead.set(head, found);
    return found;
  }
}

/** A name before the digits at its end. */
function headOf(name: string): string {
  let end = name.length;
  while (end > 0 && isDigit(name[end - 1]!)) end--;
  return name.slice(0, end);
}

/** Two neighbours of a kind, from the end on. */
function* swapped(text: string): Generator<string, void, void> {
  for (let i = text.length - 1; i > 0; i--) {
    const [a, b] = [text[i - 1]!, text[i]!];
    if (a !== b && isDigit(a) === isDigit(b))
      yield text.slice(0, i - 1) + b + a + text.slice(i + 1);
  }
}

/** Digits slip to digits, letters to letters. */
function* changed(text: string): Generator<string, void, void> {
  for (let i = text.length - 1; i >= 0; i--) {
    for (const other of isDigit(text[i]!) ? DIGITS : LETTERS) {
      if (other !== text[i]) yield text.slice(0, i) + other + text.slice(i + 1);
    }
  }
}

/** `own`: the characters that the text is mostly made of; digits are let in behind letters, too. */
function* extra(text: string, own: string): Generator<string, void, void> {
  for (let i = text.length; i >= 0; i--) {
    // Nothing is put before a head.
    if (i === 0 && own === LETTERS) continue;
    for (const other of own) yield text.slice(0, i) + other + text.slice(i);
    if (own === LETTERS && i < text.length)
      for (const other of DIGITS) yield text.slice(0, i) + other + text.slice(i);
  }
}

function* missing(text: string): Generator<string, void, void> {
  for (let i = text.length - 1; i >= 0; i--) yield text.slice(0, i) + text.slice(i + 1);
}

function isDigit(character: string): boolean {
  return character >= "0" && character <= "9";
}
