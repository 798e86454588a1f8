/**
 * All figures of a guide as a graph: places where they stand, names, and sums between them. After an
 * edit only those sums are computed again that use, directly or not, a name that has changed.
 */
import type { ParseContext } from "../../quantity/expression/parse.ts";
import type { NameUse } from "../../quantity/expression/tree.ts";
import { CONSTANTS } from "../../quantity/functions.ts";
import { unitSymbol } from "../../quantity/unitMeanings.ts";
import type { Figure, SyntaxProblem } from "../../syntax/dialect.ts";
import type { FrontMatter } from "../../syntax/frontMatter.ts";
import { TRADE_FUNCTIONS } from "../../trade/functions/all.ts";
import type { Page } from "../guide.ts";
import type { Kit } from "../kit.ts";
import type { Part } from "../parts.ts";
import type { PieceNode } from "../pieceNode.ts";
import { Cell, type Source } from "./cell.ts";
import type { Figures, GuideFigure, Meaning } from "./figure.ts";
import { callsFunction, parseFormula, type SumTexts } from "./formula.ts";
import { type FrontMatterFigure, readFrontMatterFigures } from "./frontMatterFigures.ts";
import { nameKey, partOfSubject } from "./names.ts";
import { inOrder, isCircle, wayRound } from "./order.ts";
import { type Cells, FigurePlace, type Home } from "./place.ts";
import { listedPart, Values } from "./values.ts";
import { Variable } from "./variable.ts";

/** What an update changed, for those who keep results by figure. */
export interface FigureChanges {
  readonly gone: readonly FigurePlace[];
  /** New, or with another result, another definition, or another place to point at. */
  readonly changed: ReadonlySet<FigurePlace>;
}

export class FigureSheet implements Figures {
  readonly #kit: Kit;
  readonly #values = new Values();
  readonly #context: ParseContext;
  readonly #cells = new Map<string, Cell>();
  readonly #variables = new Map<string, Variable>();
  readonly #byPiece = new Map<PieceNode, readonly FigurePlace[]>();
  #ofFrontMatter = new Map<string, FigurePlace>();
  #frontMatter: FrontMatter | undefined;
  /** Answers of `withSymbol` that still hold, by what was asked. */
  readonly #withSymbol = new Map<(symbol: string) => boolean, readonly FigurePlace[]>();
  /** Entries of the front matter that are no figures. */
  frontMatterProblems: readonly SyntaxProblem[] = [];
  revision = 0;
  // What the update in hand has touched.
  #touched = new Set<Variable>();
  #idle = new Set<Cell>();
  #fresh = new Set<Cell>();
  #gone: FigurePlace[] = [];
  #changed = new Set<FigurePlace>();

