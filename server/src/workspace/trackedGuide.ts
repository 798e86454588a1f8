/** A guide that is followed: loads its pages and lists, keeps it current, and runs the checks. */
import type { Check, Finding } from "../checks/check.ts";
import { CheckRunner, type Found } from "../checks/runner.ts";
import { judge, type SeveritySettings, type Verdict } from "../checks/verdict.ts";
import type { DeratingSettings } from "../model/guide.ts";
import { type GuideChanges, together } from "../model/guideChanges.ts";
import { GuidePage } from "../model/guidePage.ts";
import { GuideState } from "../model/guideState.ts";
import { type BoardList, Kit } from "../model/kit.ts";
import { columnNames } from "../model/list/columnNames.ts";
import type { FrontMatter, Spanned } from "../syntax/frontMatter.ts";
import type { Span } from "../text/span.ts";
import type { TextSource } from "../text/textSource.ts";
import type { ProductStandard } from "../trade/hazards/voltageLimits.ts";
import { missingFile, resolveReference, splitSheet } from "./paths.ts";
import { Pictures } from "./pictures.ts";
import { type NamedSheet, SheetFindings } from "./sheetFindings.ts";
import type { Sources, Wanted } from "./sources.ts";

export interface GuideContext {
  readonly sources: Sources;
  readonly heightTolerance: number;
  readonly limits: Readonly<Record<string, number>>;
  readonly productStandard: ProductStandard;
  readonly storedEnergy: number;
  readonly derating: DeratingSettings;
  readonly checks: SeveritySettings;
  readonly folders: readonly string[];
  readonly listsOutsideWorkspace: boolean;
}

/** Where a wanted file could not be had, and why. */
interface FileProblem {
  readonly code: "unreadable-list" | "front-matter";
  readonly uri: string;
  readonly span: Span;
  readonly message: string;
}

/** A pause in the work; at some of them the findings are worth showing though more will come. */
export type Pause = "worth showing" | undefined;

/**
 * With more new pieces than these the late checks take so long that the others' findings go ahead; and
 * always the first time, when none of the code has run yet.
 */
const MANY_PIECES = 100;

export class TrackedGuide {
  readonly uri: string;
  #context: GuideContext;
  /** Pages read so far, by URI; those no longer named are dropped after loading. */
  readonly #known = new Map<string, GuidePage>();
  #pages: readonly GuidePage[] = [];
  #problems: FileProblem[] = [];
  #sheets = new SheetFindings("", new Map());
  #state: GuideState | undefined;
  #stateKey: readonly unknown[] = [];
  /** None until the file has turned out to be a guide: most Markdown is not. */
  #checks: readonly Check[] = [];
  #early = new CheckRunner([]);
  #late = new CheckRunner([]);
  /** What the late checks have not seen yet. */
  #unseen: GuideChanges | undefined;
  #pictures: Pictures;
  #mustLoad = true;
  #dirty = true;
  #isGuide = false;
  verdicts: readonly Verdict[] = [];
  /** Another object whenever more than the places of findings may have changed. */
  edition: object = {};
  #editionKey: readonly unknown[] = [];

  constructor(uri: string, context: GuideContext) {
    this.uri = uri;
    this.#context = context;
    this.#pictures = new Pictures(context);
  }

  /** Undefined until it has been read, or when the file is no guide. */
  get state(): GuideState | undefined {
    return this.#state;
  }

  get isDirty(): boolean {
    return this.#dirty;
  }

  get pages(): readonly GuidePage[] {
    return this.#pages;
  }

  /** URIs of all files that the guide consists of or draws on, found or not. */
  files: ReadonlySet<string> = new Set();

  configure(context: GuideContext): void {
    this.#context = context;
    this.#pictures = new Pictures(context);
    this.reload();
  }

  /** A file of the guide came, went or changed outside the editor. */
  reload(): void {
    this.#mustLoad = true;
    this.#dirty = true;
  }

  /** Drops a page so that it is read again. */
  reloadPage(uri: string): void {
    this.#known.delete(uri);
    this.reload();
  }

  /** A file came, went or changed; gives whether it is a picture of the guide. */
  changedPicture(uri: string): boolean {
    const isOne = this.#pictures.forget(uri);
    if (isOne) this.#dirty = true;
    return isOne;
  }

