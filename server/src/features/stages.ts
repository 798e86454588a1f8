/** The stages and steps of a guide, each with what it fits and its worst finding. */
import type { Severity } from "../checks/check.ts";
import { placeOf } from "../checks/verdict.ts";
import { markItems } from "../checks/words.ts";
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

/** A finding as far as a step shows it. */
export interface FindingSpot extends Spot {
  readonly severity: Severity;
}

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

/** Those that have steps. `findings` are those of all files of the guide. */
export function stagesOf(guide: GuideState, findings: readonly FindingSpot[]): StageOverview[] {
  const steps = new StepFindings(guide, findings);
  const fitted = fittedBySteps(guide);
  return guide.stages
    .filter((stage) => stage.steps.length > 0)
    .map((stage) => stageOf(stage, steps, fitted));
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
