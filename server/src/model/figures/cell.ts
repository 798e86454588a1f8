/**
 * One sum of the guide: what is written, what names it uses, and what came of it. Equal texts of one
 * name share a cell, so a step that is typed in keeps the values of its figures.
 */
import type { Evaluation } from "../../quantity/evaluation/evaluate.ts";
import type { Formula } from "./formula.ts";
import type { FigurePlace } from "./place.ts";
import type { Variable } from "./variable.ts";

export class Cell {
  readonly key: string;
  readonly formula: Formula;
  /** Board that bare designators in it mean. */
  readonly board: string | undefined;
  /** What its names stand for, defined or not. */
  readonly inputs: readonly Variable[];
  /** Where it is written. */
  readonly places = new Set<FigurePlace>();
  evaluation: Evaluation = NOTHING;

  constructor(
    key: string,
    formula: Formula,
    board: string | undefined,
    inputs: readonly Variable[],
  ) {
    this.key = key;
    this.formula = formula;
    this.board = board;
    this.inputs = inputs;
  }
}

const NOTHING: Evaluation = { warnings: [], size: 0 };
