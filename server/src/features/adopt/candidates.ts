/** Where a plain guide may fit parts: runs of designators, and how sure it is that they are fitted there. */
import { actsIn } from "../../checks/wording/actions.ts";
import type { GuidePiece } from "../../model/guide.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { PieceNode } from "../../model/pieceNode.ts";
import type { Sentence, TextBlock } from "../../model/prose.ts";
import type { RowFact } from "../../syntax/facts.ts";
import { contains, type Span } from "../../text/span.ts";
import { ObjectWords } from "./objects.ts";
import { PlacingReader } from "./placing.ts";
import { findRuns, type Run } from "./runs.ts";
import { findSet, type NamedSet } from "./sets.ts";
import type { AdoptLexicon } from "./words.ts";

/** The forms in which guides fit parts, the surest first. */
export const FORMS = ["told to fit", "begins the step", "names the kind", "table"] as const;
export type Form = (typeof FORMS)[number];

export interface Candidate {
  readonly piece: GuidePiece;
  readonly form: Form;
  readonly run: Run;
  /** Put in, and not soldered yet. */
  readonly isPlaced?: boolean;
  /** Fits the socket that bears the chip's designator. */
  readonly isSocket?: boolean;
  /** How many headings stand above it. */
  readonly section: number;
  readonly inHeading: boolean;
}

export interface SetCandidate {
  readonly piece: GuidePiece;
  readonly set: NamedSet;
}

export interface Candidates {
  readonly runs: readonly Candidate[];
  readonly sets: readonly SetCandidate[];
}

/** A stretch of a page that is looked through; the rest of the guide is not. */
export interface Scope extends Span {
  readonly uri: string;
}

/** Without a scope the whole guide is looked through. */
export function findCandidates(
  guide: GuideState,
  lexicon: AdoptLexicon,
  scope: Scope | undefined,
): Candidates {
  const finder = new Finder(guide, lexicon, scope);
  for (const piece of guide.pieces) finder.take(piece);
  return finder;
}

/** Whether the piece reaches into the scope. */
export function isWithin(piece: GuidePiece, scope: Scope | undefined): boolean {
  if (!scope) return true;
  if (piece.page.uri !== scope.uri) return false;
  return piece.start < scope.end && piece.start + piece.length > scope.start;
}

