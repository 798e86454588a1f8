/**
 * One sum of the guide: what is written, what names it uses, and what came of it. Equal texts of one
 * name share a cell, so a step that is typed in keeps the values of its figures.
 */
import type { Evaluation } from "../../quantity/evaluation/evaluate.ts";
import type { NameUse } from "../../quantity/expression/tree.ts";
import type { Part } from "../parts.ts";
import type { Formula } from "./formula.ts";
import type { FigurePlace } from "./place.ts";
import type { Variable } from "./variable.ts";

/** Where a name in a sum gets its value from. */
export interface Source {
  readonly variable: Variable;
  /** The part whose listed value it means where no figure defines the variable. */
  readonly part: Part | undefined;
}

export class Cell {
  readonly key: string;
  readonly formula: Formula;
  /** For each name in it; looked up once, since a rail that changes computes it again and again. */
  readonly sources: ReadonlyMap<NameUse, Source>;
  /** What its names stand for, defined or not. */
  readonly inputs: readonly Variable[];
  /** Where it is written. */
  readonly places = new Set<FigurePlace>();
  evaluation: Evaluation = NOTHING;

  constructor(key: string, formula: Formula, sources: ReadonlyMap<NameUse, Source>) {
    this.key = key;
    this.formula = formula;
    this.sources = sources;
    this.inputs = [...new Set([...sources.values()].map(({ variable }) => variable))];
  }
}

const NOTHING: Evaluation = { warnings: [], size: 0 };
