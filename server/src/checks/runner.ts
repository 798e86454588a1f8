/**
 * Runs the checks over a guide and keeps their findings. After an edit only those hooks run again
 * whose ground has changed; the rest of the findings stand as they are.
 */

import { isOrdinary } from "../model/accounting.ts";
import type { GuideFigure } from "../model/figures/figure.ts";
import type { GuideChanges } from "../model/guideChanges.ts";
import type { GuideState } from "../model/guideState.ts";
import type { ListLine, PartsList } from "../model/list/partsList.ts";
import type { Supply } from "../model/parts.ts";
import type { PieceNode } from "../model/pieceNode.ts";
import type { StageNode } from "../model/stageNode.ts";
import { type BoardTops, type Check, type Finding, NO_FINDINGS } from "./check.ts";
import { ExplainedParts } from "./explained.ts";

/** A finding and the check that made it. */
export interface Found {
  readonly check: Check;
  readonly finding: Finding;
}

interface StageFindings {
  readonly stage: StageNode;
  before: BoardTops;
  after: BoardTops;
  readonly found: readonly Found[];
}

const NOTHING: readonly Found[] = [];
const NO_TOPS: BoardTops = new Map();

type Hook = Exclude<keyof Check, "meta">;
type With<H extends Hook> = Check & Required<Pick<Check, H>>;

/** The checks by the hooks they have, in their order, so that none is asked in vain. */
function byHook(checks: readonly Check[]) {
  const having = <H extends Hook>(hook: H) =>
    checks.filter((check): check is With<H> => check[hook] !== undefined);
  return {
    mark: having("mark"),
    piece: having("piece"),
    unusual: having("unusual"),
    hardware: having("hardware"),
    line: having("line"),
    stage: having("stage"),
    list: having("list"),
    figure: having("figure"),
    guide: having("guide"),
  };
}

export class CheckRunner {
  readonly #checks: ReturnType<typeof byHook>;
  readonly #byPiece = new Map<PieceNode, readonly Found[]>();
  readonly #bySupply = new Map<Supply, readonly Found[]>();
  readonly #byLine = new Map<object, readonly Found[]>();
  readonly #byFigure = new Map<GuideFigure, readonly Found[]>();
  /** In the order of the stages. */
  #byStage: readonly StageFindings[] = [];
  #byList: readonly Found[] = NOTHING;
  #byGuide: readonly Found[] = NOTHING;
  readonly explained = new ExplainedParts();
  #reachedEnd = false;

  constructor(checks: readonly Check[]) {
    this.#checks = byHook(checks);
  }

  run(guide: GuideState, changes: GuideChanges): void {
    if (changes.all) this.#forgetAll();
    this.#runPieces(guide, changes);
    this.#runFigures(guide, changes.figures);
    const supplies = changes.all ? [...guide.parts, ...guide.hardware] : related(changes, guide);
    this.#runSupplies(guide, supplies);
    this.#runLines(guide, supplies);
    this.#runStages(guide, supplies);
    if (changes.all) {
      const lists: readonly PartsList[] = [...new Set(guide.lists)];
      this.#byList = lists.flatMap((list) =>
        gather(this.#checks.list, (check) => check.list(list, guide)),
      );
    }
    this.#byGuide = gather(this.#checks.guide, (check) => check.guide(guide));
  }

