/** The one door to the analysis for the language server and the command line. */
import type { Renumbering } from "./features/revision/renumber.ts";
import type { CheckedGuide, RevisedGuide } from "./features/revision/revision.ts";
import type { GuideState } from "./model/guideState.ts";
import type { PictureSource } from "./publish/fill/filler.ts";
import type { PublicationWithWarnings } from "./publish/outputs/output.ts";
import type { GuidePreview } from "./publish/preview/preview.ts";
import type { Files } from "./workspace/files.ts";
import { FollowedGuides } from "./workspace/followedGuides.ts";
import type { NewGuide, NewGuideRequest } from "./workspace/newGuide.ts";
import { previewPictures } from "./workspace/previewPictures.ts";
import type { OnPicture, PublishRequest } from "./workspace/publishing.ts";
import { type ListContent, RevisedSources } from "./workspace/revisedSources.ts";
import { DEFAULT_SETTINGS, type ServiceSettings, SettingsByFolder } from "./workspace/settings.ts";
import { Sources } from "./workspace/sources.ts";

export { type Diagnosis, type Location, MOST_FINDINGS } from "./workspace/diagnoses.ts";
export type { FileDiagnoses } from "./workspace/followedGuides.ts";
export { DEFAULT_SETTINGS, type ServiceSettings } from "./workspace/settings.ts";

/** Follows guides, and makes what is wanted of them. */
export class Service extends FollowedGuides {
  constructor(files: Files, settings?: ServiceSettings);
  /** Shares the texts of another service. */
  constructor(sources: Sources, settings: ServiceSettings);
  constructor(from: Files | Sources, settings: ServiceSettings = DEFAULT_SETTINGS) {
    const sources = from instanceof Sources ? from : new Sources(from);
    super(sources, new SettingsByFolder(settings));
  }

  /**
   * A service on the same texts with guides of its own, for a look at guides that nobody follows.
   * It takes no part in edits: use it at once and drop it.
   */
  apart(): Service {
    const apart = new Service(this.sources, this.settings.usual);
    apart.settings = this.settings;
    return apart;
  }

  /** The guide alone, on copies of its texts as they stand, for trying edits out. */
  trial(guide: GuideState): FollowedGuides {
    return this.copyOf(guide, new Sources(this.sources.files));
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
    const before = this.#withList(guide, list, old);
    const after = fresh ? this.#withList(guide, list, fresh) : this.trial(guide);
    const sides = { before: await checked(before, guide), after: await checked(after, guide) };
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
    const copy = this.#withList(guide, list, old);
    const changed = new Set<string>();
    for (let round = 1; ; round++) {
      const { guide: state } = await checked(copy, guide);
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

  /** The guide alone, on copies of its texts, with another content for one of its lists. */
  #withList(guide: GuideState, list: string, content: ListContent): FollowedGuides {
    return this.copyOf(guide, new RevisedSources(this.sources.files, list, content), [list]);
  }

  /**
   * Why an editor that changed a word in the file could not write the rest back byte for byte;
   * undefined where it could.
   */
  rewriteProblem(uri: string): Promise<string | undefined> {
    return this.sources.rewriteProblem(uri);
  }

  /** A preview without blocks yet. What makes it is loaded with the first. */
  async preview(): Promise<GuidePreview> {
    const { GuidePreview } = await import("./publish/load.ts");
    return new GuidePreview();
  }

  /** Pictures for a preview of the guide. */
  previewPictures(guide: GuideState): PictureSource {
    return previewPictures(guide, this.settings.usual.folders, this.editions);
  }

  /** The files of the guide's publication. What makes them is loaded with the first. */
  async publish(
    guide: GuideState,
    request: Omit<PublishRequest, "folders">,
    onPicture: OnPicture,
  ): Promise<PublicationWithWarnings> {
    const { publishGuide } = await import("./workspace/publishing.ts");
    const { folders } = this.settings.usual;
    return publishGuide(guide, { ...request, folders }, this.sources, onPicture);
  }

  /** The beginning of a guide for a parts list, which need not be in use yet. */
  async newGuide(request: NewGuideRequest): Promise<NewGuide> {
    const { newGuide } = await import("./workspace/newGuide.ts");
    return newGuide(request, this.sources);
  }
}

async function checked(guides: FollowedGuides, { pages }: GuideState): Promise<CheckedGuide> {
  await guides.settle();
  const [guide] = guides.guidesOf(pages[0]!.uri);
  const findings = guides.takeChanges().flatMap(({ diagnoses }) => diagnoses);
  return { guide: guide!, findings };
}