  /** Whether the file is a page that edits can be applied to. */
  hasPage(uri: string): boolean {
    return this.#known.has(uri);
  }

  /** Follows an edit of a page that left `text`. */
  edit(uri: string, start: number, end: number, replacement: string, text: TextSource): void {
    this.#dirty = true;
    if (this.#known.get(uri)?.edit(start, end, replacement, text)) this.#mustLoad = true;
  }

  /** Brings the guide up to date; yields between slices of work. */
  async *update(): AsyncGenerator<Pause, void, void> {
    for (;;) {
      this.#dirty = false;
      while (this.#mustLoad) {
        this.#mustLoad = false;
        await this.#load();
        yield undefined;
      }
      for (const page of this.#pages) for (const _ of page.advance()) yield undefined;
      // An edit between two slices may have opened a page again.
      if (this.#dirty || this.#pages.some((page) => !page.sequence.complete)) continue;
      this.#check();
      const isFirst = this.#editionKey.length === 0;
      if (this.#unseen && (isFirst || this.#unseen.admitted.length > MANY_PIECES)) {
        this.#judge(false);
        yield "worth showing";
        if (this.#dirty) continue;
      }
      this.#checkLate();
      const isMissingOne = await this.#pictures.lookUp();
      if (!isMissingOne && !this.#dirty) return;
    }
  }

  async #load(): Promise<void> {
    this.#problems = [];
    const files = new Set([this.uri]);
    this.files = files;
    const first = await this.#page(this.uri);
    const notes = first.kind === "found" ? first.value.frontMatter : undefined;
    if (first.kind !== "found" || !notes?.keys.has("parts")) {
      this.#usePages(first.kind === "found" ? [first.value] : []);
      this.#isGuide = false;
      return;
    }
    this.#isGuide = true;
    const pages = [first.value];
    for (const path of notes.pages) {
      const page = await this.#namedPage(path, files);
      if (page && !pages.includes(page)) pages.push(page);
    }
    const [lists] = await Promise.all([this.#loadLists(notes, files), this.#loadChecks()]);
    this.#usePages(pages);
    this.#build(notes, lists);
  }

  async #loadChecks(): Promise<void> {
    if (this.#checks.length > 0) return;
    const { CHECKS } = await import("../checks/all.ts");
    this.#checks = CHECKS;
    this.#early = new CheckRunner(CHECKS.filter(({ meta }) => !meta.late));
    this.#late = new CheckRunner(CHECKS.filter(({ meta }) => meta.late));
  }

  #usePages(pages: readonly GuidePage[]): void {
    this.#pages = pages;
    for (const [uri, page] of this.#known) if (!pages.includes(page)) this.#known.delete(uri);
  }

  /** Makes a new state when the pages, the lists or what the guide says of them changed. */
  #build(notes: FrontMatter, lists: readonly BoardList[]): void {
    const { heightTolerance, limits, productStandard, storedEnergy, derating } = this.#context;
    const key = [
      ...this.#pages,
      ...lists.flatMap((entry) => [entry.list, entry.board]),
      heightTolerance,
      notes.language?.value,
      JSON.stringify(limits),
      productStandard,
      storedEnergy,
      JSON.stringify(derating),
      JSON.stringify(
        [
          notes.heights,
          notes.offBoard,
          notes.spares,
          notes.clearance,
          notes.limits,
          notes.derating,
        ].map(stripSpans),
      ),
    ];
    const same =
      key.length === this.#stateKey.length && key.every((k, i) => k === this.#stateKey[i]);
    if (same) return;
    this.#stateKey = key;
    this.#state = new GuideState(this.#pages, new Kit(lists, notes), {
      heightTolerance,
      limits,
      productStandard,
      storedEnergy,
      derating,
    });
  }

  async #page(uri: string): Promise<Wanted<GuidePage>> {
    const known = this.#known.get(uri);
    if (known) return { kind: "found", value: known };
    const read = await this.#context.sources.page(uri);
    if (read.kind !== "found") return read;
    const page = new GuidePage(uri, read.value);
    this.#known.set(uri, page);
    return { kind: "found", value: page };
  }

  async #namedPage(path: Spanned<string>, files: Set<string>): Promise<GuidePage | undefined> {
    const uri = this.#resolve(path, "front-matter");
    if (uri === undefined) return undefined;
    files.add(uri);
    const page = await this.#page(uri);
    if (page.kind === "found") return page.value;
    this.#reportUnread(page, path, "front-matter");
    return undefined;
  }

  async #loadLists(notes: FrontMatter, files: Set<string>): Promise<BoardList[]> {
    const columns = columnNames(notes);
    const lists: BoardList[] = [];
    const sheets = new Map<string, NamedSheet>();
    this.#sheets = new SheetFindings(this.uri, sheets);
    for (const { board, path } of notes.parts) {
      const { path: file, sheet } = splitSheet(path.value);
      const uri = this.#resolve({ ...path, value: file }, "unreadable-list");
      if (uri === undefined) continue;
      files.add(uri);
      const wanted = await this.#context.sources.list(uri, columns, sheet);
      if (wanted.kind !== "found") {
        this.#reportUnread(wanted, path, "unreadable-list");
        continue;
      }
      const list = wanted.value;
      lists.push({ board, list });
      if (list.places) sheets.set(list.uri, { places: list.places, span: path.span });
      // A list that is no text cannot show its finding; the guide shows it.
      if (list.text !== "") continue;
      for (const { message } of list.problems) this.#report("unreadable-list", path.span, message);
    }
    return lists;
  }

