/** The one door to the analysis for the language server and the command line. */
import type { Fix, Severity } from "./checks/check.ts";
import { placeOf, type SeveritySettings, type Verdict } from "./checks/verdict.ts";
import type { GuideState } from "./model/guideState.ts";
import type { PartsList } from "./model/list/partsList.ts";
import type { LineIndex, Position } from "./text/lines.ts";
import type { Span } from "./text/span.ts";
import type { Files } from "./workspace/files.ts";
import { type NewGuide, type NewGuideRequest, newGuide } from "./workspace/newGuide.ts";
import { Sources } from "./workspace/sources.ts";
import { type GuideContext, TrackedGuide } from "./workspace/trackedGuide.ts";

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

export interface ServiceSettings {
  readonly heightTolerance: number;
  /** Limits by check code, for checks that have one; the guide's own `checks` key wins over them. */
  readonly limits: Readonly<Record<string, number>>;
  /** Severity by check code; the guide's own `checks` key wins over it. */
  readonly checks: SeveritySettings;
  /** Folders whose files may be read; a list elsewhere is refused. Empty: the guide's own folder. */
  readonly folders: readonly string[];
  readonly listsOutsideWorkspace: boolean;
}

export const DEFAULT_SETTINGS: ServiceSettings = {
  heightTolerance: 1,
  limits: {},
  checks: {},
  folders: [],
  listsOutsideWorkspace: false,
};

export interface FileDiagnoses {
  readonly uri: string;
  /** Version of the open text that was checked; undefined for a file that is not open. */
  readonly version: number | undefined;
  readonly diagnoses: readonly Diagnosis[];
}

/** No file shows more findings than this; one more tells how many are left out. */
export const MOST_FINDINGS = 1000;

const RANK: Readonly<Record<Severity, number>> = { error: 0, warning: 1, information: 2, hint: 3 };

export class Service {
  readonly #sources: Sources;
  #settings: ServiceSettings;
  readonly #guides = new Map<string, TrackedGuide>();
  /** Guides that are followed although no editor has them open. */
  readonly #followed = new Set<string>();
  readonly #shown = new Map<string, readonly Diagnosis[]>();

  constructor(files: Files, settings: ServiceSettings = DEFAULT_SETTINGS) {
    this.#sources = new Sources(files);
    this.#settings = settings;
  }

  /** Takes a text from the editor; it wins over the file. */
  open(uri: string, version: number, text: string): void {
    this.#sources.open(uri, version, text);
    if (isMarkdown(uri)) this.#track(uri);
    this.#reload(uri);
  }

  /** Applies edits in order, each to the text that the one before left. */
  edit(uri: string, version: number, edits: readonly { span: Span; text: string }[]): void {
    const open = this.#sources.opened(uri);
    if (!open) throw new Error(`${uri} is not open`);
    for (const { span, text } of edits) {
      open.edit(version, span.start, span.end, text);
      for (const guide of this.#guides.values()) {
        if (guide.hasPage(uri)) guide.edit(uri, span.start, span.end, text, open.source);
        else if (guide.files.has(uri) || guide.uri === uri) guide.reload();
      }
    }
    open.version = version;
  }

