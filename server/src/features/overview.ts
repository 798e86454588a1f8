/** A guide at a glance: its stages and steps with their worst findings, and the parts still to fit. */
import type { Severity } from "../checks/check.ts";
import { type Counted, count } from "../checks/count.ts";
import { placeOf } from "../checks/verdict.ts";
import { markItems } from "../checks/words.ts";
import { isMissing } from "../model/accounting.ts";
import { fittedBySteps } from "../model/fittedBySteps.ts";
import type { Stage, Step } from "../model/guide.ts";
import type { GuideState } from "../model/guideState.ts";
import type { Part } from "../model/parts.ts";
import type { Span } from "../text/span.ts";
import { stepText } from "./stepText.ts";

/** A stretch of a page. */
export interface Spot {
  readonly uri: string;
  readonly span: Span;
}

/** A finding as far as the overview shows it. */
export interface FindingSpot extends Spot, Counted {}

export interface StepOverview {
  readonly number: string;
  readonly text: string;
  readonly spot: Spot;
  /** Parts that it fits, as the items of a mark: `R1–R4`. */
  readonly parts: readonly string[];
  readonly worst: Severity | undefined;
}

export interface StageOverview {
  readonly number: number;
  /** Undefined for steps before the first level-2 heading. */
  readonly title: string | undefined;
  readonly spot: Spot;
  /** Parts that its steps fit. */
  readonly fitted: number;
  readonly worst: Severity | undefined;
  readonly steps: readonly StepOverview[];
}

export interface PartOverview {
  /** As a mark names it; with its board where the kit has several. */
  readonly name: string;
  readonly board: string;
  readonly value: string;
  readonly package: string;
  /** Body height in mm. */
  readonly height: number | undefined;
}

export interface GuideOverview {
  readonly uri: string;
  readonly title: string | undefined;
  readonly stages: readonly StageOverview[];
  /** Parts to be fitted that no step fits, by board, the lowest first. */
  readonly left: readonly PartOverview[];
  readonly listed: number;
  readonly fitted: number;
  /** Findings in all files of the guide. */
  readonly errors: number;
  readonly warnings: number;
}

/** `findings` are those of all files of the guide. */
export function overviewOf(guide: GuideState, findings: readonly FindingSpot[]): GuideOverview {
  const steps = new StepFindings(guide, findings);
  const fitted = fittedBySteps(guide);
  const left = [...guide.missing].sort(byBoardAndHeight);
  const listed = guide.parts.filter((part) => isMissing(part, []));
  return {
    uri: guide.pages[0]!.uri,
    title: guide.frontMatter.title?.value,
    stages: guide.stages
      .filter((stage) => stage.steps.length > 0)
      .map((stage) => stageOf(stage, steps, fitted)),
    left: left.map((part) => partOf(part, guide)),
    listed: listed.length,
    fitted: listed.length - left.length,
    errors: count(findings, "error"),
    warnings: count(findings, "warning"),
  };
}

function stageOf(
  stage: Stage,
  findings: StepFindings,
  fitted: ReadonlyMap<Step, readonly Part[]>,
): StageOverview {
  const steps = stage.steps.map((step): StepOverview => {
    const names = (fitted.get(step) ?? []).map(({ name }) => ({ name }));
    return {
      number: step.number,
      text: stepText(step),
      spot: placeOf({ piece: step.piece, span: step.fact.span }),
      parts: markItems(names),
      worst: findings.worstOf(step),
    };
  });
  const { heading } = stage;
  return {
    number: stage.number,
    title: heading?.fact.title,
    spot: heading ? placeOf({ piece: heading.piece, span: heading.fact.span }) : steps[0]!.spot,
    fitted: stage.steps.reduce((sum, step) => sum + (fitted.get(step)?.length ?? 0), 0),
    worst: steps.reduce<Severity | undefined>((worst, step) => worse(worst, step.worst), undefined),
    steps,
  };
}

const SEVERITIES: readonly Severity[] = ["hint", "information", "warning", "error"];

function worse(a: Severity | undefined, b: Severity | undefined): Severity | undefined {
  if (!a || !b) return a ?? b;
  return SEVERITIES.indexOf(b) > SEVERITIES.indexOf(a) ? b : a;
}

/** The worst finding of each step: a finding belongs to the last step that begins before it. */
class StepFindings {
  readonly #worst = new Map<Step, Severity>();

  constructor(guide: GuideState, findings: readonly FindingSpot[]) {
    const starts = new Map<string, { at: number; step: Step | undefined }[]>();
    for (const { page } of guide.pieces) if (!starts.has(page.uri)) starts.set(page.uri, []);
    for (const stage of guide.stages) {
      if (stage.heading) {
        const { piece, fact } = stage.heading;
        starts.get(piece.page.uri)!.push({ at: piece.start + fact.span.start, step: undefined });
      }
      for (const step of stage.steps) {
        const { piece, fact } = step;
        starts.get(piece.page.uri)!.push({ at: piece.start + fact.span.start, step });
      }
    }
    for (const { uri, span, severity } of findings) {
      const step = lastBefore(starts.get(uri) ?? [], span.start);
      if (step) this.#worst.set(step, worse(this.#worst.get(step), severity)!);
    }
  }

  worstOf(step: Step): Severity | undefined {
    return this.#worst.get(step);
  }
}

/** By halving: a guide has thousands of steps and findings. */
function lastBefore(
  starts: readonly { at: number; step: Step | undefined }[],
  offset: number,
): Step | undefined {
  let low = 0;
  let high = starts.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (starts[middle]!.at <= offset) low = middle + 1;
    else high = middle;
  }
  return starts[low - 1]?.step;
}

function partOf(part: Part, guide: GuideState): PartOverview {
  const { value, package: footprint } = part.line.cells;
  return {
    name: guide.boards.length > 1 && part.board ? `${part.board}/${part.name}` : part.name,
    board: part.board,
    value: value?.text ?? "",
    package: footprint?.text ?? "",
    height: part.offBoard ? undefined : part.height?.mm,
  };
}

function byBoardAndHeight(a: Part, b: Part): number {
  if (a.board !== b.board) return a.board < b.board ? -1 : 1;
  return (a.height?.mm ?? Number.MAX_VALUE) - (b.height?.mm ?? Number.MAX_VALUE) || a.id - b.id;
}
