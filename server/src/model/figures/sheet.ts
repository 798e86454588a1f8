/** All figures of a guide: the places where they stand, and what is asked of them by place and by name. */
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
import type { Figures, GuideFigure, Meaning } from "./figure.ts";
import { callsFunction, type SumTexts } from "./formula.ts";
import { type FrontMatterFigure, readFrontMatterFigures } from "./frontMatterFigures.ts";
import { nameKey, partOfSubject } from "./names.ts";
import { wayRound } from "./order.ts";
import { type Cells, FigurePlace, type Home } from "./place.ts";
import { Sums } from "./sums.ts";
import { listedPart } from "./values.ts";
import type { Variable } from "./variable.ts";

/** What an update changed, for those who keep results by figure. */
export interface FigureChanges {
  readonly gone: readonly FigurePlace[];
  /** New, or with another result, another definition, or another place to point at. */
  readonly changed: ReadonlySet<FigurePlace>;
}

export class FigureSheet implements Figures {
  readonly #kit: Kit;
  readonly #sums: Sums;
  readonly #byPiece = new Map<PieceNode, readonly FigurePlace[]>();
  #ofFrontMatter = new Map<string, FigurePlace>();
  #frontMatter: FrontMatter | undefined;
  /** Answers of `withSymbol` that still hold, by what was asked. */
  readonly #withSymbol = new Map<(symbol: string) => boolean, readonly FigurePlace[]>();
  /** Entries of the front matter that are no figures. */
  frontMatterProblems: readonly SyntaxProblem[] = [];
  revision = 0;
  /** Those that the update in hand has dropped. */
  #gone: FigurePlace[] = [];

  constructor(kit: Kit) {
    this.#kit = kit;
    this.#sums = new Sums(kit);
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
    const changes = { gone: this.#gone, changed: this.#sums.settle() };
    if (changes.gone.length + changes.changed.size > 0) this.revision++;
    this.#gone = [];
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
    return this.#sums.find(keyOf(symbol, subjects))?.definition;
  }

  about(symbol: string, subject: Part | string): readonly FigurePlace[] {
    const wanted = typeof subject === "string" ? subject.toUpperCase() : subject;
    const found = [...this.#sums.variables()].flatMap(({ definition, symbol: own }) => {
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
    for (const { symbol, places } of this.#sums.variables()) {
      if (places.size > 0 && passes(symbol)) found.push(...places);
    }
    found.sort(byPlace);
    this.#withSymbol.set(passes, found);
    return found;
  }

  meaning(use: NameUse, board: string | undefined): Meaning {
    const figure = this.#sums.find(nameKey(use, this.#kit, board))?.definition;
    const isBare = use.subjects.length === 0 && !use.board;
    if (isBare && CONSTANTS.has(use.symbol)) return { kind: "constant" };
    if (figure) return { kind: "figure", figure };
    const part = listedPart(use, this.#kit, board);
    if (part) return { kind: "part", part };
    return isBare && unitSymbol(use.symbol) ? { kind: "unit" } : { kind: "nothing" };
  }

  *names(): Generator<string, void, void> {
    for (const { definition } of this.#sums.variables()) {
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
    const variable = key === undefined ? undefined : this.#sums.variable(key);
    const cells = this.#cellsOf(figure, key, board);
    const place = new FigurePlace(
      figure,
      home,
      board,
      { variable, parts, listed: listed?.line.value && listed },
      cells,
    );
    this.#sums.enter(place);
    if (variable) this.#forgetSelections(variable);
    return place;
  }

  #drop(place: FigurePlace): void {
    this.#gone.push(place);
    this.#sums.leave(place);
    if (place.variable) this.#forgetSelections(place.variable);
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
      ...(texts && { expression: this.#sums.cell(key ?? "", texts, board) }),
      ...(stated && { stated: this.#sums.cell("", { expression: stated.text }, board) }),
    };
  }
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
