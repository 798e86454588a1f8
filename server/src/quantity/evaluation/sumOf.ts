/** Adds values of one kind; an input that several share counts once. */
import { Node } from "./node.ts";
import { SUM } from "./operations.ts";
import { type FigureValue, figureValue } from "./value.ts";
import { worstCase } from "./worstCase.ts";

/** Of one value at least; undefined where the sum is too large for a number. */
export function sumOf(values: readonly FigureValue[]): FigureValue | undefined {
  const [first, ...others] = values;
  let node = first!.node;
  for (const other of others) {
    const next = Node.of(SUM, [node, other.node], worstCase);
    if (!next) return undefined;
    node = next;
  }
  worstCase(node);
  return figureValue({ ...first!, node });
}
