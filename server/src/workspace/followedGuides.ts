/**
 * All guides that are followed: takes edits of their files, does the work that is due, and tells what
 * their files show.
 */
import type { GuideState } from "../model/guideState.ts";
import type { PartsList } from "../model/list/partsList.ts";
import type { LineIndex } from "../text/lines.ts";
import type { Span } from "../text/span.ts";
import { type Diagnosis, DiagnosisBook, type LineLookup } from "./diagnoses.ts";
import { type ServiceSettings, SettingsByFolder } from "./settings.ts";
import type { Sources } from "./sources.ts";
import { type GuideContext, type Pause, TrackedGuide } from "./trackedGuide.ts";

export interface FileDiagnoses {
  readonly uri: string;
  /** Version of the open text that was checked; undefined for a file that is not open. */
  readonly version: number | undefined;
  readonly diagnoses: readonly Diagnosis[];
}

export class FollowedGuides {
  protected readonly sources: Sources;
  protected settings: SettingsByFolder;
  /** How often the file of a picture has changed, of those that have. */
  protected readonly editions = new Map<string, number>();
  readonly #guides = new Map<string, TrackedGuide>();
  /** Guides that are followed although no editor has them open, and for whom. */
  readonly #followed = new Map<string, Set<string>>();
  readonly #shown = new DiagnosisBook();

  constructor(sources: Sources, settings: SettingsByFolder) {
    this.sources = sources;
    this.settings = settings;
  }

  /**
   * Follows a copy of the guide's texts as they stand, on sources of its own. `left`: texts that are
   * not copied, because `sources` have others.
   */
  copyOf(guide: GuideState, sources: Sources, left: readonly string[] = []): FollowedGuides {
    const copy = new FollowedGuides(
      sources,
      new SettingsByFolder(this.settings.of(guide.pages[0]!.uri)),
    );
    const files = new Set([...guide.pages, ...guide.lists].map(({ uri }) => uri));
    for (const uri of files) {
      const isPage = guide.pages.some((page) => page.uri === uri);
      const isCopied = !left.includes(uri) && (isPage || this.sources.opened(uri));
      const text = isCopied ? this.text(uri) : undefined;
      if (text !== undefined) copy.open(uri, 0, text);
    }
    return copy;
  }

  /** Whether the guide at the URI is followed. */
  follows(uri: string): boolean {
    return this.#guides.has(uri);
  }

  /** Takes a text from the editor; it wins over the file. */
  open(uri: string, version: number, text: string): void {
    this.sources.open(uri, version, text);
    if (isMarkdown(uri)) this.#track(uri);
    this.#reload(uri);
  }

