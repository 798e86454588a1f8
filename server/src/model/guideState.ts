/**
 * A guide kept current under edits. After an edit only the pieces it touched are looked up again;
 * the walk over all pieces compares identities and does no other work for what has not changed.
 */
import type { PictureFact, PieceFacts } from "../syntax/facts.ts";
import type { FrontMatter } from "../syntax/frontMatter.ts";
import type { Piece } from "../syntax/pieces.ts";
import { type Language, languageOf } from "../text/language.ts";
import { closingHeading, openingHeading } from "./bareHeading.ts";
import { DependentSets } from "./dependentSets.ts";
import { type FigureChanges, FigureSheet } from "./figures/sheet.ts";
import type { BareHeading, Guide, GuideSettings, Page, Step, Use } from "./guide.ts";
import type { GuideChanges } from "./guideChanges.ts";
import type { GuidePage } from "./guidePage.ts";
import type { Kit } from "./kit.ts";
import { LabelIndex } from "./labelIndex.ts";
import type { ListLine } from "./list/partsList.ts";
import type { Part, Supply } from "./parts.ts";
import { inOrder, type Label, PieceNode, type StepNode, UseNode } from "./pieceNode.ts";
import { ProseShelf } from "./prose.ts";
import { buildStages, numberedAlike, type StageNode } from "./stageNode.ts";
import { ThingIndex } from "./tools/thingIndex.ts";
import { UseIndex } from "./useIndex.ts";

/** Of which parts findings other than `missing-part` tell; `edition` changes with them. */
export interface Explanations {
  has(part: Part): boolean;
  readonly edition: number;
}

export class GuideState implements Guide {
  readonly pages: readonly GuidePage[];
  readonly settings: GuideSettings;
  stages: readonly StageNode[] = [];
  /** Another object whenever steps are numbered anew. */
  numbering: object = {};
  pieces: readonly PieceNode[] = [];
  /** Set by whoever runs the checks. */
  explanations: Explanations = { has: () => false, edition: 0 };
  /** Set by whoever knows the files. */
  missesPicture: (pageUri: string, address: string) => boolean = () => false;
  #kit: Kit;
  #index: UseIndex;
  #nodes = new Map<Piece<PieceFacts>, PieceNode>();
  readonly #sets: DependentSets;
  readonly #labels = new LabelIndex();
  /** Pieces that end with a heading. */
  #bare = new Set<PieceNode>();
  #pictured = new Set<PieceNode>();
  #unexplained: { missing: readonly Part[]; edition: number; parts: readonly Part[] } | undefined;
  #fresh = true;
  readonly #shelf = new ProseShelf();
  readonly things: ThingIndex;
  readonly figures: FigureSheet;

  constructor(pages: readonly GuidePage[], kit: Kit, settings: GuideSettings) {
    this.pages = pages;
    this.settings = settings;
    this.#kit = kit;
    this.#index = new UseIndex(kit.parts);
    this.#sets = new DependentSets(kit, this.#index);
    this.things = new ThingIndex(this.language);
    this.figures = new FigureSheet(kit);
  }

  get kit(): Kit {
    return this.#kit;
  }

  get frontMatter(): FrontMatter {
    return this.pages[0]!.frontMatter!;
  }

  get language(): Language | undefined {
    const { language } = this.frontMatter;
    return language ? languageOf(language.value) : "en";
  }

  get lists() {
    return this.#kit.lists;
  }

  get parts() {
    return this.#kit.parts;
  }

  get hardware() {
    return this.#kit.hardware;
  }

  get boards() {
    return this.#kit.boards;
  }

  get missing(): readonly Part[] {
    return this.#index.missing;
  }

  get unexplained(): readonly Part[] {
    const { missing } = this.#index;
    const { edition } = this.explanations;
    const known = this.#unexplained;
    if (known?.missing === missing && known.edition === edition) return known.parts;
    const parts = missing.filter((part) => !this.explained(part));
    this.#unexplained = { missing, edition, parts };
    return parts;
  }

  get reachesEnd(): boolean {
    for (let i = this.stages.length - 1; i >= 0; i--) {
      const stage = this.stages[i]!;
      if (stage.steps.length > 0) return true;
      if (stage.heading && isBlank(stage)) return false;
    }
    return false;
  }

  uses(supply: Supply): readonly UseNode[] {
    return this.#index.of(supply);
  }

  find(name: string, board?: string): Part | undefined {
    return this.#kit.find(name, board).part;
  }

  nearest(name: string, board?: string): readonly string[] {
    return this.#kit.nearest(name, board);
  }

  partsOf(line: ListLine): readonly Part[] {
    return this.#kit.partsOf(line);
  }

  socketOf(chip: Part): Part | undefined {
    return this.#kit.socketOf(chip);
  }

  chipOf(socket: Part): Part | undefined {
    return this.#kit.chipOf(socket);
  }

  explained(part: Part): boolean {
    return this.explanations.has(part);
  }

