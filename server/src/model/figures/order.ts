/** The order in which sums are computed: what a sum uses before the sum. Finds circles on the way. */
import type { Cell } from "./cell.ts";
import type { Variable } from "./variable.ts";

/** A sum to compute; those of a group with several, or with itself, hang on each other in a circle. */
export type Group = readonly Cell[];

/**
 * Groups of `cells` such that each uses only itself and those before it, or cells that are not among
 * them. After R. Tarjan, "Depth-first search and linear graph algorithms" (1972), without recursion.
 */
export function inOrder(cells: ReadonlySet<Cell>): Group[] {
  const groups: Group[] = [];
  const states = new Map<Cell, State>();
  const stack: State[] = [];
  const enter = (cell: Cell): State => {
    const state = { cell, index: states.size, lowest: states.size, onStack: true };
    states.set(cell, state);
    stack.push(state);
    return state;
  };
  for (const root of cells) {
    if (states.has(root)) continue;
    const path: { state: State; next: number }[] = [{ state: enter(root), next: 0 }];
    while (path.length > 0) {
      const top = path.at(-1)!;
      const { state } = top;
      const input = state.cell.inputs[top.next++];
      if (input) {
        const used = sumOf(input);
        if (!used || !cells.has(used)) continue;
        const known = states.get(used);
        if (!known) path.push({ state: enter(used), next: 0 });
        else if (known.onStack) state.lowest = Math.min(state.lowest, known.index);
        continue;
      }
      path.pop();
      const parent = path.at(-1)?.state;
      if (parent) parent.lowest = Math.min(parent.lowest, state.lowest);
      if (state.lowest === state.index) groups.push(takeGroup(stack, state));
    }
  }
  return groups;
}

interface State {
  readonly cell: Cell;
  readonly index: number;
  lowest: number;
  onStack: boolean;
}

function takeGroup(stack: State[], first: State): Group {
  const states = stack.splice(stack.indexOf(first));
  for (const state of states) state.onStack = false;
  return states.map((state) => state.cell);
}

/** The sums that define the names a sum uses. */
function usedBy(cell: Cell): readonly Cell[] {
  return cell.inputs.map(sumOf).filter((one) => one !== undefined);
}

function sumOf({ definition }: Variable): Cell | undefined {
  return definition?.cells.expression;
}

/** Whether the group is a circle and no sum of its own. */
export function isCircle(group: Group): boolean {
  const [first] = group;
  return group.length > 1 || first!.inputs.some((input) => sumOf(input) === first);
}

/**
 * The shortest way from a cell of a circle back to itself, the cell at both ends. Names are followed
 * in the order in which they are written, so the way is the same whatever came first.
 */
export function wayRound(cell: Cell): readonly Cell[] {
  const cameFrom = new Map<Cell, Cell>();
  const queue: Cell[] = [cell];
  for (const at of queue) {
    for (const next of usedBy(at)) {
      if (next === cell) return [...backTo(cell, at, cameFrom), cell];
      if (cameFrom.has(next)) continue;
      cameFrom.set(next, at);
      queue.push(next);
    }
  }
  return [];
}

function backTo(start: Cell, end: Cell, cameFrom: ReadonlyMap<Cell, Cell>): Cell[] {
  const way = [end];
  for (let at = end; at !== start; ) {
    at = cameFrom.get(at)!;
    way.unshift(at);
  }
  return way;
}
