/** A piece of a guide with its steps and marks looked up against one state of the parts lists. */

import type { Figure, PartMark, Role } from "../syntax/dialect.ts";
import type {
  CommentFact,
  Fact,
  HeadingFact,
  NoteFact,
  PieceFacts,
  StepFact,
  TextFact,
} from "../syntax/facts.ts";
import type { Piece } from "../syntax/pieces.ts";
import type { Span } from "../text/span.ts";
import type { GuidePiece, Page, ResolvedItem, ResolvedMark, Stage, Step, Use } from "./guide.ts";
import type { Kit } from "./kit.ts";
import type { Supply } from "./parts.ts";
import type { ProseShelf, TextBlock } from "./prose.ts";
import { amountOf, isDynamic, resolveItem, spanOfSupply } from "./resolve.ts";

/** What stands in a piece, in order, as far as stages are built from it. */
export type Entry =
  | { readonly kind: "heading"; readonly fact: HeadingFact }
  /** A heading of level 1. */
  | { readonly kind: "title" }
  | { readonly kind: "step"; readonly step: StepNode }
  | { readonly kind: "head"; readonly fact: CommentFact | NoteFact }
  /** Text outside the steps. */
  | { readonly kind: "text"; readonly fact: TextFact }
  | { readonly kind: "reading" };

export class StepNode implements Step {
  readonly piece: PieceNode;
  readonly fact: StepFact;
  readonly index: number;
  readonly marks: MarkNode[] = [];
  stage!: Stage;
  /** Its number below the stage: `[2]` for a step, `[2, 1]` for a sub-step. */
  path: readonly number[] = [];

  constructor(piece: PieceNode, fact: StepFact, index: number) {
    this.piece = piece;
    this.fact = fact;
    this.index = index;
  }

  get prose(): readonly TextBlock[] {
    return this.piece.proseOf(this);
  }

  get number(): string {
    return [this.stage.number, ...this.path].join(".");
  }
}

export class UseNode implements Use {
  constructor(
    readonly supply: Supply,
    readonly role: Role,
    readonly resolved: ResolvedMark,
    readonly item: ResolvedItem["item"],
    readonly span: Span,
    readonly step: StepNode,
    readonly count: number | undefined,
    readonly metres: number | undefined,
    /** Position among the uses of its piece. */
    readonly index: number,
  ) {}
}

export interface Label {
  readonly name: string;
  readonly piece: PieceNode;
  readonly span: Span;
  readonly step: Step | undefined;
}

/** A figure with the step and the board it stands under. */
export interface PlacedFigure {
  readonly figure: Figure;
  readonly step: StepNode | undefined;
  readonly board: string | undefined;
}

/** A heading that opens a stage. */
export interface Opening {
  /** Its place among the entries. */
  readonly place: number;
  readonly fact: HeadingFact;
  /** The stage as it was built last. */
  stage?: Stage;
}

/** An item whose meaning depends on other marks. */
export interface DynamicItem {
  readonly mark: MarkNode;
  readonly place: number;
}

export class MarkNode implements ResolvedMark {
  readonly piece: PieceNode;
  readonly mark: PartMark;
  readonly step: StepNode | undefined;
  readonly items: ResolvedItem[];

  constructor(piece: PieceNode, mark: PartMark, step: StepNode | undefined, items: ResolvedItem[]) {
    this.piece = piece;
    this.mark = mark;
    this.step = step;
    this.items = items;
  }
}

export class PieceNode implements GuidePiece {
  readonly page: Page;
  readonly cut: Piece<PieceFacts>;
  readonly kit: Kit;
  readonly #shelf: ProseShelf;
  /** Board in force where the piece begins, and where it ends. */
  readonly boardBefore: string | undefined;
  boardAfter: string | undefined;
  order = 0;
  readonly entries: Entry[] = [];
  /** The headings that open stages. */
  readonly headings: Opening[] = [];
  readonly steps: StepNode[] = [];
  readonly marks: MarkNode[] = [];
  readonly labels: Label[] = [];
  readonly references: Label[] = [];
  readonly dynamic: DynamicItem[] = [];
  readonly figures: PlacedFigure[] = [];
  uses: UseNode[] = [];
  /** The step that is open where facts are taken; a heading closes it. */
  #step: StepNode | undefined;

