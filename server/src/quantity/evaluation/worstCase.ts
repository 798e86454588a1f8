/**
 * Worst case: the least and the greatest value for inputs anywhere within their limits. Where each
 * input moves the value one way only, the corners give it exactly. Elsewhere the box of inputs is
 * divided until upper and lower bounds meet; what is left open is counted in, so the result is never
 * too narrow.
 */
import { at, type Interval, middle, multiply, width } from "./interval.ts";
import type { Node } from "./node.ts";
import { type Enclosure, Program } from "./program.ts";

/** Boxes looked at for one end of a range; more would cost a keystroke too much. */
const MOST_BOXES = 200;
/** Bounds that are this close, as a share of the range, have met. */
const CLOSE = 1e-6;

/** Limits of a node's value over all inputs; the node keeps them. */
export function worstCase(node: Node): Interval {
  if (!node.varies) return node.range;
  const program = new Program(node);
  const whole = program.encloseAll();
  const range = {
    low: Math.min(-new Search(program, -1, whole).greatest(), node.nominal),
    high: Math.max(new Search(program, 1, whole).greatest(), node.nominal),
  };
  node.narrow(range);
  return range;
}

interface Box {
  readonly limits: readonly Interval[];
  readonly slopes: readonly Interval[];
  /** No value in the box is greater. */
  readonly bound: number;
}

/** Looks for the greatest value of `sign` × the program. */
class Search {
  readonly #program: Program;
  readonly #sign: 1 | -1;
  readonly #whole: Enclosure;
  #best = -Infinity;

  constructor(program: Program, sign: 1 | -1, whole: Enclosure) {
    this.#program = program;
    this.#sign = sign;
    this.#whole = whole;
  }

  greatest(): number {
    const first = this.#boxOf(this.#program.box, this.#whole);
    // A range that rounding has turned round has no width.
    const closeness = CLOSE * Math.max(0, width(this.#whole.range));
    const open = [first];
    for (let count = 0; count < MOST_BOXES; count++) {
      const next = takeGreatest(open);
      if (!next) return this.#best;
      if (!(next.bound - this.#best > closeness)) return Math.max(next.bound, this.#best);
      for (const limits of this.#halves(next)) {
        const half = this.#boxOf(limits, this.#program.enclose(limits));
        if (half.bound > this.#best) open.push(half);
      }
    }
    return Math.max(this.#best, ...open.map((box) => box.bound));
  }

  /** Inputs that move the value one way only are put to their better end. */
  #boxOf(limits: readonly Interval[], { range, slopes }: Enclosure): Box {
    let settled = this.#settle(limits, slopes);
    let enclosure: Enclosure = { range, slopes };
    while (settled !== limits && settled.some(isOpen)) {
      enclosure = this.#program.enclose(settled);
      const further = this.#settle(settled, enclosure.slopes);
      if (further === settled) break;
      settled = further;
    }
    const value = this.#valueAt(settled.map(middle));
    this.#best = Math.max(this.#best, value);
    if (!settled.some(isOpen)) return { limits: settled, slopes: [], bound: value };
    const bound = Math.min(
      this.#sign === 1 ? enclosure.range.high : -enclosure.range.low,
      value + this.#mostRise(settled, enclosure.slopes),
    );
    return { limits: settled, slopes: enclosure.slopes, bound };
  }

  #settle(limits: readonly Interval[], slopes: readonly Interval[]): readonly Interval[] {
    let changed = false;
    const settled = limits.map((one, i) => {
      const slope = slopes[i]!;
      const rises = slope.low >= 0;
      if (!isOpen(one) || !(rises || slope.high <= 0)) return one;
      changed = true;
      return at(rises === (this.#sign === 1) ? one.high : one.low);
    });
    return changed ? settled : limits;
  }

  /** How far the value can lie above that in the middle of the box. */
  #mostRise(limits: readonly Interval[], slopes: readonly Interval[]): number {
    let rise = 0;
    for (const [i, one] of limits.entries()) {
      const half = width(one) / 2;
      rise += multiply(slopes[i]!, { low: -half, high: half }).high;
    }
    return rise;
  }

  #valueAt(point: readonly number[]): number {
    const value = this.#sign * this.#program.valueAt(point);
    return Number.isNaN(value) ? -Infinity : value;
  }

  /** Cut across the input that matters most. */
  #halves({ limits, slopes }: Box): readonly (readonly Interval[])[] {
    let widest = -1;
    let most = -1;
    for (const [i, one] of limits.entries()) {
      if (!isOpen(one)) continue;
      const effect = multiply(slopes[i]!, { low: 0, high: width(one) });
      const spread = Math.min(Number.MAX_VALUE, Math.max(effect.high, -effect.low));
      const share = width(one) / width(this.#program.inputs[i]!.range);
      // Where slopes have no bound, the shares of the limits decide.
      const size = spread === Number.MAX_VALUE ? Number.MAX_VALUE * share : spread;
      if (size > most) [widest, most] = [i, size];
    }
    const cut = middle(limits[widest]!);
    const { low, high } = limits[widest]!;
    return [
      { low, high: cut },
      { low: cut, high },
    ].map((half) => limits.map((one, i) => (i === widest ? half : one)));
  }
}

function isOpen({ low, high }: Interval): boolean {
  return low < high;
}

function takeGreatest(boxes: Box[]): Box | undefined {
  let greatest = 0;
  for (let i = 1; i < boxes.length; i++) {
    if (boxes[i]!.bound > boxes[greatest]!.bound) greatest = i;
  }
  return boxes.splice(greatest, 1)[0];
}
