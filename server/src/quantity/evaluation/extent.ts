/** What a value hangs on, at a glance: most figures are so plain that their range needs no search. */
import type { Node } from "./node.ts";

export interface Extent {
  /** How many nodes vary, the value's own and its inputs included. */
  readonly size: number;
  /**
   * Whether the range that its operations gave is exact: each of them gives the smallest range for
   * operands that have no input in common, and no node is used twice.
   */
  readonly isExact: boolean;
}

/** Looked at without recursion. */
export function extentOf(root: Node): Extent {
  if (!root.varies) return { size: 0, isExact: true };
  const seen = new Set<Node>([root]);
  let isExact = true;
  // A set goes on with what is added while it is walked.
  for (const { operation, args } of seen) {
    if (operation && !operation.exact) isExact = false;
    for (const arg of args) {
      if (!arg.varies) continue;
      if (seen.has(arg)) isExact = false;
      seen.add(arg);
    }
  }
  return { size: seen.size, isExact };
}
