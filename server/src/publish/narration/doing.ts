/**
 * How long the builder works at each step: what the author says in a comment (`<!-- takes 5 min -->`),
 * else a guess from what the step fits. A comment above a step or in it holds for the step; one at a
 * stage's head holds for the stage, whose other steps share what the estimates of steps leave.
 */
import { fittedBySteps } from "../../model/fittedBySteps.ts";
import type { Stage, Step } from "../../model/guide.ts";
import type { GuideState } from "../../model/guideState.ts";
import { secondsToDo } from "./time.ts";

export interface WorkTime {
  readonly seconds: number;
  /** Whether the author says so, for the step itself. */
  readonly estimated: boolean;
}

export function timesToDo(guide: GuideState): ReadonlyMap<Step, WorkTime> {
  const times = new Map<Step, WorkTime>();
  const guesses = guessed(guide);
  for (const stage of guide.stages) {
    const { whole, steps } = estimatesOf(stage);
    const others = stage.steps.filter((step) => !steps.has(step));
    const share = whole === undefined ? 1 : shareOf(whole, steps, others, guesses);
    for (const step of stage.steps) {
      const estimate = steps.get(step);
      const seconds = estimate ?? guesses.get(step)! * share;
      times.set(step, { seconds, estimated: estimate !== undefined });
    }
  }
  return times;
}

/** How much longer than guessed the other steps take, so that the stage takes what its author says. */
function shareOf(
  whole: number,
  estimates: ReadonlyMap<Step, number>,
  others: readonly Step[],
  guesses: ReadonlyMap<Step, number>,
): number {
  let left = whole;
  for (const seconds of estimates.values()) left -= seconds;
  const guessed = others.reduce((sum, step) => sum + guesses.get(step)!, 0);
  return guessed > 0 ? Math.max(0, left) / guessed : 1;
}

function guessed(guide: GuideState): ReadonlyMap<Step, number> {
  const fitted = fittedBySteps(guide);
  const hardware = new Map<Step, number>();
  for (const one of guide.hardware) {
    for (const { step, count, role } of guide.uses(one)) {
      if (role === "fit") hardware.set(step, (hardware.get(step) ?? 0) + (count ?? 0));
    }
  }
  const guess = (step: Step) =>
    secondsToDo({
      fitted: fitted.get(step)?.length ?? 0,
      made: step.marks.filter(({ mark }) => mark.role === "make").length,
      hardware: hardware.get(step) ?? 0,
    });
  return new Map(guide.stages.flatMap(({ steps }) => steps.map((step) => [step, guess(step)])));
}

interface Estimates {
  /** Of the stage. */
  readonly whole: number | undefined;
  readonly steps: ReadonlyMap<Step, number>;
}

/** The later of two for one step counts; one below the last step concerns nothing. */
function estimatesOf(stage: Stage): Estimates {
  const steps = new Map<Step, number>();
  let whole: number | undefined;
  let waiting: number | undefined;
  let current: Step | undefined;
  for (const { piece, start, end } of stage.stretches) {
    for (const fact of piece.facts.facts) {
      if (fact.kind === "step") {
        const step = piece.steps.find((one) => one.fact === fact);
        if (step?.stage !== stage) continue;
        current = step;
        if (waiting !== undefined) steps.set(step, waiting);
        waiting = undefined;
      }
      if (fact.kind !== "comment" || fact.comment.kind !== "takes") continue;
      if (fact.span.start < start || fact.span.start >= end) continue;
      const { seconds } = fact.comment;
      if (seconds === undefined) continue;
      if (!current) whole = seconds;
      else if (fact.inline) steps.set(current, seconds);
      else waiting = seconds;
    }
  }
  return { whole, steps };
}
