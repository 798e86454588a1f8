/** Stages as runs of entries over the pieces of a guide. */
import type { CommentFact, HeadingFact, NoteFact, TextFact } from "../syntax/facts.ts";
import type { Remark, Stage, Stretch } from "./guide.ts";
import type { Opening, PieceNode, StepNode, UseNode } from "./pieceNode.ts";

/** Entries `from` to `to` of a piece, and the uses it had when the stage was built. */
export interface Slice {
  readonly piece: PieceNode;
  readonly from: number;
  readonly to: number;
  readonly uses: readonly UseNode[];
}

export interface StageHeading {
  readonly piece: PieceNode;
  readonly fact: HeadingFact;
}

/** A comment that allows findings of one check, and for what it holds. */
export interface Allow {
  readonly piece: PieceNode;
  readonly fact: CommentFact;
  readonly code: string;
  /** The step it stands above or in; undefined at the stage's head, where it holds for the stage. */
  readonly step: StepNode | undefined;
  /** Stands below the last step of the stage, so that it concerns nothing. */
  readonly idle: boolean;
}

export class StageNode implements Stage {
  number = 0;
  readonly heading: StageHeading | undefined;
  readonly slices: readonly Slice[];
  readonly steps: StepNode[] = [];
  readonly head: { piece: PieceNode; fact: CommentFact | NoteFact }[] = [];
  readonly allows: Allow[] = [];
  board: string | undefined;
  hasReading = false;
  readonly remarks: Remark[] = [];
  /** Another object whenever the uses of a supply that it uses have changed, in any stage. */
  supplyState: object = {};

  constructor(heading: StageHeading | undefined, slices: readonly Slice[]) {
    this.heading = heading;
    this.slices = slices;
    const waiting: { piece: PieceNode; fact: CommentFact }[] = [];
    const counters: number[] = [];
    for (const slice of slices) this.#read(slice, waiting, counters);
    for (const { piece, fact } of waiting) this.#allow(piece, fact, undefined, true);
  }

  get stretches(): readonly Stretch[] {
    return this.slices.map(({ piece, from, to }) => ({
      piece,
      start: from === 0 ? 0 : headingAt(piece, from),
      end: to === piece.entries.length ? piece.length : headingAt(piece, to),
    }));
  }

  /** Uses of the stage in document order. */
  *uses(): Generator<UseNode, void, void> {
    for (const { piece, from, to } of this.slices) {
      const whole = from === 0 && to === piece.entries.length;
      if (whole) yield* piece.uses;
      else yield* piece.uses.filter((use) => use.step.stage === this);
    }
  }

  #read(
    { piece, from, to }: Slice,
    waiting: { piece: PieceNode; fact: CommentFact }[],
    counters: number[],
  ): void {
    for (let i = from; i < to; i++) {
      const entry = piece.entries[i]!;
      if (entry.kind === "reading") this.hasReading = true;
      else if (entry.kind === "text") this.#remark(piece, entry.fact);
      else if (entry.kind === "head") this.#comment(piece, entry.fact, waiting);
      else if (entry.kind === "step") {
        this.#number(entry.step, counters);
        for (const comment of waiting.splice(0)) {
          this.#allow(comment.piece, comment.fact, entry.step, false);
        }
      }
    }
  }

  #comment(
    piece: PieceNode,
    fact: CommentFact | NoteFact,
    waiting: { piece: PieceNode; fact: CommentFact }[],
  ): void {
    const step = this.steps.at(-1);
    if (!step) this.head.push({ piece, fact });
    if (fact.kind === "note") this.#remark(piece, fact);
    if (fact.kind !== "comment") return;
    if (fact.comment.kind === "board" && !step) this.board = fact.comment.board;
    if (fact.comment.kind !== "allow") return;
    if (!step) this.#allow(piece, fact, undefined, false);
    else if (fact.inline) this.#allow(piece, fact, step, false);
    else waiting.push({ piece, fact });
  }

  #remark(piece: PieceNode, fact: TextFact | NoteFact): void {
    this.remarks.push({ piece, fact, stepsBefore: this.steps.length });
  }

  #allow(piece: PieceNode, fact: CommentFact, step: StepNode | undefined, idle: boolean): void {
    if (fact.comment.kind !== "allow") return;
    this.allows.push({ piece, fact, code: fact.comment.code, step, idle });
  }

  #number(step: StepNode, counters: number[]): void {
    const depth = Math.min(step.fact.depth, counters.length);
    counters.length = depth + 1;
    counters[depth] = (counters[depth] ?? 0) + 1;
    step.path = counters.slice();
    step.stage = this;
    this.steps.push(step);
  }
}

