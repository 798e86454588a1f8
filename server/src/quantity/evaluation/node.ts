/**
 * What a figure's value is made of: a graph of operations over inputs. Figures share nodes, so an
 * input that is used twice, be it through other figures, counts once.
 */
import { at, type Interval, isBounded } from "./interval.ts";
import { DIFFERENCE, type Operation, QUOTIENT } from "./operations.ts";

/** What a quantity less or by itself comes to, whatever it is. */
const OF_ITSELF = new Map<Operation, number>([
  [DIFFERENCE, 0],
  [QUOTIENT, 1],
]);

export class Node {
  /** Undefined for a constant and an input. */
  readonly operation: Operation | undefined;
  readonly args: readonly Node[];
  readonly nominal: number;
  /** Whether its value depends on an input with a tolerance. */
  readonly varies: boolean;
  #range: Interval;

  private constructor(
    operation: Operation | undefined,
    args: readonly Node[],
    nominal: number,
    range: Interval,
  ) {
    this.operation = operation;
    this.args = args;
    this.nominal = nominal;
    this.#range = range;
    this.varies = operation ? args.some((arg) => arg.varies) : range.low < range.high;
  }

  static constant(value: number): Node {
    return new Node(undefined, [], value, at(value));
  }

  /** A quantity with its limits, independent of every other input. */
  static input(nominal: number, min: number, max: number): Node {
    return new Node(undefined, [], nominal, { low: min, high: max });
  }

  /**
   * The result of an operation; undefined where it has none: a domain left, or a result too large
   * for a number. `tighten` may be asked for closer ranges of the operands first.
   */
  static of(
    operation: Operation,
    args: readonly Node[],
    tighten: (node: Node) => void,
  ): Node | undefined {
    const nominal = operation.value(...args.map((arg) => arg.nominal));
    if (!Number.isFinite(nominal)) return undefined;
    const same = args.length === 2 && args[0] === args[1] ? OF_ITSELF.get(operation) : undefined;
    if (same !== undefined && args[0]!.varies) return Node.constant(same);
    let range = rangeFor(operation, args);
    if (!range) {
      for (const arg of args) tighten(arg);
      range = rangeFor(operation, args);
    }
    if (!range || !isBounded(range)) return undefined;
    const varies = args.some((arg) => arg.varies);
    return new Node(operation, args, nominal, varies ? range : at(nominal));
  }

  /** Encloses the values for all inputs within their limits. */
  get range(): Interval {
    return this.#range;
  }

  /** Notes limits that are known to be closer. */
  narrow(range: Interval): void {
    this.#range = range;
  }
}

function rangeFor(operation: Operation, args: readonly Node[]): Interval | undefined {
  const range = operation.range(...args.map((arg) => arg.range));
  // A value may be missing in the middle of its range where a formula has gaps.
  return range && !Number.isNaN(range.low) && !Number.isNaN(range.high) ? range : undefined;
}