  constructor(kit: Kit) {
    this.#kit = kit;
    const boards = new Set(kit.boards.map((board) => board.toLowerCase()));
    this.#context = {
      functions: TRADE_FUNCTIONS,
      isBoard: (name) => boards.has(name.toLowerCase()),
    };
  }

  /** Takes in the pieces that came and went, and the front matter as it is now. */
  update(
    retired: readonly PieceNode[],
    admitted: readonly PieceNode[],
    page: Page,
    frontMatter: FrontMatter,
  ): FigureChanges {
    for (const piece of retired) this.#retire(piece);
    for (const piece of admitted) this.#admit(piece);
    if (frontMatter !== this.#frontMatter) this.#takeFrontMatter(page, frontMatter);
    this.#settle();
    const changes = { gone: this.#gone, changed: this.#changed };
    if (this.#gone.length + this.#changed.size > 0) this.revision++;
    this.#gone = [];
    this.#changed = new Set();
    return changes;
  }

  ofPiece(piece: PieceNode): readonly FigurePlace[] {
    return this.#byPiece.get(piece) ?? [];
  }

  /** The figures of the front matter, in its order. */
  ofFrontMatter(): readonly FigurePlace[] {
    return [...this.#ofFrontMatter.values()];
  }

  all(): readonly FigurePlace[] {
    const places = [...this.#ofFrontMatter.values(), ...[...this.#byPiece.values()].flat()];
    return places.sort((a, b) => a.compare(b));
  }

  named(symbol: string, ...subjects: readonly (Part | string)[]): FigurePlace | undefined {
    return this.#variables.get(keyOf(symbol, subjects))?.definition;
  }

  about(symbol: string, subject: Part | string): readonly FigurePlace[] {
    const wanted = typeof subject === "string" ? subject.toUpperCase() : subject;
    const found = [...this.#variables.values()].flatMap(({ definition, symbol: own }) => {
      const name = own === symbol ? definition?.figure.name : undefined;
      if (!definition || !name) return [];
      const isAbout = name.subjects.some(({ text }, i) =>
        typeof wanted === "string" ? text.toUpperCase() === wanted : definition.parts[i] === wanted,
      );
      return isAbout ? [definition] : [];
    });
    return found.sort((a, b) => a.compare(b));
  }

  withSymbol(passes: (symbol: string) => boolean): readonly FigurePlace[] {
    const known = this.#withSymbol.get(passes);
    if (known) return known;
    const found: FigurePlace[] = [];
    for (const { symbol, places } of this.#variables.values()) {
      if (places.size > 0 && passes(symbol)) found.push(...places);
    }
    found.sort(byPlace);
    this.#withSymbol.set(passes, found);
    return found;
  }

  meaning(use: NameUse, board: string | undefined): Meaning {
    const figure = this.#variables.get(nameKey(use, this.#kit, board))?.definition;
    const isBare = use.subjects.length === 0 && !use.board;
    if (isBare && CONSTANTS.has(use.symbol)) return { kind: "constant" };
    if (figure) return { kind: "figure", figure };
    const part = listedPart(use, this.#kit, board);
    if (part) return { kind: "part", part };
    return isBare && unitSymbol(use.symbol) ? { kind: "unit" } : { kind: "nothing" };
  }

  *names(): Generator<string, void, void> {
    for (const { definition } of this.#variables.values()) {
      const name = definition?.figure.name;
      if (name) yield name.text;
    }
  }

  circle(figure: GuideFigure): readonly FigurePlace[] {
    const cell = (figure as FigurePlace).cells.expression;
    return cell ? wayRound(cell).flatMap((one) => [...one.places].sort(byPlace)[0] ?? []) : [];
  }

  #retire(piece: PieceNode): void {
    for (const place of this.#byPiece.get(piece) ?? []) this.#drop(place);
    this.#byPiece.delete(piece);
  }

  #admit(piece: PieceNode): void {
    if (piece.figures.length === 0) return;
    const places = piece.figures.map(({ figure, step, board }, index) =>
      this.#make(figure, { piece, step, index }, board),
    );
    this.#byPiece.set(piece, places);
  }

  #takeFrontMatter(page: Page, frontMatter: FrontMatter): void {
    this.#frontMatter = frontMatter;
    const { figures, problems } = readFrontMatterFigures(page, frontMatter);
    this.frontMatterProblems = problems;
    const before = this.#ofFrontMatter;
    this.#ofFrontMatter = new Map();
    for (const entry of figures) {
      const key = contentOf(entry);
      const home = { uri: page.uri, section: entry.section, index: entry.index };
      const known = before.get(key);
      if (known) {
        // Only its place has moved.
        if (!isSameRow(known.home, home) && known.variable) this.#forgetSelections(known.variable);
        known.figure = entry.figure;
        known.home = home;
      }
      this.#ofFrontMatter.set(key, known ?? this.#make(entry.figure, home, undefined));
      before.delete(key);
    }
    for (const place of before.values()) this.#drop(place);
  }

  #make(written: Figure, home: Home, board: string | undefined): FigurePlace {
    const figure = callsFunction(written, TRADE_FUNCTIONS);
    const { name } = figure;
    const key = name && nameKey(name, this.#kit, board);
    const isBare = name?.subjects.length === 0;
    const listed = isBare ? this.#kit.find(name!.symbol, undefined, board).part : undefined;
    const parts = (name?.subjects ?? []).map(({ text }) => partOfSubject(text, this.#kit, board));
    const variable = key === undefined ? undefined : this.#variable(key);
    const cells = this.#cellsOf(figure, key, board);
    const place = new FigurePlace(
      figure,
      home,
      board,
      { variable, parts, listed: listed?.line.value && listed },
      cells,
    );
    for (const cell of [cells.expression, cells.stated]) cell?.places.add(place);
    if (variable) {
      variable.places.add(place);
      this.#touched.add(variable);
      this.#forgetSelections(variable);
    }
    this.#changed.add(place);
    return place;
  }

  #drop(place: FigurePlace): void {
    this.#gone.push(place);
    this.#changed.delete(place);
    for (const cell of [place.cells.expression, place.cells.stated]) {
      cell?.places.delete(place);
      if (cell?.places.size === 0) this.#idle.add(cell);
    }
    if (place.variable) {
      place.variable.places.delete(place);
      this.#touched.add(place.variable);
      this.#forgetSelections(place.variable);
    }
  }

  #forgetSelections({ symbol }: Variable): void {
    for (const passes of this.#withSymbol.keys()) {
      if (passes(symbol)) this.#withSymbol.delete(passes);
    }
  }

  #cellsOf(figure: Figure, key: string | undefined, board: string | undefined): Cells {
    const { expression, tolerance, stated, reading } = figure;
    const texts: SumTexts | undefined = reading
      ? {
          expression: reading.value.text,
          tolerance: reading.tolerance?.text,
          upTo: reading.upTo?.text,
          isReading: true,
        }
      : expression && { expression: expression.text, tolerance: tolerance?.text };
    return {
      ...(texts && { expression: this.#cell(key ?? "", texts, board) }),
      ...(stated && { stated: this.#cell("", { expression: stated.text }, board) }),
    };
  }

  /** The cell of a text; one name keeps one input for the same text, wherever it is written. */
  #cell(name: string, texts: SumTexts, board: string | undefined): Cell {
    const { expression, tolerance = "", upTo = "", isReading = false } = texts;
    const key = [name, board ?? "", expression, tolerance, upTo, isReading].join("\n");
    const known = this.#cells.get(key);
    if (known) return known;
    const formula = parseFormula(texts, this.#context);
    const sources = new Map<NameUse, Source>();
    for (const { use } of formula.names) {
      const variable = this.#variable(nameKey(use, this.#kit, board));
      sources.set(use, { variable, part: listedPart(use, this.#kit, board) });
    }
    const cell = new Cell(key, formula, sources);
    for (const variable of cell.inputs) variable.users.add(cell);
    this.#cells.set(key, cell);
    this.#fresh.add(cell);
    return cell;
  }

  #variable(key: string): Variable {
    const known = this.#variables.get(key);
    if (known) return known;
    const variable = new Variable(key);
    this.#variables.set(key, variable);
    return variable;
  }

  /** Chooses definitions anew where places came or went, and computes what that changes. */
  #settle(): void {
    const stale = this.#fresh;
    this.#fresh = new Set();
    for (const variable of this.#touched) this.#redefine(variable, stale);
    for (const cell of this.#idle) if (cell.places.size === 0) this.#forget(cell, stale);
    this.#idle = new Set();
    spread(stale);
    for (const group of inOrder(stale)) {
      const circular = isCircle(group);
      for (const cell of group) cell.evaluation = circular ? CIRCULAR : this.#values.evaluate(cell);
    }
    for (const cell of stale) this.#tell(cell);
    for (const variable of this.#touched) {
      if (isUnused(variable)) this.#variables.delete(variable.key);
    }
    this.#touched = new Set();
  }

  #redefine(variable: Variable, stale: Set<Cell>): void {
    const before = variable.definition;
    variable.definition = variable.choose();
    if (before === variable.definition) return;
    for (const place of variable.places) this.#changed.add(place);
    const same = before?.cells.expression === variable.definition?.cells.expression;
    for (const cell of variable.users) {
      if (!same) stale.add(cell);
      else this.#tellStuck(cell);
    }
  }

  /** What is said of sums that have no value may point at places anywhere on their way. */
  #tellStuck(cell: Cell): void {
    if (cell.evaluation.value) return;
    const stuck = new Set([cell]);
    spread(stuck);
    for (const one of stuck) for (const place of one.places) this.#changed.add(place);
  }

  /** Its places, and those that are held against what it defines. */
  #tell(cell: Cell): void {
    for (const place of cell.places) {
      this.#changed.add(place);
      if (!defines(place, cell)) continue;
      for (const other of place.variable!.places) this.#changed.add(other);
    }
  }

  #forget(cell: Cell, stale: Set<Cell>): void {
    this.#cells.delete(cell.key);
    stale.delete(cell);
    for (const variable of cell.inputs) {
      variable.users.delete(cell);
      this.#touched.add(variable);
    }
  }
}

const CIRCULAR: Cell["evaluation"] = {
  problem: { kind: "circle", span: { start: 0, end: 0 }, message: "It depends on itself." },
  problemIn: "expression",
  warnings: [],
  size: 0,
};

/** Adds all that uses, directly or not, what the cells define. */
function spread(stale: Set<Cell>): void {
  // A set goes on with what is added while it is walked.
  for (const cell of stale) {
    for (const place of cell.places) {
      if (defines(place, cell)) for (const user of place.variable!.users) stale.add(user);
    }
  }
}

/** Whether the cell, written at the place, is what the place's name stands for. */
function defines({ variable }: FigurePlace, cell: Cell): boolean {
  return variable?.definition?.cells.expression === cell;
}

function isUnused({ places, users }: Variable): boolean {
  return places.size === 0 && users.size === 0;
}

/** Whether two homes in the front matter are the same place in the order of its figures. */
function isSameRow(a: Home, b: Home): boolean {
  return "section" in a && "section" in b && a.section === b.section && a.index === b.index;
}

function byPlace(a: FigurePlace, b: FigurePlace): number {
  return a.compare(b);
}

function contentOf({ section, name, figure }: FrontMatterFigure): string {
  const { expression, tolerance, stated } = figure;
  return [section, name, expression?.text, tolerance?.text, stated?.text].join("\n");
}

function keyOf(symbol: string, subjects: readonly (Part | string)[]): string {
  if (subjects.length === 0) return symbol;
  const keys = subjects.map((one) =>
    typeof one === "string" ? one.trim().toUpperCase() : `${one.board}/${one.name}`,
  );
  return `${symbol}(${keys.join(", ")})`;
}
