/** A row of numbers that answers "largest up to here" and takes "add to all from here to there". */
export class MaxTree {
  readonly #size: number;
  /** Largest number of each node's part of the row, without what its ancestors still owe it. */
  readonly #max: Float64Array;
  /** Added to the whole part of a node, counted in its own `#max` already. */
  readonly #owed: Float64Array;

  /** All `length` numbers are -Infinity at first. */
  constructor(length: number) {
    let size = 1;
    while (size < length) size *= 2;
    this.#size = size;
    this.#max = new Float64Array(2 * size).fill(Number.NEGATIVE_INFINITY);
    this.#owed = new Float64Array(2 * size);
  }

  get(index: number): number {
    let node = index + this.#size;
    let value = this.#max[node]!;
    while (node > 1) {
      node >>= 1;
      value += this.#owed[node]!;
    }
    return value;
  }

  set(index: number, value: number): void {
    let node = index + this.#size;
    let owed = 0;
    for (let above = node >> 1; above >= 1; above >>= 1) owed += this.#owed[above]!;
    this.#max[node] = value - owed;
    while (node > 1) {
      node >>= 1;
      this.#refresh(node);
    }
  }

  /** Adds to the numbers from `first` to `last`, both included. */
  add(first: number, last: number, amount: number): void {
    if (first <= last) this.#add(1, 0, this.#size - 1, first, last, amount);
  }

  /** Place of the largest number up to `last` included; the last of equals. */
  largestUpTo(last: number): number {
    let best = -1;
    let bestValue = Number.NEGATIVE_INFINITY;
    let node = 1;
    let owed = 0;
    let low = 0;
    let high = this.#size - 1;
    // Walks down to `last`; whole parts to the left of the way are compared as they are passed.
    while (high > last) {
      owed += this.#owed[node]!;
      const middle = (low + high) >> 1;
      if (last > middle) {
        const left = this.#max[2 * node]! + owed;
        if (left >= bestValue) {
          bestValue = left;
          best = 2 * node;
        }
        node = 2 * node + 1;
        low = middle + 1;
      } else {
        node = 2 * node;
        high = middle;
      }
    }
    if (this.#max[node]! + owed >= bestValue) best = node;
    return this.#lastLargest(best);
  }

  #lastLargest(top: number): number {
    let node = top;
    while (node < this.#size) {
      node = this.#max[2 * node + 1]! >= this.#max[2 * node]! ? 2 * node + 1 : 2 * node;
    }
    return node - this.#size;
  }

  #add(node: number, low: number, high: number, first: number, last: number, amount: number): void {
    if (first > high || last < low) return;
    if (first <= low && high <= last) {
      this.#max[node]! += amount;
      if (node < this.#size) this.#owed[node]! += amount;
      return;
    }
    const middle = (low + high) >> 1;
    this.#add(2 * node, low, middle, first, last, amount);
    this.#add(2 * node + 1, middle + 1, high, first, last, amount);
    this.#refresh(node);
  }

  #refresh(node: number): void {
    const largest = Math.max(this.#max[2 * node]!, this.#max[2 * node + 1]!);
    this.#max[node] = largest + this.#owed[node]!;
  }
}
