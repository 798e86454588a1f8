/**
 * What each file shows: verdicts in their order, messages made, places counted. After an edit most
 * findings are the ones before, and so is what is shown of them: only their offsets follow the edit.
 */
import type { Anchor, Finding, Fix, Severity } from "../checks/check.ts";
import { placeOf, type Verdict } from "../checks/verdict.ts";
import type { LineIndex, Position } from "../text/lines.ts";
import type { Span } from "../text/span.ts";

export interface Location {
  readonly uri: string;
  readonly span: Span;
  readonly start: Position;
  readonly end: Position;
}

/** A finding as it leaves the analysis: its message made, its place counted. */
export interface Diagnosis extends Location {
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
  readonly related: readonly (Location & { readonly message: string })[];
  /** The fixes as the text stands now. */
  fixes(): readonly Fix[];
  /** How many findings are left out in favour of this line that tells of them. */
  readonly standsFor?: Readonly<Partial<Record<Severity, number>>>;
}

/** No file shows more findings than this; one more tells how many are left out. */
export const MOST_FINDINGS = 1000;

const RANK: Readonly<Record<Severity, number>> = { error: 0, warning: 1, information: 2, hint: 3 };

/** Looks up the lines of a file. */
export type LineLookup = (uri: string) => LineIndex | undefined;

/** A guide's verdicts, and what changes when more than their places may have changed. */
export interface JudgedGuide {
  readonly verdicts: readonly Verdict[];
  readonly edition: object;
}

/** What a file shows when it no longer shows what it did. */
export interface Changed {
  readonly uri: string;
  readonly diagnoses: readonly Diagnosis[];
}

export class DiagnosisBook {
  readonly #shown = new Map<string, readonly Diagnosis[]>();
  /** What is known of the findings, as long as the editions of the guides are these. */
  #known = new WeakMap<Finding, Rendered>();
  #editions: readonly object[] = [];

  of(uri: string): readonly Diagnosis[] {
    return this.#shown.get(uri) ?? [];
  }

  /** Brings what is shown up to date. A file that no guide speaks of any more comes once, empty. */
  update(guides: readonly JudgedGuide[], lines: LineLookup): Changed[] {
    this.#forgetOld(guides);
    const byFile = byUri(guides);
    for (const uri of this.#shown.keys()) if (!byFile.has(uri)) byFile.set(uri, []);
    const changes: Changed[] = [];
    for (const [uri, verdicts] of byFile) {
      const before = this.of(uri);
      const diagnoses = this.#diagnose(uri, verdicts, lines);
      if (diagnoses.length > 0) this.#shown.set(uri, diagnoses);
      else this.#shown.delete(uri);
      if (!sameDiagnoses(before, diagnoses)) changes.push({ uri, diagnoses });
    }
    return changes;
  }

  #forgetOld(guides: readonly JudgedGuide[]): void {
    const editions = guides.map(({ edition }) => edition);
    const known = this.#editions;
    const same = editions.length === known.length && editions.every((one, i) => one === known[i]);
    if (same) return;
    this.#editions = editions;
    this.#known = new WeakMap();
  }

  #diagnose(uri: string, verdicts: readonly Verdict[], lines: LineLookup): Diagnosis[] {
    if (!lines(uri)) return [];
    const { kept, left } = worst([...verdicts].sort(byPlace), MOST_FINDINGS);
    const diagnoses: Diagnosis[] = [];
    for (const verdict of kept) {
      const diagnosis = this.#render(verdict, lines);
      if (!isRepeated(diagnoses, diagnosis)) diagnoses.push(diagnosis);
    }
    if (left.length > 0) diagnoses.push(remainder(uri, left));
    return diagnoses;
  }

  #render(verdict: Verdict, lines: LineLookup): Diagnosis {
    const known = this.#known.get(verdict.finding);
    if (known?.follow(verdict, lines)) return known;
    const rendered = new Rendered(verdict, lines);
    this.#known.set(verdict.finding, rendered);
    return rendered;
  }
}

/** A place that is shown, and what it follows. */
class RelatedPlace implements Location {
  readonly uri: string;
  span: Span;
  readonly start: Position;
  readonly end: Position;
  readonly message: string;
  readonly #at: Anchor;

  constructor(at: Anchor, message: string, lines: LineIndex) {
    const { uri, span } = placeOf(at);
    this.#at = at;
    this.uri = uri;
    this.span = span;
    this.start = lines.positionAt(span.start);
    this.end = lines.positionAt(span.end);
    this.message = message;
  }

  /** Takes the offsets that the text now gives; false where line or column are others. */
  follow(lines: LineLookup): boolean {
    const { span } = placeOf(this.#at);
    if (!isAt(this, span, lines(this.uri))) return false;
    this.span = span;
    return true;
  }
}

class Rendered implements Diagnosis {
  readonly uri: string;
  span: Span;
  readonly start: Position;
  readonly end: Position;
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
  readonly related: readonly RelatedPlace[];
  readonly #fixes: NonNullable<Finding["fixes"]>;