/** Behind a kind of part: `Resistors (R1–R4)`, `Diodes: D1`, `10k resistors at R1`. */
const INTRODUCED = /(?:[(:–—=-]|\s(?:at|as|an|als|en|à|op|in))[\s*_]*$/u;
/** Before the first word: list signs, task boxes, emphasis, a count, an arrow. */
const NOTHING_BEFORE = /^[\s*_>→()[\]]*(?:\d{1,3}\s?[x×]\s)?[\s*_(]*$/u;
/** Between two runs that are one list to a reader: "R1 and R2". */
const JOINING = /^[\s*_]*[,;/&+]?[\s*_]*(?:and|und|et|en|y|e)?[\s*_]*$/u;
/** More signs than anybody writes there; on floods of them these expressions would take cubic time. */
const MOST_SIGNS = 60;

function matchesShort(pattern: RegExp, text: string): boolean {
  return text.length <= MOST_SIGNS && pattern.test(text);
}

/** A list of parts names few words beside them; prose does. */
const MOST_WORDS_BEFORE = 7;

class Finder implements Candidates {
  readonly runs: Candidate[] = [];
  readonly sets: SetCandidate[] = [];
  readonly #guide: GuideState;
  readonly #lexicon: AdoptLexicon;
  /** Level of the heading below which nothing is fitted; undefined outside. */
  #elsewhere: number | undefined;
  readonly #scope: Scope | undefined;
  #section = 0;
  /** Columns of the table in hand whose cells are designators. */
  #header: readonly Span[] = [];

  constructor(guide: GuideState, lexicon: AdoptLexicon, scope: Scope | undefined) {
    this.#guide = guide;
    this.#lexicon = lexicon;
    this.#scope = scope;
  }

  take(piece: PieceNode): void {
    const within = isWithin(piece, this.#scope);
    if (!within && !piece.facts.facts.some(({ kind }) => kind === "heading")) return;
    const rows = piece.facts.facts.filter((fact): fact is RowFact => fact.kind === "row");
    const kept = keptTables(piece);
    for (const block of piece.prose) {
      if (block.fact.block === "heading") this.#enter(piece, block);
      if (this.#elsewhere !== undefined || block.fact.quoted) continue;
      if (
        !within ||
        !this.#isMeant(piece, block) ||
        kept.some((one) => contains(one, block.fact.span.start))
      )
        continue;
      const runs = findRuns(block.text, block.fact.span.start, this.#guide.kit, piece.boardBefore);
      if (block.fact.block === "cell") this.#cell(piece, block, runs, rows);
      else this.#words(piece, block, runs);
    }
  }

  #isMeant(piece: PieceNode, { fact: { span } }: TextBlock): boolean {
    const scope = this.#scope;
    if (!scope) return true;
    return piece.start + span.start < scope.end && piece.start + span.end > scope.start;
  }

  #enter(piece: PieceNode, block: TextBlock): void {
    const heading = piece.facts.facts.find(
      (fact) => fact.kind === "heading" && fact.span.start === block.fact.span.start,
    );
    if (heading?.kind !== "heading") return;
    this.#section++;
    if (this.#elsewhere !== undefined && heading.level > this.#elsewhere) return;
    this.#elsewhere = this.#tellsOfOther(block) ? heading.level : undefined;
  }

  /** Some guides make a heading of each instruction, of all that it says. */
  #tellsOfOther(heading: TextBlock): boolean {
    const [first] = heading.sentences;
    if (first && this.#toldToFit(first, heading)) return false;
    return this.#lexicon.elsewhere.has(heading.words);
  }

  /** A cell that holds a list and nothing else, in a column of such cells. */
  #cell(piece: PieceNode, block: TextBlock, runs: readonly Run[], rows: readonly RowFact[]): void {
    const row = rows.find((one) => contains(one.span, block.fact.span.start));
    if (row?.header) this.#header = row.cells;
    const [run] = runs;
    if (!run || row?.header || block.at(run.span).trim() !== block.text.trim()) return;
    const column = row?.cells.findIndex((cell) => contains(cell, block.fact.span.start)) ?? -1;
    if (column < 0 || column >= this.#header.length) return;
    this.#add(piece, block, run, { form: "table" });
  }

  #words(piece: PieceNode, block: TextBlock, runs: readonly Run[]): void {
    const placing = new PlacingReader(block, this.#guide.language);
    const spans = runs.map(({ span }) => span);
    for (const sentence of block.sentences) {
      const told = this.#toldToFit(sentence, block);
      const set =
        (told || block.fact.block !== "paragraph") &&
        findSet(sentence, block, this.#guide, this.#lexicon);
      if (set) {
        this.sets.push({ piece, set });
        continue;
      }
      let last: { run: Run; form: Form | undefined } | undefined;
      for (const run of runs) {
        if (!contains(sentence, run.span.start)) continue;
        const goesOn =
          last &&
          matchesShort(JOINING, block.at({ start: last.run.span.end, end: run.span.start }));
        const object = new ObjectWords(run, sentence, block, this.#lexicon);
        const form = goesOn ? last!.form : this.#form(run, sentence, block, told, object);
        last = { run, form };
        const soldering = placing.of(run.span, sentence, spans);
        if (!form || soldering === "not meant") continue;
        const isSocket = object.isSocketOfOthers;
        if (isSocket && !isSocketsOwn(run)) continue;
        this.#add(piece, block, run, { form, isSocket, isPlaced: soldering === "not yet" });
      }
    }
  }

  #add(
    piece: PieceNode,
    { fact }: TextBlock,
    run: Run,
    told: Pick<Candidate, "form" | "isPlaced" | "isSocket">,
  ): void {
    const inHeading = fact.block === "heading";
    this.runs.push({ piece, run, section: this.#section, inHeading, ...told });
  }

  #form(
    { span }: Run,
    sentence: Sentence,
    block: TextBlock,
    told: "before" | "behind" | undefined,
    object: ObjectWords,
  ): Form | undefined {
    const before = block.at({ start: block.fact.span.start, end: span.start });
    const word = sentence.words.findLast((one) => one.end <= span.start);
    const list = block.fact.block !== "paragraph" || isBold(block, span);
    if (list && matchesShort(NOTHING_BEFORE, before)) return "begins the step";
    const words = sentence.words.filter((one) => one.end <= span.start);
    const opensBlock = sentence === block.sentences[0];
    if (
      list &&
      opensBlock &&
      INTRODUCED.test(before.slice(-MOST_SIGNS)) &&
      words.length <= MOST_WORDS_BEFORE
    ) {
      return "names the kind";
    }
    if (!told) return this.#isAdded(sentence) && object.namesKind ? "told to fit" : undefined;
    if (word && this.#lexicon.relations.has(word.lower)) {
      return told === "behind" && object.leadsToPlace ? "told to fit" : undefined;
    }
    return told === "before" || (word && words.length > 0) ? "told to fit" : undefined;
  }

  /** "Now add …". */
  #isAdded({ words }: Sentence): boolean {
    return words.slice(0, 2).some((_, index) => this.#lexicon.adding.at(words, index));
  }

  /** Whether the sentence asks to fit something, and where its verb stands. */
  #toldToFit(sentence: Sentence, block: TextBlock): "before" | "behind" | undefined {
    const { language } = this.#guide;
    if (!language || sentence.words.length === 0) return undefined;
    const act = actsIn(sentence, block, language).find(({ action }) => action === "fit");
    if (!act) return undefined;
    return act.verb === sentence.words.at(-1) ? "before" : "behind";
  }
}

/** Whether the list has the socket under the designator of its chip. */
function isSocketsOwn({ items }: Run): boolean {
  return items.every(({ parts }) => parts.every(({ socketLine }) => socketLine !== undefined));
}

/** The parts tables of the piece, which Kitquill writes: they repeat what steps fit. */
function keptTables(piece: PieceNode): Span[] {
  const tables: Span[] = [];
  let start: number | undefined;
  for (const fact of piece.facts.facts) {
    if (fact.kind !== "comment" || fact.comment.kind !== "parts table") continue;
    if (!fact.comment.end) start = fact.span.start;
    else if (start !== undefined) tables.push({ start, end: fact.span.end });
  }
  return tables;
}

/** Whether a paragraph begins with the run in bold: `**R1–R4** 10k`. */
function isBold(block: TextBlock, span: Span): boolean {
  const { page, start } = block.piece;
  const from = start + block.fact.span.start;
  const before = page.text.slice(from, start + span.start);
  return /^(?:\*\*|__)[^*_]*$/.test(before);
}