  /** Applies edits in order, each to the text that the one before left. */
  edit(uri: string, version: number, edits: readonly { span: Span; text: string }[]): void {
    const open = this.sources.opened(uri);
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
    this.sources.close(uri);
    if (this.#guides.has(uri) && !this.#followed.has(uri)) this.#guides.delete(uri);
    this.#reload(uri);
  }

  /** A file was made, changed or deleted outside the editor. */
  changedOutside(uri: string): void {
    if (this.sources.opened(uri)) return;
    this.sources.forget(uri);
    this.#reload(uri);
  }

  get showsPartHints(): boolean {
    return this.settings.usual.partHints;
  }

  /** `ofFolders`: by URI, what counts for the guides in these folders instead. */
  configure(
    settings: ServiceSettings,
    ofFolders: ReadonlyMap<string, ServiceSettings> = new Map(),
  ): void {
    const before = this.settings;
    this.settings = new SettingsByFolder(settings, ofFolders);
    for (const [uri, guide] of this.#guides) {
      // An editor tells its settings when it has started, and most are as they are by default.
      const isSame = JSON.stringify(before.of(uri)) === JSON.stringify(this.settings.of(uri));
      if (!isSame) guide.configure(this.#contextOf(uri));
    }
  }

  /** Follows a guide that no editor has open, until all who asked for it have given it up. */
  follow(uri: string, who = "caller"): void {
    this.#followed.set(uri, (this.#followed.get(uri) ?? new Set()).add(who));
    this.#track(uri);
  }

  unfollow(uri: string, who = "caller"): void {
    const others = this.#followed.get(uri);
    others?.delete(who);
    if (others && others.size > 0) return;
    this.#followed.delete(uri);
    if (!this.sources.opened(uri)) this.#guides.delete(uri);
  }

  get isDirty(): boolean {
    for (const guide of this.#guides.values()) if (guide.isDirty) return true;
    return false;
  }

  /**
   * Does the work that is due, in slices of a few milliseconds; between slices the caller may take
   * edits, which the work then goes on with. Waits for files where it needs them.
   */
  async *update(): AsyncGenerator<Pause, void, void> {
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
    const changes = this.#shown.update([...this.#guides.values()], this.#lineLookup());
    return changes.map(({ uri, diagnoses }) => {
      return { uri, version: this.version(uri), diagnoses };
    });
  }

  /** What the file shows now. */
  diagnoses(uri: string): readonly Diagnosis[] {
    return this.#shown.of(uri);
  }

  /** Guides whose pages or parts lists include the file. */
  guidesOf(uri: string): readonly GuideState[] {
    return [...this.#guides.values()]
      .filter((guide) => guide.uri === uri || guide.files.has(uri))
      .map((guide) => guide.state)
      .filter((state) => state !== undefined);
  }

  /** All guides that are followed. */
  guides(): readonly GuideState[] {
    return [...this.#guides.values()]
      .map((guide) => guide.state)
      .filter((state) => state !== undefined);
  }

  /** URIs of the parts lists in use that an editor can show as text. */
  lists(): readonly string[] {
    const uris = new Set<string>();
    for (const guide of this.#guides.values()) {
      for (const list of guide.state?.lists ?? []) if (!list.places) uris.add(list.uri);
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
    const open = this.sources.opened(uri);
    if (open) return open.text;
    for (const guide of this.guidesOf(uri)) {
      const page = guide.pages.find((one) => one.uri === uri);
      if (page) return page.text.toString();
    }
    const list = this.list(uri);
    return list?.places ? undefined : list?.text;
  }

  /** Lines of a page or parts list that is followed. */
  lines(uri: string): LineIndex | undefined {
    const open = this.openLines(uri);
    if (open) return open;
    const text = this.text(uri);
    return text === undefined ? undefined : this.sources.lines(uri, text);
  }

  /** Lines of a text that an editor holds. */
  openLines(uri: string): LineIndex | undefined {
    return this.sources.opened(uri)?.lines;
  }

  /** Version of a text that an editor holds. */
  version(uri: string): number | undefined {
    return this.sources.opened(uri)?.version;
  }

  #track(uri: string): void {
    if (!this.#guides.has(uri)) this.#guides.set(uri, new TrackedGuide(uri, this.#contextOf(uri)));
  }

  #reload(uri: string): void {
    for (const guide of this.#guides.values()) {
      if (guide.uri === uri || guide.dependsOn(uri)) guide.reloadPage(uri);
      if (guide.changedPicture(uri)) this.editions.set(uri, (this.editions.get(uri) ?? 0) + 1);
    }
  }

  #contextOf(uri: string): GuideContext {
    return { ...this.settings.of(uri), sources: this.sources };
  }

  /** Lines of files, each looked up once. */
  #lineLookup(): LineLookup {
    const known = new Map<string, LineIndex | undefined>();
    return (uri) => {
      if (!known.has(uri)) known.set(uri, this.lines(uri));
      return known.get(uri);
    };
  }
}

function isMarkdown(uri: string): boolean {
  return /\.(?:md|markdown)$/i.test(uri) || !/\.\w+$/.test(uri);
}
