/**
 * What a revised parts list touches in a guide. The guide is looked at under the old and under the new
 * list: what its marks, figures and hazards come to is held against each other, and what the checks
 * find under the new list alone is laid to the place that it speaks of.
 */
import { partName } from "../../checks/words.ts";
import {
  type ComparedPart,
  compareLists,
  type ListChanges,
} from "../../model/compare/compareLists.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { PartsList } from "../../model/list/partsList.ts";
import { tell } from "../../model/list/tellSheet.ts";
import type { Span } from "../../text/span.ts";
import { type Draft, fixesOf, touchedBy } from "./drafts.ts";
import { touchedFigures } from "./figures.ts";
import { isMissing, isTold, kindOfFinding, newFindings, speaksOf } from "./findings.ts";
import { touchedHardware } from "./hardware.ts";
import { touchedHazards } from "./hazards.ts";
import { packingChanges } from "./packing.ts";
import { holds, rowAt, stepAt, toldStep } from "./places.ts";
import type { Revision } from "./revisedParts.ts";
import { touchedSets } from "./sets.ts";
import { touchedSteps } from "./steps.ts";
import {
  type PackingChange,
  type RevisionFinding,
  TOUCHED_KINDS,
  type Touched,
  type TouchedKind,
} from "./touched.ts";

/** The guide under one of the lists, and what the checks find then. */
export interface CheckedGuide {
  readonly guide: GuideState;
  readonly findings: readonly RevisionFinding[];
}

export interface RevisedGuide {
  /** The new list. */
  readonly fresh: PartsList;
  readonly changes: ListChanges;
  /** By kind in the order of `TOUCHED_KINDS`, then by place. */
  readonly touched: readonly Touched[];
  readonly packing: readonly PackingChange[];
  /** The part's designator, with its board only where another board has the same one. */
  nameOf(part: ComparedPart): string;
}

/**
 * What replacing the list touches. `list`: its URI, which is the same on both sides; so is the
 * guide's text. A problem where one of the sides has no such list that can be read.
 */
export function reviseGuide(
  list: string,
  { before, after }: { readonly before: CheckedGuide; readonly after: CheckedGuide },
): RevisedGuide | { readonly problem: string } {
  const [old, fresh] = [listOf(before, list), listOf(after, list)];
  for (const one of [old, fresh]) {
    if (!one) return { problem: "The guide does not name that parts list." };
    if (one.format === "unreadable") {
      return { problem: one.problems[0]?.message ?? "The parts list cannot be read." };
    }
  }
  const changes = compareLists(old!, fresh!);
  const revision: Revision = { before: before.guide, after: after.guide, list, changes };
  const drafts = [
    ...touchedSteps(revision),
    ...touchedHardware(revision),
    ...touchedSets(revision),
    ...touchedFigures(revision),
    ...touchedHazards(revision),
  ];
  const findings = newFindings(before.findings, after.findings, list);
  return {
    fresh: fresh!,
    changes,
    touched: inOrder(withFindings(drafts, findings, revision), revision).map((one) =>
      withoutSheet(one, fresh!, after.guide),
    ),
    packing: packingChanges(old!, fresh!, changes),
    nameOf: (part) => nameUnder([before.guide, after.guide], part),
  };
}

function nameUnder(guides: readonly GuideState[], { name, board }: ComparedPart): string {
  const found = guides.map(({ kit }) => kit.find(name));
  const boards = new Set(found.flatMap(({ part }) => part?.board ?? []));
  const isAlone = boards.size < 2 && found.every(({ doubtful }) => !doubtful);
  return isAlone ? name : partName({ name, board });
}

function listOf({ guide }: CheckedGuide, uri: string): PartsList | undefined {
  return guide.lists.find((list) => list.uri === uri);
}

/** Findings that say the same as a draft go with it; each of the others stands for itself. */
function withFindings(
  drafts: readonly Draft[],
  findings: readonly RevisionFinding[],
  revision: Revision,
): Touched[] {
  const own = drafts.map((draft) => ({
    draft,
    place: touchedBy(draft, []),
    found: [] as RevisionFinding[],
  }));
  const alone: Touched[] = [];
  for (const finding of findings) {
    const there = own.filter(
      ({ draft, place }) => isTold(draft.kind, finding) && isAbout(place, finding),
    );
    const named = (where: typeof own) => where.find(({ draft }) => speaksOf(draft, finding));
    // That no step fits a part is told in the list, what became of it perhaps in the guide.
    const meant = named(there) ?? there[0] ?? (isMissing(finding) ? named(own) : undefined);
    if (meant) meant.found.push(finding);
    else alone.push(ofFinding(finding, revision));
  }
  const ratings = alone.filter(({ kind }) => kind === "rating");
  const told = own.filter(({ place }) => !isAnswered(place, ratings));
  return [...told.map(({ draft, found }) => touchedBy(draft, found)), ...alone];
}

/** A figure is one of several in its step; anything else is told of the whole step. */
function isAbout(place: Touched, { uri, span }: RevisionFinding): boolean {
  return place.kind === "figure" ? isWithin(place, uri, span) : holds(place, uri, span.start);
}

/** Whether a finding says how a figure does not hold, of which it is only asked whether it does. */
function isAnswered(place: Touched, ratings: readonly Touched[]): boolean {
  if (place.kind !== "figure" || place.note !== undefined) return false;
  return ratings.some(({ uri, span }) => isWithin(place, uri, span));
}

function isWithin(place: Touched, uri: string, { start }: Span): boolean {
  return place.uri === uri && place.span.start <= start && start <= place.span.end;
}

function ofFinding(finding: RevisionFinding, { after }: Revision): Touched {
  const { uri, span, message } = finding;
  const piece = after.pieces.findLast(
    (one) =>
      one.page.uri === uri && one.start <= span.start && span.start <= one.start + one.length,
  );
  const at = piece && {
    piece,
    span: { start: span.start - piece.start, end: span.end - piece.start },
  };
  const step = at && stepAt(at.piece, at.span.start);
  const kind = kindOfFinding(finding);
  return {
    kind: kind === "step" && at && rowAt(at.piece, at.span.start) ? "table" : kind,
    uri,
    span,
    step: step && toldStep(step),
    message,
    note: undefined,
    findings: [finding],
    fixes: () => fixesOf(finding),
  };
}

/** A place in a workbook is told by its cell, where the guide names the list. */
function withoutSheet(touched: Touched, { uri, places }: PartsList, guide: GuideState): Touched {
  if (!places || touched.uri !== uri) return touched;
  const [page] = guide.pages;
  const span = page!.frontMatter?.keys.get("parts") ?? { start: 0, end: 0 };
  const message = tell(places, touched.span, touched.message);
  return { ...touched, uri: page!.uri, span, message };
}

function inOrder(touched: readonly Touched[], { after }: Revision): Touched[] {
  const kinds = Object.keys(TOUCHED_KINDS) as TouchedKind[];
  const pages = after.pages.map(({ uri }) => uri);
  // Places in the list come last.
  const pageOf = ({ uri }: Touched) => (pages.includes(uri) ? pages.indexOf(uri) : pages.length);
  return [...touched].sort(
    (a, b) =>
      kinds.indexOf(a.kind) - kinds.indexOf(b.kind) ||
      pageOf(a) - pageOf(b) ||
      a.span.start - b.span.start,
  );
}
