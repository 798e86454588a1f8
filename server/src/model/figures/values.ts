/** Values for the names that sums use: from figures, and from the parts list. */
import { type Evaluation, evaluate } from "../../quantity/evaluation/evaluate.ts";
import { Node } from "../../quantity/evaluation/node.ts";
import { detached, type Term } from "../../quantity/evaluation/value.ts";
import type { NameUse } from "../../quantity/expression/tree.ts";
import { FigureError } from "../../quantity/problem.ts";
import { toleranceLimits } from "../../quantity/tolerance.ts";
import { readWholeUnit } from "../../quantity/unitText.ts";
import type { Unit } from "../../quantity/value.ts";
import { TRADE_FUNCTIONS } from "../../trade/functions/all.ts";
import type { Kit } from "../kit.ts";
import type { Part } from "../parts.ts";
import type { Cell, Source } from "./cell.ts";
import { partOfSubject } from "./names.ts";
import type { FigurePlace } from "./place.ts";

/** A value that hangs on more nodes than this is used as an input of its own. */
const MOST_NODES = 500;

/** Symbols that, with a part as subject, mean its listed value where no figure defines them. */
const LISTED_SYMBOLS: { readonly [symbol: string]: Unit } = { R: "Ω", C: "F", L: "H" };

/** The part whose listed value a name means where no figure defines it. */
export function listedPart(
  { symbol, subjects, board: named }: Pick<NameUse, "symbol" | "subjects" | "board">,
  kit: Kit,
  board: string | undefined,
): Part | undefined {
  if (subjects.length === 0) return kit.find(symbol, named, board).part;
  const unit = LISTED_SYMBOLS[symbol];
  if (!unit || subjects.length > 1) return undefined;
  const part = partOfSubject(subjects[0]!.text, kit, board);
  return part?.line.value?.unit === unit ? part : undefined;
}

/** Computes sums, with what their names stand for now. */
export class Values {
  readonly #ofParts = new Map<Part, Term | undefined>();
  readonly #detached = new WeakMap<object, Term>();

  evaluate({ formula, sources }: Cell): Evaluation {
    return evaluate(formula, {
      functions: TRADE_FUNCTIONS,
      resolve: (use) => this.#valueOf(sources.get(use)!, use),
      unknown: ({ span, symbol }) =>
        new FigureError({ kind: "name", span, message: `${symbol} is not known.` }),
    });
  }

  #valueOf({ variable, part }: Source, use: NameUse): Term | undefined {
    if (variable.definition) return this.#ofFigure(variable.definition, use);
    return part && this.#ofPart(part, use);
  }

  #ofFigure(definition: FigurePlace, { span, symbol }: NameUse): Term {
    const evaluation = definition.evaluation!;
    const { value } = evaluation;
    if (!value) {
      const message = `${symbol} has no value, for a reason that is told where it is defined.`;
      throw new FigureError({ kind: "waits", span, message });
    }
    if (evaluation.size <= MOST_NODES) return value;
    // One input for all who use it, so that it still counts once among them.
    const known = this.#detached.get(evaluation) ?? detached(value);
    this.#detached.set(evaluation, known);
    return known;
  }

  #ofPart(part: Part, { span }: NameUse): Term {
    if (!this.#ofParts.has(part)) this.#ofParts.set(part, termOfPart(part));
    const term = this.#ofParts.get(part);
    if (term) return term;
    throw new FigureError({
      kind: "form",
      span,
      message: `The parts list gives no value for ${part.name} that can be computed with. Correct its line, or define a figure for what you need.`,
    });
  }
}

/** Significant figures of a listed value: 4.9152 MHz has five, 10 kΩ is taken to three. */
function figuresOf(amount: number): number {
  return Math.max(
    3,
    amount
      .toPrecision(9)
      .replace(/e.*|\D/g, "")
      .replace(/^0+|0+$/g, "").length,
  );
}

/** A part's listed value with its listed tolerance; without one it is taken as exact. */
function termOfPart({ line }: Part): Term | undefined {
  const { value, tolerance } = line;
  const unit = value && readWholeUnit(value.unit);
  if (!value || !unit) return undefined;
  const { amount } = value;
  const limits = tolerance === undefined ? undefined : toleranceLimits(tolerance, amount);
  return {
    node: limits ? Node.input(amount, limits.min, limits.max) : Node.constant(amount),
    dimension: unit.dimension,
    isPoint: false,
    unit: unit.coherent,
    figures: figuresOf(amount),
  };
}
