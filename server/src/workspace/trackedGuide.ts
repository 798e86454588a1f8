/** A guide that is followed: kept current with its files and edits, and checked. */
import type { Check, Finding } from "../checks/check.ts";
import { readingFindings } from "../checks/readingFindings.ts";
import { CheckRunner, type Found } from "../checks/runner.ts";
import { judge, judgeEarly, type SeveritySettings, type Verdict } from "../checks/verdict.ts";
import type { GuideSettings } from "../model/guide.ts";
import { type GuideChanges, together } from "../model/guideChanges.ts";
import type { GuidePage } from "../model/guidePage.ts";
import { GuideState } from "../model/guideState.ts";
import { type BoardList, Kit } from "../model/kit.ts";
import type { FrontMatter } from "../syntax/frontMatter.ts";
import type { TextSource } from "../text/textSource.ts";
import { type FileContext, GuideFiles } from "./guideFiles.ts";
import { Pictures } from "./pictures.ts";

/** What a guide is checked with. */
export interface GuideContext extends GuideSettings, FileContext {
  readonly checks: SeveritySettings;
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
  readonly #files: GuideFiles;
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
    this.#files = new GuideFiles(uri, context);
    this.#pictures = new Pictures(context);
  }

  /** Undefined until it has been read, or when the file is no guide. */
  get state(): GuideState | undefined {
    return this.#state;
  }

  get isDirty(): boolean {
    return this.#dirty;
  }

  /** URIs of all files that the guide consists of or draws on, found or not. */
  get files(): ReadonlySet<string> {
    return this.#files.uris;
  }

  configure(context: GuideContext): void {
    this.#context = context;
    this.#files.configure(context);
    this.#pictures = new Pictures(context);
    this.reload();
  }

  /** Whether the guide has to be read again when the file comes, goes or changes. */
  dependsOn(uri: string): boolean {
    return this.#files.dependsOn(uri);
  }

  /** A file of the guide came, went or changed outside the editor. */
  reload(): void {
    this.#mustLoad = true;
    this.#dirty = true;
  }

  /** Drops a page so that it is read again. */
  reloadPage(uri: string): void {
    this.#files.forget(uri);
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
    return this.#files.page(uri) !== undefined;
  }

  /** Follows an edit of a page that left `text`. */
  edit(uri: string, start: number, end: number, replacement: string, text: TextSource): void {
    this.#dirty = true;
    if (this.#files.page(uri)?.edit(start, end, replacement, text)) this.#mustLoad = true;
  }

  /** Brings the guide up to date; yields between slices of work. */
  async *update(): AsyncGenerator<Pause, void, void> {
    for (;;) {
      this.#dirty = false;
      while (this.#mustLoad) {
        this.#mustLoad = false;
        yield* this.#load();
        yield undefined;
      }
      for (const page of this.#files.pages) for (const _ of page.advance()) yield undefined;
      // An edit between two slices may have opened a page again.
      if (this.#dirty || this.#files.pages.some((page) => !page.sequence.complete)) continue;
      this.#check();
      if (this.#unseen && (this.#isFirst || this.#unseen.admitted.length > MANY_PIECES)) {
        this.#judge(false);
        yield "worth showing";
        if (this.#dirty) continue;
      }
      this.#checkLate();
      const isMissingOne = await this.#pictures.lookUp();
      if (!isMissingOne && !this.#dirty) return;
    }
  }

  /** Whether nothing of the guide has been checked yet. */
  get #isFirst(): boolean {
    return this.#editionKey.length === 0;
  }

  async *#load(): AsyncGenerator<Pause, void, void> {
    const first = await this.#files.loadFirst();
    this.#isGuide = first !== undefined;
    if (!first) return;
    if (this.#isFirst) yield* this.#showReading([first.page], first.notes);
    const pages = await this.#files.loadPages(first);
    if (this.#isFirst) yield* this.#showReading(pages, first.notes);
    const [lists] = await Promise.all([this.#files.loadLists(first, pages), this.#loadChecks()]);
    this.#build(first.notes, lists);
  }

  /** Reads the pages, and shows what that tells: parts lists and checks may take their time. */
  async *#showReading(
    pages: readonly GuidePage[],
    notes: FrontMatter,
  ): AsyncGenerator<Pause, void, void> {
    for (const page of pages) for (const _ of page.advance()) yield undefined;
    const found = readingFindings(pages);
    if (found.length === 0) return;
    this.verdicts = judgeEarly(found, notes, this.#context.checks);
    yield "worth showing";
  }

  async #loadChecks(): Promise<void> {
    if (this.#checks.length > 0) return;
    const { CHECKS } = await import("../checks/all.ts");
    this.#checks = CHECKS;
    this.#early = new CheckRunner(CHECKS.filter(({ meta }) => !meta.late));
    this.#late = new CheckRunner(CHECKS.filter(({ meta }) => meta.late));
  }

  /** Makes a new state when the pages, the lists or what the guide says of them changed. */
  #build(notes: FrontMatter, lists: readonly BoardList[]): void {
    const { heightTolerance, limits, productStandard, storedEnergy, derating } = this.#context;
    const key = [
      ...this.#files.pages,
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
    this.#state = new GuideState(this.#files.pages, new Kit(lists, notes), {
      heightTolerance,
      limits,
      productStandard,
      storedEnergy,
      derating,
    });
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
    const complete = this.#files.problems.every((problem) => problem.code !== "unreadable-list");
    const shown = complete ? found : found.filter(({ check }) => needsNoParts(check));
    const verdicts = judge(shown, state, this.#context.checks, isAll);
    this.verdicts = this.#files.sheets.show(verdicts);
    const key = [state, state.numbering, state.frontMatter, this.#context];
    if (key.every((one, i) => one === this.#editionKey[i])) return;
    this.#editionKey = key;
    this.edition = {};
  }

  *#fileFindings(): Generator<Found, void, void> {
    for (const { code, uri, span, message, meant } of this.#files.problems) {
      const check = this.#checks.find((one) => one.meta.code === code)!;
      const fixes = meant.map((text) => () => ({
        title: `Write ${text}`,
        safe: false,
        edits: [{ uri, edits: [{ span, text }] }],
      }));
      const finding: Finding = { at: { uri, span }, message: () => message, fixes };
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
