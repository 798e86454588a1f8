/** From findings to what is shown: severities as set, allowed findings left out, unused allows told. */
import type { GuideState } from "../model/guideState.ts";
import type { PieceNode, StepNode } from "../model/pieceNode.ts";
import type { Allow, StageNode } from "../model/stageNode.ts";
import type { FrontMatter } from "../syntax/frontMatter.ts";
import type { Span } from "../text/span.ts";
import { unusedAllow } from "./allow-unused.ts";
import type { Anchor, Check, Finding, Severity } from "./check.ts";
import type { Found } from "./runner.ts";

/** A finding that is to be shown, at its place in the text as it stands. */
export class Verdict {
  readonly check: Check;
  readonly finding: Finding;
  readonly severity: Severity;
  readonly uri: string;
  /** Offsets in the file. Thousands may be judged at each keystroke, so there is no span for them. */
  readonly start: number;
  readonly end: number;

  constructor(check: Check, finding: Finding, severity: Severity) {
    this.check = check;
    this.finding = finding;
    this.severity = severity;
    const { at } = finding;
    const from = "uri" in at ? 0 : at.piece.start;
    this.uri = "uri" in at ? at.uri : at.piece.page.uri;
    this.start = from + at.span.start;
    this.end = from + at.span.end;
  }
}

export type SeveritySettings = Readonly<Record<string, Severity | "off">>;

export function placeOf(anchor: Anchor): { uri: string; span: Span } {
  if ("uri" in anchor) return anchor;
  const { piece, span } = anchor;
  return {
    uri: piece.page.uri,
    span: { start: piece.start + span.start, end: piece.start + span.end },
  };
}

/**
 * Judges the findings of a guide. The guide's own `checks` key wins over the settings. `isAll`: no
 * check is still to come, so that an allow-comment which allowed nothing is unused.
 */
export function judge(
  found: Iterable<Found>,
  guide: GuideState,
  settings: SeveritySettings,
  isAll: boolean,
): Verdict[] {
  const severities = severityTable(guide.frontMatter, settings);
  const allows = new AllowBook(guide);
  const verdicts: Verdict[] = [];
  const add = (one: Found) => {
    // Asked first: an allow-comment for a check that is off is not unused.
    if (allows.suppresses(one.check.meta.code, one.finding.at)) return;
    const verdict = verdictOf(one, severities);
    if (verdict) verdicts.push(verdict);
  };
  for (const one of found) add(one);
  if (isAll) for (const allow of allows.unused()) add(unusedAllow(allow));
  return verdicts;
}

/** The same for findings that no allow-comment can be about, of a guide that is not yet put together. */
export function judgeEarly(
  found: readonly Found[],
  notes: FrontMatter,
  settings: SeveritySettings,
): Verdict[] {
  const severities = severityTable(notes, settings);
  return found.map((one) => verdictOf(one, severities)).filter((one) => one !== undefined);
}

/** Undefined for a check that is off. */
function verdictOf(
  { check, finding }: Found,
  severities: ReadonlyMap<string, Severity | "off">,
): Verdict | undefined {
  const set = severities.get(check.meta.code);
  if (set === "off") return undefined;
  return new Verdict(check, finding, set ?? finding.severity ?? check.meta.severity);
}

function severityTable(
  notes: FrontMatter,
  settings: SeveritySettings,
): ReadonlyMap<string, Severity | "off"> {
  const table = new Map<string, Severity | "off">(Object.entries(settings));
  for (const { name, value } of notes.checks) {
    const severity = value === "info" ? "information" : value;
    table.set(name, severity as Severity | "off");
  }
  return table;
}

/** The allow-comments of a guide and whether each has suppressed something. */
class AllowBook {
  readonly #guide: GuideState;
  readonly #byCode = new Map<string, Allow[]>();
  readonly #stageOf = new Map<Allow, StageNode>();
  readonly #used = new Set<Allow>();
  #homes: Map<PieceNode, StageNode> | undefined;

  constructor(guide: GuideState) {
    this.#guide = guide;
    for (const stage of guide.stages) {
      for (const allow of stage.allows) {
        this.#byCode.set(allow.code, [...(this.#byCode.get(allow.code) ?? []), allow]);
        this.#stageOf.set(allow, stage);
      }
    }
  }

  suppresses(code: string, at: Anchor): boolean {
    const allows = this.#byCode.get(code);
    if (!allows) return false;
    let suppressed = false;
    for (const allow of allows) {
      if (!this.#covers(allow, at)) continue;
      this.#used.add(allow);
      suppressed = true;
    }
    return suppressed;
  }

  *unused(): Generator<Allow, void, void> {
    for (const allow of this.#stageOf.keys()) if (!this.#used.has(allow)) yield allow;
  }

  #covers(allow: Allow, at: Anchor): boolean {
    if (allow.idle) return false;
    const stage = this.#stageOf.get(allow)!;
    // Before the first stage an allow holds for the whole guide, its parts lists included.
    if (!stage.heading && stage.steps.length === 0) return true;
    if ("uri" in at) return false;
    const piece = at.piece as PieceNode;
    const step = stepAt(piece, at.span.start);
    if (allow.step) return step !== undefined && isWithin(step, allow.step);
    return (step?.stage ?? this.#homeOf(piece)) === stage;
  }

  /** Stage of a piece without steps. */
  #homeOf(piece: PieceNode): StageNode | undefined {
    this.#homes ??= new Map(
      this.#guide.stages.flatMap((stage) =>
        stage.slices.map((slice): [PieceNode, StageNode] => [slice.piece, stage]),
      ),
    );
    return this.#homes.get(piece);
  }
}

function stepAt(piece: PieceNode, offset: number): StepNode | undefined {
  return piece.steps.findLast((step) => step.fact.span.start <= offset);
}

/** Whether `step` is `outer` or one of its sub-steps. */
function isWithin(step: StepNode, outer: StepNode): boolean {
  return step.stage === outer.stage && outer.path.every((number, i) => step.path[i] === number);
}
