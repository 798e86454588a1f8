/** The one door to the analysis for the language server and the command line. */
import type { SeveritySettings } from "./checks/verdict.ts";
import type { Renumbering } from "./features/revision/renumber.ts";
import type { CheckedGuide, RevisedGuide } from "./features/revision/revision.ts";
import type { DeratingSettings } from "./model/guide.ts";
import type { GuideState } from "./model/guideState.ts";
import type { PartsList } from "./model/list/partsList.ts";
import type { PictureSource } from "./publish/fill/filler.ts";
import type { PublicationWithWarnings } from "./publish/outputs/output.ts";
import type { GuidePreview } from "./publish/preview/preview.ts";
import type { LineIndex } from "./text/lines.ts";
import type { Span } from "./text/span.ts";
import { type ProductStandard, USUAL_STANDARD } from "./trade/hazards/voltageLimits.ts";
import { type Diagnosis, DiagnosisBook, type LineLookup } from "./workspace/diagnoses.ts";
import type { Files } from "./workspace/files.ts";
import type { NewGuide, NewGuideRequest } from "./workspace/newGuide.ts";
import { isInside } from "./workspace/paths.ts";
import { previewPictures } from "./workspace/previewPictures.ts";
import type { OnPicture, PublishRequest } from "./workspace/publishing.ts";
import { type ListContent, RevisedSources } from "./workspace/revisedSources.ts";
import { Sources } from "./workspace/sources.ts";
import { type GuideContext, type Pause, TrackedGuide } from "./workspace/trackedGuide.ts";

export { type Diagnosis, type Location, MOST_FINDINGS } from "./workspace/diagnoses.ts";

export interface ServiceSettings {
  readonly heightTolerance: number;
  /** Limits by check code, for checks that have one; the guide's own `checks` key wins over them. */
  readonly limits: Readonly<Record<string, number>>;
  /** The product standard whose limits say which voltages may be touched. */
  readonly productStandard: ProductStandard;
  /** Energy in J above which a charged capacitor is a hazard. */
  readonly storedEnergy: number;
  /** Per cent of a part's rating above which a load is worth a warning. */
  readonly derating: DeratingSettings;
  /** Severity by check code; the guide's own `checks` key wins over it. */
  readonly checks: SeveritySettings;
  /** Folders whose files may be read; a list elsewhere is refused. Empty: the guide's own folder. */
  readonly folders: readonly string[];
  readonly listsOutsideWorkspace: boolean;
  /** Whether an editor shows value and height behind the parts of marks. */
  readonly partHints: boolean;
}

export const DEFAULT_SETTINGS: ServiceSettings = {
  heightTolerance: 1,
  limits: {},
  productStandard: USUAL_STANDARD,
  storedEnergy: 0.5,
  derating: { power: 60, voltage: 80 },
  checks: {},
  folders: [],
  listsOutsideWorkspace: false,
  partHints: false,
};

export interface FileDiagnoses {
  readonly uri: string;
  /** Version of the open text that was checked; undefined for a file that is not open. */
  readonly version: number | undefined;
  readonly diagnoses: readonly Diagnosis[];
}

export class Service {
  readonly #sources: Sources;
  #settings: ServiceSettings;
  #ofFolders: ReadonlyMap<string, ServiceSettings> = new Map();
  readonly #guides = new Map<string, TrackedGuide>();
  /** Guides that are followed although no editor has them open, and for whom. */
  readonly #followed = new Map<string, Set<string>>();
  readonly #shown = new DiagnosisBook();
  /** How often the file of a picture has changed, of those that have. */
  readonly #editions = new Map<string, number>();

  constructor(files: Files, settings?: ServiceSettings);
  /** Shares the texts of another service. */
  constructor(sources: Sources, settings: ServiceSettings);
  constructor(from: Files | Sources, settings: ServiceSettings = DEFAULT_SETTINGS) {
    this.#sources = from instanceof Sources ? from : new Sources(from);
    this.#settings = settings;
  }

