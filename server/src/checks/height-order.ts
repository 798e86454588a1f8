/** A part is fitted after a taller one on the same board. */
import type { Guide, Stage } from "../model/guide.ts";
import type { Part, Supply } from "../model/parts.ts";
import type { BoardTops, Check, Finding, StageResult } from "./check.ts";
import { involvedMarks } from "./order/involved.ts";
import { moveStep } from "./order/moveStep.ts";
import { scanStage } from "./order/scan.ts";
import { type Turn, useOf } from "./order/turns.ts";
import { type Misplaced, type Standing, untangle } from "./order/untangle.ts";
import { useAt } from "./places.ts";
import { joinWords, listNames, partName, stepName } from "./words.ts";

const NOTHING_IN_PLACE: BoardTops = new Map();

export const check: Check = {
  meta: {
    code: "height-order",
    summary: "A part is fitted after a taller one on the same board.",
    severity: "warning",
    source: "common practice",
    tags: ["order"],
  },
  stage(stage, before, guide) {
    const scan = scanStage(stage, before, guide);
    const result =
      scan.tangled.length > 0
        ? sortOut(stage, before, scan.after, scan.tangled, guide)
        : { findings: [], after: scan.after };
    // A board on which readings were taken works so far; what follows is soldered anew.
    return stage.hasReading ? { ...result, after: NOTHING_IN_PLACE } : result;
  },
};

function sortOut(
  stage: Stage,
  before: BoardTops,
  scanned: BoardTops,
  lanes: readonly string[],
  guide: Guide,
): StageResult {
  const findings: Finding[] = [];
  const after = new Map(scanned);
  for (const lane of lanes) {
    const top = before.get(lane);
    const involved = involvedMarks(stage, lane, heightOf(top?.supply), guide);
    const { misplaced, tallest } = untangle(involved.marks, lane, top, guide);
    for (const one of misplaced) findings.push(outOfOrder(one, stage, before, guide));
    const highest = taller(tallest, involved.tallest);
    if (highest) after.set(lane, useOf(highest, guide));
  }
  return { findings, after };
}

function outOfOrder(misplaced: Misplaced, stage: Stage, before: BoardTops, guide: Guide): Finding {
  const { resolved, item, against, kind } = misplaced;
  const other = useOf(against, guide);
  const there = () => stepName(other);
  return {
    at: { piece: resolved.piece, span: item.item.span },
    message: () => {
      const here = stepName({ step: resolved.step! });
      return kind === "late"
        ? lateMessage(misplaced, here, there())
        : earlyMessage(misplaced, here, there());
    },
    related: [
      { at: useAt(other), message: () => `${partName(against.part)} is fitted in ${there()}.` },
    ],
    fixes: [() => moveStep(misplaced, stage, before, guide)],
  };
}

function lateMessage(misplaced: Misplaced, here: string, there: string): string {
  const { against, turns } = misplaced;
  const tall = partName(against.part);
  const sameStep = here === there;
  const place = sameStep ? `earlier in ${there}` : `in ${there}`;
  const todo = sameStep ? "Name the lower part first" : `Move this step before ${there}`;
  return `${capital(here)} fits ${namesOf(misplaced)} (${heightText(turns[0]!.part)}) after ${tall} (${heightText(against.part)}) ${place}. While the board lies on ${tall} to be soldered, lower parts drop out of place. ${todo}, or put ${tall} aside with \`[later: ${against.part.name}]\`.`;
}

function earlyMessage(misplaced: Misplaced, here: string, there: string): string {
  const { against, turns } = misplaced;
  const tall = turns.at(-1)!.part;
  const name = namesOf(misplaced);
  const place = here === there ? `later in ${there}` : `in ${there}`;
  return `${capital(here)} fits ${name} (${heightText(tall)}) before lower parts, such as ${partName(against.part)} (${heightText(against.part)}) ${place}. While the board lies on ${partName(tall)} to be soldered, lower parts drop out of place. Fit ${name} after them.`;
}

function heightOf(supply: Supply | undefined): number {
  return (supply?.kind === "part" ? supply.height?.mm : undefined) ?? Number.NEGATIVE_INFINITY;
}

function taller(a: Standing | undefined, b: Standing | undefined): Standing | undefined {
  return heightOf(a?.part) >= heightOf(b?.part) ? a : b;
}

/** `R1–R4`; of a choice all that may be taken. */
function namesOf({ item, turns }: Misplaced): string {
  return item.item.kind === "choice"
    ? joinWords(
        item.supplies.map((supply) => supply.name),
        "or",
      )
    : listNames(turns.map((turn: Turn) => turn.part));
}

function heightText(part: Part): string {
  const { mm, from } = part.height!;
  return `${Number(mm.toFixed(2))} mm by ${from}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