/** Where the heading stands that opens a stage within a piece. */
function headingAt(piece: PieceNode, index: number): number {
  const entry = piece.entries[index]!;
  return entry.kind === "heading" ? entry.fact.span.start : 0;
}

/**
 * Cuts the pieces of a guide into stages; a stage that has not changed is taken as it was.
 * `first`: the first stage as it was.
 */
export function buildStages(
  pieces: readonly PieceNode[],
  first: StageNode | undefined,
): StageNode[] {
  const stages: StageNode[] = [];
  let home: PieceNode | undefined;
  let opening: Opening | undefined;
  const slices = new SliceList(first?.heading ? undefined : first);
  const close = () => {
    if (!opening && !slices.holdsMoreThanText) return;
    const heading = opening && { piece: home!, fact: opening.fact };
    const stage = slices.stage ?? new StageNode(heading, slices.all);
    if (opening) opening.stage = stage;
    stages.push(stage);
  };
  // Most pieces open no stage, and all of them are gone through at each keystroke.
  for (const piece of pieces) {
    let from = 0;
    for (let i = 0; i < piece.headings.length; i++) {
      const next = piece.headings[i]!;
      slices.add(piece, from, next.place);
      close();
      home = piece;
      opening = next;
      slices.begin(next.stage as StageNode | undefined);
      from = next.place;
    }
    slices.add(piece, from, piece.entries.length);
  }
  close();
  numberStages(stages);
  return stages;
}

/** Never added to: most stages stay as they were and need no slices. */
const NO_SLICES: Slice[] = [];

/** The slices of a stage as they are found, held against those of the stage as it was. */
class SliceList {
  /** Undefined once they differ. */
  #before: StageNode | undefined;
  /** How many are those of `#before`; in a long guide nearly all are, and no others are made. */
  #alike = 0;
  #own: Slice[] = NO_SLICES;

  constructor(before: StageNode | undefined) {
    this.#before = before;
  }

  /** Begins the next stage. */
  begin(before: StageNode | undefined): void {
    this.#before = before;
    this.#alike = 0;
    this.#own = NO_SLICES;
  }

  add(piece: PieceNode, from: number, to: number): void {
    if (to <= from) return;
    const next = this.#before?.slices[this.#alike];
    if (next?.piece === piece && next.uses === piece.uses && next.from === from && next.to === to) {
      this.#alike++;
      return;
    }
    this.#leave();
    if (this.#own === NO_SLICES) this.#own = [];
    this.#own.push({ piece, from, to, uses: piece.uses });
  }

  /** The stage as it was, where it has not changed. */
  get stage(): StageNode | undefined {
    return this.#before?.slices.length === this.#alike ? this.#before : undefined;
  }

  get all(): readonly Slice[] {
    this.#leave();
    return this.#own;
  }

  get holdsMoreThanText(): boolean {
    return this.stage !== undefined || this.all.some(holdsMoreThanText);
  }

  #leave(): void {
    if (!this.#before) return;
    this.#own = this.#before.slices.slice(0, this.#alike);
    this.#before = undefined;
  }
}

/** Text alone before the first heading makes no stage. */
function holdsMoreThanText({ piece, from, to }: Slice): boolean {
  return piece.entries.slice(from, to).some(({ kind }) => kind !== "text");
}

function numberStages(stages: readonly StageNode[]): void {
  let number = 0;
  for (const stage of stages) {
    if (stage.steps.length > 0) number++;
    stage.number = number;
  }
}

/** Whether the steps of both have the same numbers. */
export function numberedAlike(before: readonly StageNode[], after: readonly StageNode[]): boolean {
  return (
    before.length === after.length &&
    before.every((stage, i) => stage === after[i] || sameNumbers(stage.steps, after[i]!.steps))
  );
}

function sameNumbers(a: readonly StepNode[], b: readonly StepNode[]): boolean {
  return (
    a.length === b.length &&
    a.every(({ path }, i) => {
      const other = b[i]!.path;
      return path.length === other.length && path.every((number, depth) => number === other[depth]);
    })
  );
}