  /**
   * A service on the same texts with guides of its own, for a look at guides that nobody follows.
   * It takes no part in edits: use it at once and drop it.
   */
  apart(): Service {
    const apart = new Service(this.#sources, this.#settings);
    apart.#ofFolders = this.#ofFolders;
    return apart;
  }

  /** A service on copies of the guide's texts as they stand, for trying edits out. */
  trial(guide: GuideState): Service {
    return this.#copy(guide, new Sources(this.#sources.files));
  }

  /**
   * What changed in one parts list of the guide since the content `old` of it, and what that touches
   * in the guide. `list`: its URI, as the list has it. `fresh`: a content to take for the new list
   * instead of the guide's own. A problem where a list cannot be read.
   */
  async revise(
    guide: GuideState,
    list: string,
    old: ListContent,
    fresh?: ListContent,
  ): Promise<RevisedGuide | { readonly problem: string }> {
    const { files } = this.#sources;
    const [before, after] = [
      this.#copy(guide, new RevisedSources(files, list, old), [list]),
      fresh ? this.#copy(guide, new RevisedSources(files, list, fresh), [list]) : this.trial(guide),
    ];
    const sides = { before: await before.#checked(guide), after: await after.#checked(guide) };
    // Only who compares lists needs what compares them.
    const { reviseGuide } = await import("./features/revision/load.ts");
    return reviseGuide(list, sides);
  }

  /**
   * The texts of the guide's pages with parts of the list, as `old` gives it, named as the pairs say;
   * by URI, only those that change.
   */
  async renumber(
    guide: GuideState,
    list: string,
    old: ListContent,
    pairs: readonly Renumbering[],
  ): Promise<ReadonlyMap<string, string>> {
    const { renumberRound } = await import("./features/revision/load.ts");
    const copy = this.#copy(guide, new RevisedSources(this.#sources.files, list, old), [list]);
    const changed = new Set<string>();
    for (let round = 1; ; round++) {
      const { guide: state } = await copy.#checked(guide);
      const { edits, isLast } = renumberRound(state, list, pairs);
      for (const [uri, own] of edits) {
        changed.add(uri);
        // From the end on, so that each leaves the places of the others as they are.
        copy.edit(
          uri,
          round,
          [...own].sort((a, b) => b.span.start - a.span.start),
        );
      }
      if (isLast || edits.size === 0) break;
    }
    return new Map([...changed].map((uri) => [uri, copy.text(uri)!]));
  }

  async #checked({ pages }: GuideState): Promise<CheckedGuide> {
    await this.settle();
    const [guide] = this.guidesOf(pages[0]!.uri);
    const findings = this.takeChanges().flatMap(({ diagnoses }) => diagnoses);
    return { guide: guide!, findings };
  }

  /** `left`: texts that are not copied, because `sources` have others. */
  #copy(guide: GuideState, sources: Sources, left: readonly string[] = []): Service {
    const copy = new Service(sources, this.#settingsOf(guide.pages[0]!.uri));
    const files = new Set([...guide.pages, ...guide.lists].map(({ uri }) => uri));
    for (const uri of files) {
      const isPage = guide.pages.some((page) => page.uri === uri);
      const isCopied = !left.includes(uri) && (isPage || this.#sources.opened(uri));
      const text = isCopied ? this.text(uri) : undefined;
      if (text !== undefined) copy.open(uri, 0, text);
    }
    return copy;
  }

  /**
   * Why an editor that changed a word in the file could not write the rest back byte for byte;
   * undefined where it could.
   */
  rewriteProblem(uri: string): Promise<string | undefined> {
    return this.#sources.rewriteProblem(uri);
  }

  /** Whether the guide at the URI is followed. */
  follows(uri: string): boolean {
    return this.#guides.has(uri);
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

  get showsPartHints(): boolean {
    return this.#settings.partHints;
  }

  /** `ofFolders` count for the guides in these folders, by URI, the innermost first. */
  configure(
    settings: ServiceSettings,
    ofFolders: ReadonlyMap<string, ServiceSettings> = new Map(),
  ): void {
    const before = new Map([...this.#guides.keys()].map((uri) => [uri, this.#settingsOf(uri)]));
    this.#settings = settings;
    this.#ofFolders = ofFolders;
    for (const [uri, guide] of this.#guides) {
      // An editor tells its settings when it has started, and most are as they are by default.
      const isSame = JSON.stringify(before.get(uri)) === JSON.stringify(this.#settingsOf(uri));
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

  /** A preview without blocks yet. What makes it is loaded with the first. */
  async preview(): Promise<GuidePreview> {
    const { GuidePreview } = await import("./publish/load.ts");
    return new GuidePreview();
  }

  /** Pictures for a preview of the guide. */
  previewPictures(guide: GuideState): PictureSource {
    return previewPictures(guide, this.#settings.folders, this.#editions);
  }

  /** The files of the guide's publication. What makes them is loaded with the first. */
  async publish(
    guide: GuideState,
    request: Omit<PublishRequest, "folders">,
    onPicture: OnPicture,
  ): Promise<PublicationWithWarnings> {
    const { publishGuide } = await import("./workspace/publishing.ts");
    const { folders } = this.#settings;
    return publishGuide(guide, { ...request, folders }, this.#sources, onPicture);
  }

  /** The beginning of a guide for a parts list, which need not be in use yet. */
  async newGuide(request: NewGuideRequest): Promise<NewGuide> {
    const { newGuide } = await import("./workspace/newGuide.ts");
    return newGuide(request, this.#sources);
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
    const open = this.#sources.opened(uri);
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
    if (!this.#guides.has(uri)) this.#guides.set(uri, new TrackedGuide(uri, this.#contextOf(uri)));
  }

  #reload(uri: string): void {
    for (const guide of this.#guides.values()) {
      if (guide.uri === uri || guide.files.has(uri)) guide.reloadPage(uri);
      if (guide.changedPicture(uri)) this.#editions.set(uri, (this.#editions.get(uri) ?? 0) + 1);
    }
  }

  #contextOf(uri: string): GuideContext {
    return { ...this.#settingsOf(uri), sources: this.#sources };
  }

  #settingsOf(uri: string): ServiceSettings {
    const folders = [...this.#ofFolders.keys()].filter((folder) => isInside(uri, folder));
    const innermost = folders.sort((a, b) => b.length - a.length)[0];
    return (innermost && this.#ofFolders.get(innermost)) || this.#settings;
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