  compare(a: Use | Step, b: Use | Step): number {
    const [one, other] = [a as UseNode | StepNode, b as UseNode | StepNode];
    if (one instanceof UseNode && other instanceof UseNode) {
      return one.step.piece.order - other.step.piece.order || one.index - other.index;
    }
    const [first, second] = [stepOf(one), stepOf(other)];
    return first.piece.order - second.piece.order || first.index - second.index;
  }

  *pictures(): Generator<{ piece: PieceNode; fact: PictureFact }, void, void> {
    for (const piece of this.#pictured) {
      for (const fact of piece.facts.facts) if (fact.kind === "picture") yield { piece, fact };
    }
  }

  isMissingPicture(page: Page, address: string): boolean {
    return this.missesPicture(page.uri, address);
  }

  *bareHeadings(): Generator<BareHeading, void, void> {
    for (const piece of inOrder(this.#bare)) {
      const following = this.pieces[piece.order + 1];
      const next = following && openingHeading(following);
      yield { piece, fact: closingHeading(piece)!, next };
    }
  }

  labels(name: string): readonly Label[] {
    return this.#labels.named(name);
  }

  labelNames(): Iterable<string> {
    return this.#labels.names();
  }

  references(): Iterable<Label> {
    return this.#labels.references();
  }

  /** Brings pieces, stages and uses up to date with the pages, which must be read to their end. */
  update(): GuideChanges {
    const retired: PieceNode[] = [];
    const admitted: PieceNode[] = [];
    const all = this.#fresh;
    this.#fresh = false;
    for (const page of this.pages) {
      for (const piece of page.sequence.takeChanges().removed) this.#retire(piece, retired);
    }
    this.#walk(retired, admitted);
    const before = this.stages;
    this.stages = buildStages(this.pieces, before[0]);
    const settled = this.#sets.settle();
    if (settled.size > 0) this.stages = buildStages(this.pieces, before[0]);
    if (!numberedAlike(before, this.stages)) this.numbering = {};
    // What their marks mean is new, though their text is not.
    const anew = [...new Set([...admitted, ...settled])];
    const figures = this.#updateFigures(retired, admitted, settled);
    const supplies = this.#index.takeChanged();
    this.#markStages(supplies);
    return { all, retired, admitted: anew, supplies, figures };
  }

  /** Tells the stages that use one of the supplies. */
  #markStages(supplies: ReadonlySet<Supply>): void {
    const state = {};
    for (const supply of supplies) {
      for (const { step } of this.uses(supply)) (step.stage as StageNode).supplyState = state;
    }
  }

  #updateFigures(
    retired: readonly PieceNode[],
    admitted: readonly PieceNode[],
    settled: Iterable<PieceNode>,
  ): FigureChanges {
    const { gone, changed } = this.figures.update(
      retired,
      admitted,
      this.pages[0]!,
      this.frontMatter,
    );
    const withSets = [...settled].flatMap((piece) => this.figures.ofPiece(piece));
    return { gone, changed: new Set([...changed, ...withSets]) };
  }

  #walk(retired: PieceNode[], admitted: PieceNode[]): void {
    const pieces: PieceNode[] = [];
    let board: string | undefined;
    for (const page of this.pages) {
      for (const cut of page.sequence.pieces) {
        let node = this.#nodes.get(cut);
        if (!node || node.boardBefore !== board) {
          if (node) this.#retire(cut, retired);
          node = this.#admit(page, cut, board);
          admitted.push(node);
        }
        node.order = pieces.length;
        board = node.boardAfter;
        pieces.push(node);
      }
    }
    this.pieces = pieces;
  }

  #admit(page: GuidePage, cut: Piece<PieceFacts>, board: string | undefined): PieceNode {
    const node = new PieceNode(page, cut, this.#kit, this.#shelf, board);
    this.#nodes.set(cut, node);
    this.#index.add(node.uses);
    this.things.add(node);
    if (closingHeading(node)) this.#bare.add(node);
    if (node.facts.facts.some(({ kind }) => kind === "picture")) this.#pictured.add(node);
    this.#sets.add(node);
    this.#labels.add(node);
    return node;
  }

  #retire(cut: Piece<PieceFacts>, retired: PieceNode[]): void {
    const node = this.#nodes.get(cut);
    if (!node) return;
    this.#nodes.delete(cut);
    this.#index.remove(node.uses);
    this.things.remove(node);
    this.#bare.delete(node);
    this.#pictured.delete(node);
    this.#sets.remove(node);
    this.#labels.remove(node);
    retired.push(node);
  }
}

function stepOf(node: UseNode | StepNode): StepNode {
  return node instanceof UseNode ? node.step : node;
}

/** Whether nothing but the heading stands in the stage yet. */
function isBlank(stage: StageNode): boolean {
  const { piece, fact } = stage.heading!;
  const rest = piece.page.text.slice(piece.start + fact.span.end, piece.start + piece.length);
  const last = stage.slices.at(-1)?.piece ?? piece;
  return last === piece && rest.trim() === "";
}
