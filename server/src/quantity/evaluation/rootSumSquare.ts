/**
 * Root sum square: what tolerances add up to if inputs are off by chance and not all to the bad side.
 * The change that each input alone makes, squared, summed and rooted, on each side of the nominal.
 */
import type { Interval } from "./interval.ts";
import type { Node } from "./node.ts";
import { Program } from "./program.ts";

/** Usual in tolerance analysis; not a limit, unlike the worst case. */
export function rootSumSquare(node: Node): Interval {
  const program = new Program(node);
  const nominals = program.inputs.map((input) => input.nominal);
  let below = 0;
  let above = 0;
  for (const [i, { range }] of program.inputs.entries()) {
    const changes = [range.low, range.high].map(
      (end) => program.valueAt(nominals.map((one, j) => (i === j ? end : one))) - node.nominal,
    );
    below += Math.min(0, ...changes) ** 2;
    above += Math.max(0, ...changes) ** 2;
  }
  return { low: node.nominal - Math.sqrt(below), high: node.nominal + Math.sqrt(above) };
}
