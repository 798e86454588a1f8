/** The names read of a list so far, and what the next may leave out: `C1,3`, `U3A, B`. */
import type { Span } from "../text/span.ts";
import { type Designator, expandRange, readDesignator } from "./designators.ts";

export interface ReadName {
  /** With the carried prefix filled in. */
  readonly name: string;
  /** All members of a range have the range's place. */
  readonly span: Span;
}

export interface ReadProblem {
  readonly span: Span;
  readonly message: string;
}

/** Designators of one range or cell beyond this number are not read (a problem says so). */
export const MAX_IN_CELL = 10_000;
/** A number with the letters carried on; its suffix is none of the letters of values (`10k`). */
const CARRIED = /^\d{1,6}[A-Da-d]?$/;

export class ListedNames {
  readonly names: ReadName[] = [];
  readonly problems: ReadProblem[] = [];
  readonly #most: number;
  /** Class letters, and the stem before a suffix letter, that the next item may leave out. */
  #letters: string | undefined;
  #stem: string | undefined;
  /** The designator before was written with leading zeros. */
  #padded = false;
  #full = false;

  /** Takes no more than `most` names. */
  constructor(most: number) {
    this.#most = most;
  }

  /** Whether a name was left out because there were too many. */
  get isFull(): boolean {
    return this.#full;
  }

  /** Names of its own, after the same item: to look ahead with. */
  ahead(): ListedNames {
    const ahead = new ListedNames(this.#most);
    ahead.#letters = this.#letters;
    ahead.#stem = this.#stem;
    ahead.#padded = this.#padded;
    return ahead;
  }

  /** A designator, or what is left of one when its letters are carried on. */
  read(text: string): Designator | undefined {
    const whole = readDesignator(text);
    if (whole) return whole;
    if (this.#letters !== undefined && CARRIED.test(text)) {
      // `R1 0207` is a resistor and its package.
      return text.startsWith("0") && !this.#padded
        ? undefined
        : readDesignator(this.#letters + text);
    }
    if (this.#stem !== undefined && /^\p{Lu}$/u.test(text))
      return readDesignator(this.#stem + text);
    return undefined;
  }

  /** What the next item may leave out is that of this designator. */
  carry({ letters, digits, suffix }: Designator): void {
    this.#letters = letters;
    this.#padded = digits.startsWith("0");
    this.#stem = suffix ? letters + digits : undefined;
  }

  /** A name without a number was read: the next item may leave nothing out. */
  carryNothing(): void {
    this.#letters = undefined;
    this.#stem = undefined;
  }

  add(name: string, span: Span): void {
    if (this.#full) return;
    if (this.names.length < this.#most) {
      this.names.push({ name, span });
      return;
    }
    this.#full = true;
    this.#report(
      span,
      `More than ${MAX_IN_CELL} designators in one cell are not read; from ${name} on they are left out. Split the line into several.`,
    );
  }

  /** Adds all of a range that stands as `text` at a place. */
  addRange(from: Designator, to: Designator, text: string, span: Span): void {
    const size = expandRange(from, to, 0)?.size;
    if (size !== undefined && size > MAX_IN_CELL) {
      this.#report(
        span,
        `The range ${text} names ${size} parts; more than ${MAX_IN_CELL} in one range are not read. Check its last number.`,
      );
      return;
    }
    const room = this.#most - this.names.length + 1;
    const [a, b] = [nameOf(from), nameOf(to)];
    const forward = expandRange(from, to, room);
    if (forward) {
      if (forward.size === 1) {
        this.#report(
          span,
          `${text} is a range of one part and read as ${a}. Write ${a}, or correct its last number.`,
        );
      }
      for (const name of forward.names) this.add(name, span);
      return;
    }
    const backward = countsAlike(from, to) ? expandRange(to, from, room) : undefined;
    if (backward && backward.size <= MAX_IN_CELL) {
      this.#report(span, `The range ${text} runs backwards. It is read as ${b}–${a}; write it so.`);
      for (const name of backward.names) this.add(name, span);
      return;
    }
    this.#report(
      span,
      `${a} and ${b} are not of one series, so ${text} is no range. Both are read as single parts; write a comma between them.`,
    );
    this.add(a, span);
    this.add(b, span);
  }

  #report(span: Span, message: string): void {
    this.problems.push({ span, message });
  }
}

/** `R10-R01` may run backwards, but the `1` of `TL074-1` counts units of a type. */
function countsAlike(a: Designator, b: Designator): boolean {
  const isPadded = a.digits.startsWith("0") || b.digits.startsWith("0");
  return !isPadded || a.digits.length === b.digits.length;
}

export function nameOf({ letters, digits, suffix }: Designator): string {
  return letters + digits + suffix;
}