  /** The editor no longer holds the text: the file counts again. */
  close(uri: string): void {
    this.#sources.close(uri);
    if (this.#guides.has(uri) && !this.#followed.has(uri)) this.#guides.delete(uri);
    this.#reload(uri);
  }

  /** A file was made, changed or deleted outside the editor. */
  changedOutside(uri: string): void {
    if (this.#sources.opened(uri)) return;
    this.#sources.forget(uri);
    this.#reload(uri);
  }

  configure(settings: ServiceSettings): void {
    this.#settings = settings;
    for (const guide of this.#guides.values()) guide.configure(this.#context());
  }

  /** Follows a guide that no editor has open. */
  follow(uri: string): void {
    this.#followed.add(uri);
    this.#track(uri);
  }

  unfollow(uri: string): void {
    this.#followed.delete(uri);
    if (!this.#sources.opened(uri)) this.#guides.delete(uri);
  }

  get isDirty(): boolean {
    for (const guide of this.#guides.values()) if (guide.isDirty) return true;
    return false;
  }

  /**
   * Does the work that is due, in slices of a few milliseconds; between slices the caller may take
   * edits, which the work then goes on with. Waits for files where it needs them.
   */
  async *update(): AsyncGenerator<void, void, void> {
    while (this.isDirty) {
      for (const guide of this.#guides.values()) {
        if (guide.isDirty) yield* guide.update();
      }
    }
  }

  /** Does all the work that is due. */
  async settle(): Promise<void> {
    for await (const _ of this.update()) void _;
  }

  /** Files whose diagnoses changed since the last call. A file no longer followed comes once, empty. */
  takeChanges(): FileDiagnoses[] {
    const byFile = new Map<string, Verdict[]>();
    for (const guide of this.#guides.values()) {
      for (const verdict of guide.verdicts) {
        const verdicts = byFile.get(verdict.uri);
        if (verdicts) verdicts.push(verdict);
        else byFile.set(verdict.uri, [verdict]);
      }
    }
    const changes: FileDiagnoses[] = [];
    for (const uri of [...this.#shown.keys()]) if (!byFile.has(uri)) byFile.set(uri, []);
    for (const [uri, verdicts] of byFile) {
      const diagnoses = this.#diagnose(uri, verdicts);
      const before = this.#shown.get(uri) ?? [];
      // Kept even when they look the same: their offsets follow edits that move no line.
      if (diagnoses.length > 0) this.#shown.set(uri, diagnoses);
      else this.#shown.delete(uri);
      if (sameDiagnoses(before, diagnoses)) continue;
      changes.push({ uri, version: this.#sources.opened(uri)?.version, diagnoses });
    }
    return changes;
  }

  /** What the file shows now. */
  diagnoses(uri: string): readonly Diagnosis[] {
    return this.#shown.get(uri) ?? [];
  }

  /** The beginning of a guide for a parts list, which need not be in use yet. */
  newGuide(request: NewGuideRequest): Promise<NewGuide> {
    return newGuide(request, this.#sources);
  }

  /** Guides whose pages or parts lists include the file. */
  guidesOf(uri: string): readonly GuideState[] {
    return [...this.#guides.values()]
      .filter((guide) => guide.uri === uri || guide.files.has(uri))
      .map((guide) => guide.state)
      .filter((state) => state !== undefined);
  }

  /** URIs of the parts lists in use. */
  lists(): readonly string[] {
    const uris = new Set<string>();
    for (const guide of this.#guides.values()) {
      for (const list of guide.state?.lists ?? []) uris.add(list.uri);
    }
    return [...uris];
  }

  list(uri: string): PartsList | undefined {
    for (const guide of this.guidesOf(uri)) {
      const list = guide.lists.find((one) => one.uri === uri);
      if (list) return list;
    }
    return undefined;
  }

  /** Current text of a page or parts list that is followed. */
  text(uri: string): string | undefined {
    const open = this.#sources.opened(uri);
    if (open) return open.text;
    for (const guide of this.guidesOf(uri)) {
      const page = guide.pages.find((one) => one.uri === uri);
      if (page) return page.text.toString();
    }
    return this.list(uri)?.text;
  }

  /** Lines of a page or parts list that is followed. */
  lines(uri: string): LineIndex | undefined {
    const open = this.openLines(uri);
    if (open) return open;
    const text = this.text(uri);
    return text === undefined ? undefined : this.#sources.lines(uri, text);
  }

  /** Lines of a text that an editor holds. */
  openLines(uri: string): LineIndex | undefined {
    return this.#sources.opened(uri)?.lines;
  }

  /** Version of a text that an editor holds. */
  version(uri: string): number | undefined {
    return this.#sources.opened(uri)?.version;
  }

  #track(uri: string): void {
    if (!this.#guides.has(uri)) this.#guides.set(uri, new TrackedGuide(uri, this.#context()));
  }

  #reload(uri: string): void {
    for (const guide of this.#guides.values()) {
      if (guide.uri === uri || guide.files.has(uri)) guide.reloadPage(uri);
      guide.changedPicture(uri);
    }
  }

  #context(): GuideContext {
    return { ...this.#settings, sources: this.#sources };
  }

  #diagnose(uri: string, verdicts: readonly Verdict[]): Diagnosis[] {
    const sorted = [...verdicts].sort(byPlace);
    const lines = this.lines(uri);
    if (!lines) return [];
    const { kept, left } = worst(sorted, MOST_FINDINGS);
    const diagnoses: Diagnosis[] = [];
    for (const verdict of kept) {
      const diagnosis = this.#render(verdict, lines);
      if (!isRepeated(diagnoses, diagnosis)) diagnoses.push(diagnosis);
    }
    if (left.length > 0) diagnoses.push(remainder(uri, left));
    return diagnoses;
  }

  #render({ check, finding, severity, uri, span }: Verdict, lines: LineIndex): Diagnosis {
    const related = (finding.related ?? []).flatMap(({ at, message }) => {
      const place = placeOf(at);
      const index = this.lines(place.uri);
      return index ? [{ ...place, ...index.range(place.span), message: message() }] : [];
    });
    const fixes = finding.fixes ?? [];
    return {
      code: check.meta.code,
      severity,
      message: finding.message(),
      uri,
      span,
      ...lines.range(span),
      related,
      fixes: () => fixes.map((fix) => fix()).filter((fix) => fix !== undefined),
    };
  }
}

function isMarkdown(uri: string): boolean {
  return /\.(?:md|markdown)$/i.test(uri) || !/\.\w+$/.test(uri);
}

function byPlace(a: Verdict, b: Verdict): number {
  return (
    a.span.start - b.span.start ||
    a.span.end - b.span.end ||
    compareText(a.check.meta.code, b.check.meta.code)
  );
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
  const ranked = sorted.map((verdict, index) => ({ verdict, index }));
  ranked.sort((a, b) => RANK[a.verdict.severity] - RANK[b.verdict.severity] || a.index - b.index);
  const kept = ranked.slice(0, most).sort((a, b) => a.index - b.index);
  return {
    kept: kept.map((one) => one.verdict),
    left: ranked.slice(most).map((one) => one.verdict),
  };
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
