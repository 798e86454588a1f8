/** The value of a figure, and the inputs that figures are computed from. */
import { type Dimension, sameDimension } from "../dimension.ts";
import type { FigureProblem } from "../problem.ts";
import { readWholeUnit } from "../unitText.ts";
import { Node } from "./node.ts";

/** A value under way: what it is made of and what kind of quantity it is. */
export interface Term {
  readonly node: Node;
  readonly dimension: Dimension;
  /** A temperature in °C, which is a point on a scale and no difference. */
  readonly isPoint: boolean;
  /** Unit to print it in, without prefix: `N·m`, `%`, `°C`. */
  readonly unit: string;
  /** Fewest significant figures among its inputs; infinite where all are exact. */
  readonly figures: number;
}

/** What a figure is worth, in the coherent SI unit; temperatures as points in °C. */
export interface FigureValue extends Term {
  readonly nominal: number;
  /** Worst case: the least and the greatest for all inputs within their tolerances. */
  readonly min: number;
  readonly max: number;
}

/** A formula used outside the range where it holds. */
export interface FigureWarning {
  readonly span: FigureProblem["span"];
  readonly message: string;
}

export function figureValue(term: Term): FigureValue {
  const { node, dimension, isPoint, unit, figures } = term;
  const { low, high } = node.range;
  return { node, dimension, isPoint, unit, figures, nominal: node.nominal, min: low, max: high };
}

/** Whether a value can be given in a unit: `hasUnit(value, "W")` of any power. */
export function hasUnit({ dimension, isPoint }: Kind, unit: string): boolean {
  const wanted = kindOf(unit);
  return isPoint === wanted.isPoint && sameDimension(dimension, wanted.dimension);
}

type Kind = Pick<Term, "dimension" | "isPoint">;

/** Checks ask for few units and very often. */
const KINDS = new Map<string, Kind>();

function kindOf(unit: string): Kind {
  const known = KINDS.get(unit);
  if (known) return known;
  const meaning = readWholeUnit(unit);
  if (!meaning) throw new RangeError(`no unit ${unit}`);
  const kind = { dimension: meaning.dimension, isPoint: meaning.scale === "celsius" };
  KINDS.set(unit, kind);
  return kind;
}

/** Whether two values can be held against each other. */
export function sameKind(a: Kind, b: Kind): boolean {
  return sameDimension(a.dimension, b.dimension) && a.isPoint === b.isPoint;
}

/**
 * The same value as an input of its own. It no longer varies together with what it was made of, so
 * what is computed from it can only come out wider.
 */
export function detached(value: FigureValue): Term {
  const { dimension, isPoint, unit, figures } = value;
  const node = Node.input(value.nominal, value.min, value.max);
  return { node, dimension, isPoint, unit, figures };
}