  #reportUnread(
    wanted: Exclude<Wanted<unknown>, { kind: "found" }>,
    path: Spanned<string>,
    code: FileProblem["code"],
  ): void {
    const message = wanted.kind === "missing" ? missingFile(path.value) : wanted.message;
    this.#report(code, path.span, message);
  }

  #resolve(path: Spanned<string>, code: FileProblem["code"]): string | undefined {
    const resolved = resolveReference(this.uri, path.value, {
      folders: this.#context.folders,
      outsideAllowed: this.#context.listsOutsideWorkspace,
    });
    if ("uri" in resolved) return resolved.uri;
    this.#report(code, path.span, resolved.problem);
    return undefined;
  }

  #report(code: FileProblem["code"], span: Span, message: string): void {
    this.#problems.push({ code, uri: this.uri, span, message });
  }

  #check(): void {
    if (!this.#isGuide || !this.#state) {
      this.#state = undefined;
      this.#stateKey = [];
      this.#unseen = undefined;
      this.verdicts = [];
      return;
    }
    this.#state.explanations = this.#early.explained;
    this.#state.missesPicture = (page, address) => this.#pictures.isMissing(page, address);
    const changes = this.#state.update();
    this.#early.run(this.#state, changes);
    this.#unseen = this.#unseen ? together(this.#unseen, changes) : changes;
  }

  #checkLate(): void {
    if (!this.#state || !this.#unseen) return;
    this.#late.run(this.#state, this.#unseen);
    this.#unseen = undefined;
    this.#judge(true);
  }

  #judge(isAll: boolean): void {
    const state = this.#state!;
    const found = [...this.#fileFindings(), ...this.#early.findings(), ...this.#late.findings()];
    // Without all parts lists every part would seem unknown: only what needs no list is told.
    const complete = this.#problems.every((problem) => problem.code !== "unreadable-list");
    const shown = complete ? found : found.filter(({ check }) => needsNoParts(check));
    const verdicts = judge(shown, state, this.#context.checks, isAll);
    this.verdicts = this.#sheets.show(verdicts);
    const key = [state, state.numbering, state.frontMatter, this.#context];
    if (key.every((one, i) => one === this.#editionKey[i])) return;
    this.#editionKey = key;
    this.edition = {};
  }

  *#fileFindings(): Generator<Found, void, void> {
    for (const { code, uri, span, message } of this.#problems) {
      const check = this.#checks.find((one) => one.meta.code === code)!;
      const finding: Finding = { at: { uri, span }, message: () => message };
      yield { check, finding };
    }
  }
}

/** Tags of checks that say nothing of parts being absent. */
const NEED_NO_PARTS: ReadonlySet<string> = new Set(["form", "list", "wording", "safety"]);

function needsNoParts(check: Check): boolean {
  return check.meta.tags.some((tag) => NEED_NO_PARTS.has(tag));
}

function stripSpans(entries: readonly object[]): unknown[] {
  return entries.map((entry) => ({ ...entry, span: 0, nameSpan: 0 }));
}
