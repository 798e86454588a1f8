/** A page as a tree of stages, steps and hazard notes, each with the stretch of text it covers. */
import type { GuideState } from "../model/guideState.ts";
import type { PieceNode, StepNode } from "../model/pieceNode.ts";
import type { StageNode } from "../model/stageNode.ts";
import type { NoteFact } from "../syntax/facts.ts";
import { type Span, shift } from "../text/span.ts";
import type { TextSource } from "../text/textSource.ts";

export interface Section {
  readonly of: SectionOf;
  /** With all that belongs to it, up to the last text before what follows. Counts in the page. */
  readonly span: Span;
  /** The heading, the step's own block, or the note. */
  readonly opening: Span;
  readonly inner: readonly Section[];
}

export type SectionOf =
  /** `stage` is undefined for a level-2 heading without steps. */
  | { readonly kind: "stage"; readonly title: string; readonly stage: StageNode | undefined }
  | { readonly kind: "step"; readonly step: StepNode }
  | { readonly kind: "note"; readonly note: NoteFact };

/** Kept while the pieces are the same: the outline and the folds are asked for after each other. */
const KNOWN = new WeakMap<readonly PieceNode[], { uri: string; sections: readonly Section[] }>();

/** The sections of a page, in order; steps before its first heading come as they are. */
export function sectionsOf(guide: GuideState, uri: string): readonly Section[] {
  const known = KNOWN.get(guide.pieces);
  if (known?.uri === uri) return known.sections;
  const sections = readSections(guide, uri);
  KNOWN.set(guide.pieces, { uri, sections });
  return sections;
}

function readSections(guide: GuideState, uri: string): readonly Section[] {
  const page = guide.pages.find((one) => one.uri === uri);
  if (!page) return [];
  const builder = new Builder(page.text, stagesByHeading(guide));
  for (const piece of guide.pieces) if (piece.page === page) builder.take(piece);
  return builder.finish();
}

function stagesByHeading(guide: GuideState): ReadonlyMap<object, StageNode> {
  return new Map(
    guide.stages.flatMap((stage) => (stage.heading ? [[stage.heading.fact, stage]] : [])),
  );
}

interface Open {
  readonly of: SectionOf;
  readonly depth: number;
  readonly opening: Span;
  readonly inner: Section[];
}

class Builder {
  readonly #text: TextSource;
  readonly #stages: ReadonlyMap<object, StageNode>;
  readonly #sections: Section[] = [];
  readonly #open: Open[] = [];

  constructor(text: TextSource, stages: ReadonlyMap<object, StageNode>) {
    this.#text = text;
    this.#stages = stages;
  }

  take(piece: PieceNode): void {
    let next = 0;
    for (const fact of piece.facts.facts) {
      if (fact.kind === "heading") this.#heading(fact, shift(fact.span, piece.start));
      else if (fact.kind === "note") this.#note(fact, shift(fact.span, piece.start));
      else if (fact.kind === "comment" && !fact.inline) {
        // It concerns the step that follows.
        this.#close(1, piece.start + fact.span.start);
      } else if (fact.kind === "step" && piece.steps[next]?.fact === fact) {
        const step = piece.steps[next++]!;
        const opening = shift(fact.span, piece.start);
        this.#enter({ of: { kind: "step", step }, depth: step.path.length, opening, inner: [] });
      }
    }
  }

  finish(): readonly Section[] {
    this.#close(0, this.#text.length);
    return this.#sections;
  }

  #heading(fact: { level: number; title: string }, opening: Span): void {
    if (fact.level !== 2) {
      this.#close(fact.level === 1 ? 0 : 1, opening.start);
      return;
    }
    const stage = this.#stages.get(fact);
    const of: SectionOf = {
      kind: "stage",
      title: fact.title,
      stage: stage && stage.steps.length > 0 ? stage : undefined,
    };
    this.#enter({ of, depth: 0, opening, inner: [] });
  }

  #note(note: NoteFact, span: Span): void {
    const within = this.#open.findLast(
      ({ of, opening }) => of.kind === "step" && span.start < opening.end,
    );
    if (!within) this.#close(1, span.start);
    this.#add({ of: { kind: "note", note }, span, opening: span, inner: [] });
  }

  #enter(open: Open): void {
    this.#close(open.depth, open.opening.start);
    this.#open.push(open);
  }

  /** Ends what is open at the depth and below. */
  #close(depth: number, at: number): void {
    while (this.#open.length > 0 && this.#open.at(-1)!.depth >= depth) {
      const { of, opening, inner } = this.#open.pop()!;
      const end = Math.max(opening.start, endOfWords(this.#text, at));
      this.#add({ of, span: { start: opening.start, end }, opening, inner });
    }
  }

  #add(section: Section): void {
    (this.#open.at(-1)?.inner ?? this.#sections).push(section);
  }
}

/** The end of the last word before the offset. */
function endOfWords(text: TextSource, at: number): number {
  let end = at;
  while (end > 0 && isSpace(text.charCodeAt(end - 1))) end--;
  return end;
}

function isSpace(code: number): boolean {
  return code === 32 || code === 9 || code === 10 || code === 13;
}