  constructor({ check, finding, severity, uri, start, end }: Verdict, lines: LineLookup) {
    const index = lines(uri)!;
    this.uri = uri;
    this.span = { start, end };
    this.start = index.positionAt(start);
    this.end = index.positionAt(end);
    this.code = check.meta.code;
    this.severity = severity;
    this.message = finding.message();
    this.related = (finding.related ?? []).flatMap(({ at, message }) => {
      const there = lines(placeOf(at).uri);
      return there ? [new RelatedPlace(at, message(), there)] : [];
    });
    this.#fixes = finding.fixes ?? [];
  }

  fixes(): readonly Fix[] {
    return this.#fixes.map((fix) => fix()).filter((fix) => fix !== undefined);
  }

  /** Takes the offsets that the text now gives; false where it must be shown anew. */
  follow({ uri, start, end }: Verdict, lines: LineLookup): boolean {
    if (!isAt(this, { start, end }, lines(uri))) return false;
    if (!this.related.every((place) => place.follow(lines))) return false;
    this.span = { start, end };
    return true;
  }
}

/** Whether the span still has the line and column it is shown at. */
function isAt(shown: Location, { start, end }: Span, lines: LineIndex | undefined): boolean {
  return lines?.isAt(start, shown.start) === true && lines.isAt(end, shown.end);
}

function byUri(guides: readonly JudgedGuide[]): Map<string, Verdict[]> {
  const byFile = new Map<string, Verdict[]>();
  for (const { verdicts } of guides) {
    for (const verdict of verdicts) {
      const there = byFile.get(verdict.uri);
      if (there) there.push(verdict);
      else byFile.set(verdict.uri, [verdict]);
    }
  }
  return byFile;
}

function byPlace(a: Verdict, b: Verdict): number {
  return a.start - b.start || a.end - b.end || compareText(a.check.meta.code, b.check.meta.code);
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** The `most` severest in their order, and what is left. */
function worst(
  sorted: readonly Verdict[],
  most: number,
): { kept: readonly Verdict[]; left: readonly Verdict[] } {
  if (sorted.length <= most) return { kept: sorted, left: [] };
  const room = roomByRank(sorted, most);
  const kept: Verdict[] = [];
  const left: Verdict[] = [];
  for (const verdict of sorted) {
    if (room[RANK[verdict.severity]]!-- > 0) kept.push(verdict);
    else left.push(verdict);
  }
  return { kept, left };
}

/** How many verdicts of each rank have room, those of the ranks before coming first. */
function roomByRank(verdicts: readonly Verdict[], most: number): number[] {
  const counts = [0, 0, 0, 0];
  for (const { severity } of verdicts) counts[RANK[severity]]!++;
  let room = most;
  return counts.map((count) => {
    const own = Math.min(count, room);
    room -= own;
    return own;
  });
}

function remainder(uri: string, left: readonly Verdict[]): Diagnosis {
  const start = { line: 0, column: 0 };
  const standsFor: Partial<Record<Severity, number>> = {};
  for (const { severity } of left) standsFor[severity] = (standsFor[severity] ?? 0) + 1;
  return {
    code: "more-findings",
    severity: "information",
    message: `${left.length} more findings are not shown. They come up as those above are dealt with.`,
    uri,
    span: { start: 0, end: 0 },
    start,
    end: start,
    related: [],
    fixes: () => [],
    standsFor,
  };
}

/** Whether the same stands there already: several guides on one list say the same of it. */
function isRepeated(diagnoses: readonly Diagnosis[], diagnosis: Diagnosis): boolean {
  for (let i = diagnoses.length - 1; i >= 0; i--) {
    const one = diagnoses[i]!;
    if (one.span.start !== diagnosis.span.start) return false;
    if (isSame(one, diagnosis)) return true;
  }
  return false;
}

function sameDiagnoses(a: readonly Diagnosis[], b: readonly Diagnosis[]): boolean {
  return a.length === b.length && a.every((one, index) => isSame(one, b[index]!));
}

function isSame(a: Diagnosis, b: Diagnosis): boolean {
  if (a === b) return true;
  return (
    a.code === b.code &&
    a.severity === b.severity &&
    a.message === b.message &&
    samePlace(a, b) &&
    a.related.length === b.related.length &&
    a.related.every(
      (one, i) => one.message === b.related[i]!.message && samePlace(one, b.related[i]!),
    )
  );
}

function samePlace(a: Location, b: Location): boolean {
  return (
    a.uri === b.uri &&
    a.start.line === b.start.line &&
    a.start.column === b.start.column &&
    a.end.line === b.end.line &&
    a.end.column === b.end.column
  );
}