  findings(): Found[] {
    const all: Found[] = [];
    const take = (some: readonly Found[]) => {
      for (const found of some) all.push(found);
    };
    for (const found of this.#byPiece.values()) take(found);
    // By the list: which parts were looked at last must not show.
    const supplies = [...this.#bySupply].sort(([a], [b]) => a.id - b.id);
    for (const [, found] of supplies) take(found);
    for (const found of this.#byLine.values()) take(found);
    for (const found of this.#byFigure.values()) take(found);
    for (const { found } of this.#byStage) if (found.length > 0) take(found);
    take(this.#byList);
    take(this.#byGuide);
    return all;
  }

  // Each long loop in a method of its own: code that is compiled while the first check of a guide is in
  // one of them knows nothing of what comes behind it, and would be left there at each keystroke.

  #runPieces(guide: GuideState, { retired, admitted }: GuideChanges): void {
    for (const piece of retired) this.#keep(this.#byPiece, piece, NOTHING);
    for (const piece of admitted) this.#keep(this.#byPiece, piece, this.#ofPiece(piece, guide));
  }

  #runFigures(guide: GuideState, { gone, changed }: GuideChanges["figures"]): void {
    for (const figure of gone) this.#keep(this.#byFigure, figure, NOTHING);
    for (const figure of changed) {
      const found = gather(this.#checks.figure, (check) => check.figure(figure, guide));
      this.#keep(this.#byFigure, figure, found);
    }
  }

  #runSupplies(guide: GuideState, supplies: readonly Supply[]): void {
    for (const supply of supplies)
      this.#keep(this.#bySupply, supply, this.#ofSupply(supply, guide));
  }

  #ofPiece(piece: PieceNode, guide: GuideState): readonly Found[] {
    return [
      ...gather(this.#checks.piece, (check) => check.piece(piece, guide)),
      ...piece.marks.flatMap((mark) =>
        gather(this.#checks.mark, (check) => check.mark(mark, guide)),
      ),
    ];
  }

  #ofSupply(supply: Supply, guide: GuideState): readonly Found[] {
    const uses = guide.uses(supply);
    if (supply.kind === "hardware") {
      return gather(this.#checks.hardware, (check) => check.hardware(supply, uses, guide));
    }
    if (isOrdinary(supply, uses)) return NOTHING;
    return gather(this.#checks.unusual, (check) => check.unusual(supply, uses, guide));
  }

  /** Lines of the supplies, and those whose parts other findings came to explain, or no longer do. */
  #runLines(guide: GuideState, supplies: readonly Supply[]): void {
    const lines = new Map<ListLine, PartsList>();
    const take = (some: Iterable<Supply>) => {
      for (const { line, list } of some) lines.set(line, list);
    };
    take(supplies);
    take(this.explained.takeTurned());
    const { reachesEnd } = guide;
    if (reachesEnd !== this.#reachedEnd) take(guide.missing);
    this.#reachedEnd = reachesEnd;
    for (const [line, list] of lines) {
      const found = gather(this.#checks.line, (check) => check.line(line, list, guide));
      this.#keep(this.#byLine, line, found);
    }
  }

  #runStages(guide: GuideState, supplies: readonly Supply[]): void {
    const touched = stagesOf(guide, supplies);
    const byStage: StageFindings[] = [];
    const carrier = new TopsCarrier();
    const more = guide.stages.length - this.#byStage.length;
    let tops = NO_TOPS;
    for (const stage of guide.stages) {
      const known = touched.has(stage) ? undefined : this.#ofBefore(stage, byStage.length, more);
      const isKept = known !== undefined && carrier.carry(known, tops);
      const findings = isKept ? known : this.#ofStage(stage, tops, guide);
      byStage.push(findings);
      tops = findings.after;
    }
    this.#byStage = byStage;
  }

  /**
   * What was found of the stage. It is looked for at its place, and where it stood if `more` stages
   * have come before it: an edit in one place leaves it at one of them.
   */
  #ofBefore(stage: StageNode, place: number, more: number): StageFindings | undefined {
    const here = this.#byStage[place];
    if (here?.stage === stage) return here;
    const there = this.#byStage[place - more];
    return there?.stage === stage ? there : undefined;
  }

  #ofStage(stage: StageNode, before: BoardTops, guide: GuideState): StageFindings {
    const found: Found[] = [];
    let after = before;
    for (const check of this.#checks.stage) {
      const result = check.stage(stage, before, guide);
      for (const finding of result.findings) found.push({ check, finding });
      after = result.after;
    }
    return { stage, before, after, found };
  }

  #keep<Key>(store: Map<Key, readonly Found[]>, key: Key, found: readonly Found[]): void {
    const before = store.get(key) ?? NOTHING;
    if (before.length === 0 && found.length === 0) return;
    this.#explain(before, -1);
    this.#explain(found, 1);
    if (found.length > 0) store.set(key, found);
    else store.delete(key);
  }

  #explain(found: readonly Found[], by: 1 | -1): void {
    for (const { finding } of found) {
      for (const part of finding.explains ?? []) this.explained.count(part, by);
    }
  }

  #forgetAll(): void {
    this.#byPiece.clear();
    this.#bySupply.clear();
    this.#byLine.clear();
    this.#byFigure.clear();
    this.#byStage = [];
    this.explained.clear();
  }
}

/** What the checks find, in their order. */
function gather<C extends Check>(
  checks: readonly C[],
  run: (check: C) => Iterable<Finding>,
): readonly Found[] {
  let found: Found[] | undefined;
  for (const check of checks) {
    const findings = run(check);
    if (findings === NO_FINDINGS) continue;
    for (const finding of findings) {
      found ??= [];
      found.push({ check, finding });
    }
  }
  return found ?? NOTHING;
}

/** Where supplies are used: whether a part takes its turn can hang on a mark in another stage (later, place). */
function stagesOf(guide: GuideState, supplies: readonly Supply[]): ReadonlySet<unknown> {
  const stages = new Set<unknown>();
  for (const supply of supplies) for (const use of guide.uses(supply)) stages.add(use.step.stage);
  return stages;
}

/** The changed supplies, and the sockets and chips that depend on them. */
function related(changes: GuideChanges, guide: GuideState): readonly Supply[] {
  const supplies = new Set(changes.supplies);
  for (const supply of changes.supplies) {
    if (supply.kind !== "part") continue;
    const [socket, chip] = [guide.socketOf(supply), guide.chipOf(supply)];
    if (socket) supplies.add(socket);
    if (chip) supplies.add(chip);
  }
  return [...supplies];
}

/** Carries what is known of stages over to the tallest parts that are now in place before them. */
class TopsCarrier {
  /** These tops have lately been replaced by others of the same parts. */
  #old: BoardTops | undefined;
  #new: BoardTops | undefined;

  /**
   * Makes what is known of a stage hold for the tops; false when the stage must run again. A stage
   * without findings cares for the parts alone, not for the marks that fit them.
   */
  carry(known: StageFindings, tops: BoardTops): boolean {
    const { before, after, found } = known;
    const isReplaced = before === this.#old && tops === this.#new;
    if (!isReplaced && sameTops(before, tops)) return true;
    if (found.length > 0 || !(isReplaced || sameParts(before, tops))) return false;
    this.#old = before;
    this.#new = tops;
    known.before = tops;
    // Nearly all stages hand on what is taller than their own parts.
    known.after = after === before ? tops : replaced(after, before, tops);
    return true;
  }
}

/** `after` with the uses of `tops` in the place of those of `before`. */
function replaced(after: BoardTops, before: BoardTops, tops: BoardTops): BoardTops {
  const result = new Map(after);
  for (const [board, use] of after) {
    if (use === before.get(board)) result.set(board, tops.get(board)!);
  }
  return result;
}

function sameParts(a: BoardTops, b: BoardTops): boolean {
  if (a.size !== b.size) return false;
  for (const [board, use] of a) if (b.get(board)?.supply !== use.supply) return false;
  return true;
}

function sameTops(a: BoardTops, b: BoardTops): boolean {
  if (a === b) return true;
  if (a.size !== b.size) return false;
  for (const [board, use] of a) if (b.get(board) !== use) return false;
  return true;
}
