/** A figure at its place in the guide. */
import type { Evaluation } from "../../quantity/evaluation/evaluate.ts";
import type { Figure } from "../../syntax/dialect.ts";
import type { Span } from "../../text/span.ts";
import type { Anchor } from "../guide.ts";
import type { Part } from "../parts.ts";
import type { PieceNode, StepNode } from "../pieceNode.ts";
import type { Cell } from "./cell.ts";
import type { FigureRole, GuideFigure } from "./figure.ts";
import { type FigurePart, textOfPart } from "./formula.ts";
import type { Variable } from "./variable.ts";

/** Where a figure stands: in a piece, or in the front matter. */
export type Home =
  | {
      readonly piece: PieceNode;
      readonly step: StepNode | undefined;
      /** Position among the figures of its piece. */
      readonly index: number;
    }
  | { readonly uri: string; readonly section: "supply" | "figures"; readonly index: number };

/** The sums that a figure consists of. */
export interface Cells {
  readonly expression?: Cell;
  readonly stated?: Cell;
}

export class FigurePlace implements GuideFigure {
  /** Of the front matter: its spans follow edits there. */
  figure: Figure;
  home: Home;
  readonly board: string | undefined;
  /** What its name means; undefined where it has none. */
  readonly variable: Variable | undefined;
  readonly parts: readonly (Part | undefined)[];
  readonly listed: Part | undefined;
  readonly cells: Cells;

  constructor(
    figure: Figure,
    home: Home,
    board: string | undefined,
    name: {
      readonly variable: Variable | undefined;
      readonly parts: readonly (Part | undefined)[];
      readonly listed: Part | undefined;
    },
    cells: Cells,
  ) {
    this.figure = figure;
    this.home = home;
    this.board = board;
    this.variable = name.variable;
    this.parts = name.parts;
    this.listed = name.listed;
    this.cells = cells;
  }

  get key(): string | undefined {
    return this.variable?.key;
  }

  get piece(): PieceNode | undefined {
    return "piece" in this.home ? this.home.piece : undefined;
  }

  get step(): StepNode | undefined {
    return "piece" in this.home ? this.home.step : undefined;
  }

  get isRail(): boolean {
    return "section" in this.home && this.home.section === "supply";
  }

  get evaluation(): Evaluation | undefined {
    return this.cells.expression?.evaluation;
  }

  get stated(): Evaluation | undefined {
    return this.cells.stated?.evaluation;
  }

  get formula() {
    return this.cells.expression?.formula;
  }

  get statedFormula() {
    return this.cells.stated?.formula;
  }

  get definition(): FigurePlace | undefined {
    return this.variable?.definition;
  }

  get role(): FigureRole {
    if (!this.variable) return "sum";
    if (this.figure.reading) return "reading";
    if (this.listed) return "listed";
    if (this.definition === this) return "definition";
    return this.rank! <= 1 ? "second" : "stated";
  }

  /** How well it defines its name, 0 best; undefined where it defines nothing. */
  get rank(): number | undefined {
    const { reading } = this.figure;
    if (this.listed) return undefined;
    if (reading) return reading.limit === "value" || reading.limit === "between" ? 3 : undefined;
    if ("section" in this.home) return 0;
    return this.formula?.isQuantity ? 2 : 1;
  }

  precedes(other: FigurePlace): boolean {
    if (this.rank !== other.rank) return this.rank! < other.rank!;
    return (
      this.#order < other.#order || (this.#order === other.#order && this.#index < other.#index)
    );
  }

  /** Document order: negative when this comes first. */
  compare(other: FigurePlace): number {
    return this.#order - other.#order || this.#index - other.#index;
  }

  at(part?: FigurePart, span?: Span): Anchor {
    if ("piece" in this.home) return { piece: this.home.piece, span: this.spanOf(part, span) };
    const spanNow = () => this.spanOf(part, span);
    return {
      uri: this.home.uri,
      get span() {
        return spanNow();
      },
    };
  }

  spanOf(part?: FigurePart, span?: Span): Span {
    const text = part && textOfPart(this.figure, part);
    if (!text) return this.figure.span;
    if (!span) return text.span;
    const { offsets } = text;
    if (!offsets) {
      return { start: text.span.start + span.start, end: text.span.start + span.end };
    }
    return { start: offsets[span.start]!, end: offsets[span.end]! };
  }

  /** Before the pieces: the front matter, supply first. */
  get #order(): number {
    if ("piece" in this.home) return this.home.piece.order;
    return this.home.section === "supply" ? -2 : -1;
  }

  get #index(): number {
    return this.home.index;
  }
}
