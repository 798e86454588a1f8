/** The nodes that a value hangs on, in the order in which they are computed. */
import { add, type Interval, meet, multiply, ZERO } from "./interval.ts";
import type { Node } from "./node.ts";

/** What is known of a value over a box of inputs. */
export interface Enclosure {
  readonly range: Interval;
  /** How the value follows each input. */
  readonly slopes: readonly Interval[];
}

export class Program {
  readonly root: Node;
  /** Inputs with a tolerance; boxes and points give one entry for each. */
  readonly inputs: readonly Node[];
  /** Only nodes that vary; the inputs first, the root last. */
  readonly #nodes: readonly Node[];
  /** Places of each node's operands among the nodes; −1 for one that does not vary. */
  readonly #places: readonly (readonly number[])[];

  constructor(root: Node) {
    this.root = root;
    const order = inOrder(root);
    this.inputs = order.filter((node) => !node.operation);
    this.#nodes = [...this.inputs, ...order.filter((node) => node.operation)];
    const place = new Map(this.#nodes.map((node, index) => [node, index]));
    this.#places = this.#nodes.map((node) => node.args.map((arg) => place.get(arg) ?? -1));
  }

  get size(): number {
    return this.#nodes.length;
  }

  /** The limits of all inputs. */
  get box(): readonly Interval[] {
    return this.inputs.map((input) => input.range);
  }

  valueAt(point: readonly number[]): number {
    if (this.#nodes.length === 0) return this.root.nominal;
    const values = point.slice();
    for (let i = point.length; i < this.#nodes.length; i++) {
      const { operation, args } = this.#nodes[i]!;
      const places = this.#places[i]!;
      values.push(
        operation!.value(
          ...args.map((arg, j) => (places[j]! < 0 ? arg.nominal : values[places[j]!]!)),
        ),
      );
    }
    return values.at(-1)!;
  }

  /** Range and slopes over all of the inputs' limits; the nodes know their ranges there. */
  encloseAll(): Enclosure {
    return this.#slopes(this.#nodes.map((node) => node.range));
  }

  enclose(box: readonly Interval[]): Enclosure {
    const ranges = box.slice();
    for (let i = box.length; i < this.#nodes.length; i++) {
      const node = this.#nodes[i]!;
      const range = node.operation!.range(...this.#operands(i, ranges));
      // What holds for all inputs holds for these; it also keeps divisors off zero.
      ranges.push(range ? meet(range, node.range) : node.range);
    }
    return this.#slopes(ranges);
  }

  #operands(i: number, ranges: readonly Interval[]): Interval[] {
    const places = this.#places[i]!;
    return this.#nodes[i]!.args.map((arg, j) => (places[j]! < 0 ? arg.range : ranges[places[j]!]!));
  }

  /** Backwards from the root: what each node's change does to it. */
  #slopes(ranges: readonly Interval[]): Enclosure {
    const last = this.#nodes.length - 1;
    const effects: Interval[] = this.#nodes.map(() => ZERO);
    effects[last] = { low: 1, high: 1 };
    for (let i = last; i >= this.inputs.length; i--) {
      const effect = effects[i]!;
      const slopes = this.#nodes[i]!.operation!.slopes(...this.#operands(i, ranges));
      for (const [j, place] of this.#places[i]!.entries()) {
        if (place >= 0) effects[place] = add(effects[place]!, multiply(effect, slopes[j]!));
      }
    }
    return { range: ranges[last]!, slopes: effects.slice(0, this.inputs.length) };
  }
}

/** The nodes below `root` that vary, operands before what uses them. Without recursion. */
function inOrder(root: Node): Node[] {
  const order: Node[] = [];
  if (!root.varies) return order;
  const seen = new Set<Node>([root]);
  const path: { node: Node; next: number }[] = [{ node: root, next: 0 }];
  while (path.length > 0) {
    const top = path.at(-1)!;
    const arg = top.node.args[top.next++];
    if (!arg) {
      order.push(top.node);
      path.pop();
    } else if (arg.varies && !seen.has(arg)) {
      seen.add(arg);
      path.push({ node: arg, next: 0 });
    }
  }
  return order;
}