  constructor(
    page: Page,
    cut: Piece<PieceFacts>,
    kit: Kit,
    shelf: ProseShelf,
    board: string | undefined,
  ) {
    this.page = page;
    this.cut = cut;
    this.kit = kit;
    this.#shelf = shelf;
    this.boardBefore = board;
    this.boardAfter = board;
    const { facts } = cut.digest;
    for (const [index, fact] of facts.entries()) this.#take(fact, facts, index);
    this.uses = this.listUses();
  }

  get start(): number {
    return this.cut.start;
  }

  get length(): number {
    return this.cut.length;
  }

  get facts(): PieceFacts {
    return this.cut.digest;
  }

  get prose(): readonly TextBlock[] {
    return this.#shelf.of(this).blocks;
  }

  proseOf(step: StepNode): readonly TextBlock[] {
    return this.#shelf.of(this).ofStep(step);
  }

  /** The uses that the items of the marks amount to now. */
  listUses(): UseNode[] {
    const uses: UseNode[] = [];
    for (const mark of this.marks) {
      if (!mark.step) continue;
      for (const item of mark.items) {
        const { count, metres } = amountOf(item.item);
        for (const supply of item.supplies) {
          const span = spanOfSupply(item.item, supply);
          uses.push(
            new UseNode(
              supply,
              mark.mark.role,
              mark,
              item.item,
              span,
              mark.step,
              count,
              metres,
              uses.length,
            ),
          );
        }
      }
    }
    return uses;
  }

  #take(fact: Fact, facts: readonly Fact[], index: number): void {
    switch (fact.kind) {
      case "heading":
        this.#step = undefined;
        if (fact.level === 1) this.entries.push({ kind: "title" });
        if (fact.level === 2) {
          this.boardAfter = undefined;
          this.headings.push({ place: this.entries.length, fact });
          this.entries.push({ kind: "heading", fact });
        }
        return;
      case "step":
        if (fact.certain || this.#knowsWord(facts, index)) this.#openStep(fact);
        return;
      case "mark":
        this.#addMark(fact.mark);
        return;
      case "figure":
        this.figures.push({ figure: fact.figure, step: this.#step, board: this.boardAfter });
        if (fact.figure.reading) this.entries.push({ kind: "reading" });
        return;
      case "comment":
        if (fact.comment.kind === "board") this.boardAfter = fact.comment.board;
        this.entries.push({ kind: "head", fact });
        return;
      case "note":
        this.entries.push({ kind: "head", fact });
        return;
      case "text":
        if (!this.#step) this.entries.push({ kind: "text", fact });
        return;
      case "mention":
      case "row":
      case "picture":
        return;
    }
  }

  #openStep(fact: StepFact): void {
    const step = new StepNode(this, fact, this.steps.length);
    this.steps.push(step);
    this.#step = step;
    this.entries.push({ kind: "step", step });
  }

  /** Whether a bare word of the block that opens at `index` is a part. */
  #knowsWord(facts: readonly Fact[], index: number): boolean {
    for (let i = index + 1; i < facts.length; i++) {
      const fact = facts[i]!;
      if (fact.kind === "step" || fact.kind === "heading") return false;
      if (fact.kind !== "mark" || fact.mark.certain) continue;
      const [item] = fact.mark.items;
      if (item?.kind === "part" && this.kit.find(item.name, item.board, this.boardAfter).part) {
        return true;
      }
    }
    return false;
  }

  #addMark(mark: PartMark): void {
    const step = this.#step;
    if (mark.role === "label" || mark.role === "see") {
      const list = mark.role === "label" ? this.labels : this.references;
      for (const item of mark.items) {
        if (item.kind === "text")
          list.push({ name: item.text, piece: this, span: item.span, step });
      }
    }
    const items = mark.items.map((item) => resolveItem(item, mark, this.kit, this.boardAfter));
    if (!mark.certain && items.every((item) => item.supplies.length === 0)) return;
    const node = new MarkNode(this, mark, step, items);
    this.marks.push(node);
    step?.marks.push(node);
    for (const [place, item] of mark.items.entries()) {
      if (isDynamic(item, this.kit)) this.dynamic.push({ mark: node, place });
    }
  }
}

/** Pieces in the order of the document. */
export function inOrder(pieces: ReadonlySet<PieceNode>): PieceNode[] {
  return [...pieces].sort((a, b) => a.order - b.order);
}
