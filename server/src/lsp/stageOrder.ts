/** Puts the steps of a stage in height order by taking the moves that the check offers, one by one. */
import type { GuideState } from "../model/guideState.ts";
import type { Diagnosis, Service } from "../service.ts";
import type { Span, TextEdit } from "../text/span.ts";
import type { FollowedGuides } from "../workspace/followedGuides.ts";

/** No stage in earnest needs as many moves. */
const MOST_MOVES = 500;

/**
 * The edit of the page at `uri` that leaves no step of the stage to be moved; undefined where no move
 * helps. `index` is the stage's place among those of the guide.
 */
export async function orderStage(
  service: Service,
  guide: GuideState,
  uri: string,
  index: number,
): Promise<TextEdit | undefined> {
  const before = service.text(uri)!;
  const trial = service.trial(guide);
  for (let moves = 0; moves < MOST_MOVES; moves++) {
    await trial.settle();
    trial.takeChanges();
    const fix = nextMove(trial, guide.pages[0]!.uri, uri, index);
    if (!fix) break;
    // From the end on, so that each edit's place is still right.
    const edits = fix.edits[0]!.edits.toSorted((a, b) => b.span.start - a.span.start);
    trial.edit(uri, moves + 1, edits);
  }
  return difference(before, trial.text(uri)!);
}

/** Each takes some milliseconds in a long stage, and the light bulb asks at every turn of the cursor. */
const FEW_FINDINGS = 8;

/**
 * Whether a step of the stage can be moved to its place. Of a stage with many findings it is taken for
 * granted.
 */
export function canBeOrdered(
  guides: FollowedGuides,
  guide: GuideState,
  uri: string,
  index: number,
): boolean {
  const found = heightFindings(guides, guide, uri, index);
  return found.length > FEW_FINDINGS || found.some((one) => moveFor(one, uri) !== undefined);
}

/** The first move of a step that the check offers in the stage. */
function nextMove(guides: FollowedGuides, guideUri: string, uri: string, index: number) {
  const guide = guides.guidesOf(uri).find((one) => one.pages[0]!.uri === guideUri);
  if (!guide) return undefined;
  for (const one of heightFindings(guides, guide, uri, index)) {
    const fix = moveFor(one, uri);
    if (fix) return fix;
  }
  return undefined;
}

/** The finding's fix, where it changes this page alone. */
function moveFor(finding: Diagnosis, uri: string) {
  const [fix] = finding.fixes();
  return fix?.edits.length === 1 && fix.edits[0]!.uri === uri ? fix : undefined;
}

/** Findings of the height order in the stage. */
function heightFindings(
  guides: FollowedGuides,
  guide: GuideState,
  uri: string,
  index: number,
): readonly Diagnosis[] {
  const span = stageSpan(guide, uri, index);
  if (!span) return [];
  return guides
    .diagnoses(uri)
    .filter(
      (one) =>
        one.code === "height-order" && one.span.start >= span.start && one.span.start < span.end,
    );
}

/** From the stage's heading to the next; undefined where it has none on the page. */
function stageSpan(guide: GuideState, uri: string, index: number): Span | undefined {
  const startOf = (at: number) => {
    const heading = guide.stages[at]?.heading;
    if (heading?.piece.page.uri !== uri) return undefined;
    return heading.piece.start + heading.fact.span.start;
  };
  const start = startOf(index);
  if (start === undefined) return undefined;
  return { start, end: startOf(index + 1) ?? Number.POSITIVE_INFINITY };
}

/** Position of the stage that an offset of the page lies in. */
export function stageIndexAt(guide: GuideState, uri: string, offset: number): number {
  return guide.stages.findIndex((_, index) => {
    const span = stageSpan(guide, uri, index);
    return span !== undefined && offset >= span.start && offset < span.end;
  });
}

/** The one edit that makes `after` of `before`. */
function difference(before: string, after: string): TextEdit | undefined {
  if (before === after) return undefined;
  const shorter = Math.min(before.length, after.length);
  let head = 0;
  while (head < shorter && before[head] === after[head]) head++;
  let tail = 0;
  while (tail < shorter - head && before.at(-1 - tail) === after.at(-1 - tail)) tail++;
  const span = { start: head, end: before.length - tail };
  return { span, text: after.slice(head, after.length - tail) };
}
