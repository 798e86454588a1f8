/**
 * The sums of a guide as a graph: cells hold what is written, variables the names between them. After an
 * edit only those cells are computed again that use, directly or not, a name that has changed.
 */
import type { ParseContext } from "../../quantity/expression/parse.ts";
import type { NameUse } from "../../quantity/expression/tree.ts";
import { TRADE_FUNCTIONS } from "../../trade/functions/all.ts";
import type { Kit } from "../kit.ts";
import { Cell, type Source } from "./cell.ts";
import { parseFormula, type SumTexts } from "./formula.ts";
import { nameKey } from "./names.ts";
import { inOrder, isCircle } from "./order.ts";
import type { FigurePlace } from "./place.ts";
import { listedPart, Values } from "./values.ts";
import { Variable } from "./variable.ts";

export class Sums {
  readonly #kit: Kit;
  readonly #values = new Values();
  readonly #context: ParseContext;
  readonly #cells = new Map<string, Cell>();
  readonly #variables = new Map<string, Variable>();
  // What has been touched since they were settled.
  #touched = new Set<Variable>();
  #idle = new Set<Cell>();
  #fresh = new Set<Cell>();
  #changed = new Set<FigurePlace>();

  constructor(kit: Kit) {
    this.#kit = kit;
    const boards = new Set(kit.boards.map((board) => board.toLowerCase()));
    this.#context = {
      functions: TRADE_FUNCTIONS,
      isBoard: (name) => boards.has(name.toLowerCase()),
    };
  }

  find(key: string): Variable | undefined {
    return this.#variables.get(key);
  }

  variables(): Iterable<Variable> {
    return this.#variables.values();
  }

  enter(place: FigurePlace): void {
    for (const cell of [place.cells.expression, place.cells.stated]) cell?.places.add(place);
    if (place.variable) {
      place.variable.places.add(place);
      this.#touched.add(place.variable);
    }
    this.#changed.add(place);
  }

  leave(place: FigurePlace): void {
    this.#changed.delete(place);
    for (const cell of [place.cells.expression, place.cells.stated]) {
      cell?.places.delete(place);
      if (cell?.places.size === 0) this.#idle.add(cell);
    }
    if (place.variable) {
      place.variable.places.delete(place);
      this.#touched.add(place.variable);
    }
  }

  /** The cell of a text; one name keeps one input for the same text, wherever it is written. */
  cell(name: string, texts: SumTexts, board: string | undefined): Cell {
    const { expression, tolerance = "", upTo = "", isReading = false } = texts;
    const key = [name, board ?? "", expression, tolerance, upTo, isReading].join("\n");
    const known = this.#cells.get(key);
    if (known) return known;
    const formula = parseFormula(texts, this.#context);
    const sources = new Map<NameUse, Source>();
    for (const { use } of formula.names) {
      const variable = this.variable(nameKey(use, this.#kit, board));
      sources.set(use, { variable, part: listedPart(use, this.#kit, board) });
    }
    const cell = new Cell(key, formula, sources);
    for (const variable of cell.inputs) variable.users.add(cell);
    this.#cells.set(key, cell);
    this.#fresh.add(cell);
    return cell;
  }

  /** The name with that key; a new one where no place and no sum has it yet. */
  variable(key: string): Variable {
    const known = this.#variables.get(key);
    if (known) return known;
    const variable = new Variable(key);
    this.#variables.set(key, variable);
    return variable;
  }

  /**
   * Chooses definitions anew where places came or went, and computes what that changes. Gives the
   * places of which something is new since the last call.
   */
  settle(): ReadonlySet<FigurePlace> {
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
    const changed = this.#changed;
    this.#changed = new Set();
    return changed;
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
