/** Lines above a stage's heading and above lines of a parts list: how far the fitting has come. */
import { accountsFor, isMissing } from "../model/accounting.ts";
import type { GuideState } from "../model/guideState.ts";
import type { PartsList } from "../model/list/partsList.ts";
import type { Part, Supply } from "../model/parts.ts";
import type { UseNode } from "../model/pieceNode.ts";
import type { StageNode } from "../model/stageNode.ts";
import { type Span, shift } from "../text/span.ts";

export interface Lens {
  /** What it stands above. */
  readonly span: Span;
  readonly title: string;
  /** The use that it leads to. */
  readonly use: UseNode | undefined;
}

/** `12 parts · 47 of 96 fitted` above each stage of a page: here, and from the first stage on. */
export function stageLenses(guide: GuideState, uri: string): readonly Lens[] {
  const lenses: Lens[] = [];
  const listed = guide.parts.filter((part) => isMissing(part, [])).length;
  const isDone = new Uint8Array(guide.parts.length);
  let done = 0;
  for (const stage of guide.stages) {
    const here = partsOf(stage);
    for (const part of here) {
      if (isDone[part.id] === 1 || !isMissing(part, [])) continue;
      isDone[part.id] = 1;
      done++;
    }
    const { heading } = stage;
    if (!heading || heading.piece.page.uri !== uri || stage.steps.length === 0) continue;
    const count = here.length === 1 ? "1 part" : `${here.length} parts`;
    lenses.push({
      span: shift(heading.fact.span, heading.piece.start),
      title: `${count} · ${done} of ${listed} fitted`,
      use: undefined,
    });
  }
  return lenses;
}

/** A stage whose marks change is another stage. */
const PARTS = new WeakMap<StageNode, readonly Part[]>();

/** Parts that the stage puts in place for good, or leaves out for good. */
function partsOf(stage: StageNode): readonly Part[] {
  const known = PARTS.get(stage);
  if (known) return known;
  const parts = new Set<Part>();
  for (const use of stage.uses()) {
    if (accountsFor(use) && use.supply.kind === "part") parts.add(use.supply);
  }
  const found = [...parts];
  PARTS.set(stage, found);
  return found;
}

/** No lens names more steps. */
const MOST_STEPS = 4;

/** The steps that account for each line of a parts list, or use it at all. */
export function lineLenses(guide: GuideState, list: PartsList): readonly Lens[] {
  const lenses: Lens[] = [];
  const add = (span: Span, supplies: readonly Supply[]) => {
    const title = titleOf(supplies, guide);
    if (title) lenses.push({ span, ...title });
  };
  for (const line of list.lines) add(line.span, guide.partsOf(line));
  for (const hardware of guide.hardware) {
    if (hardware.list === list) add(hardware.line.span, [hardware]);
  }
  return lenses.sort((a, b) => a.span.start - b.span.start);
}

function titleOf(
  supplies: readonly Supply[],
  guide: GuideState,
): Pick<Lens, "title" | "use"> | undefined {
  if (supplies.length === 0) return undefined;
  const uses = supplies.flatMap((supply) => [...guide.uses(supply)]);
  if (uses.length === 0) return { title: "No step yet", use: undefined };
  const settling = uses.filter(accountsFor);
  const shown = settling.length > 0 ? settling : uses;
  const numbers = [...new Set(shown.map((use) => use.step.number))];
  const more = numbers.length - MOST_STEPS;
  const named = numbers.slice(0, MOST_STEPS).join(", ");
  const word = numbers.length === 1 ? "Step" : "Steps";
  return { title: `${word} ${named}${more > 0 ? ` and ${more} more` : ""}`, use: shown[0] };
}
