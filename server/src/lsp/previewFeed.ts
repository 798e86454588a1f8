/**
 * Sends the preview of one guide as it changes. Blocks are made in slices, between which messages are
 * taken; an edit that comes meanwhile is checked first, and then the work goes on with the newer text.
 */
import type { GuideState } from "../model/guideState.ts";
import type { GuidePreview } from "../publish/preview/preview.ts";
import type { FeatureContext } from "./features/feature.ts";
import { PATCH_PREVIEW, type SentPatch, type ShowPreviewResult } from "./protocol.ts";

/** Messages wait no longer than this (ms) for a slice of work. */
const SLICE = 8;
/** As long as a preview is not complete, what there is is sent so often (ms). */
const BETWEEN_PARTS = 200;

export class PreviewFeed {
  readonly #context: FeatureContext;
  preview: GuidePreview | undefined;
  /** URI of the guide that is shown. */
  #uri: string | undefined;
  #isNew = false;
  #running: Promise<void> | undefined;
  #again = false;

  constructor(context: FeatureContext) {
    this.#context = context;
    context.onUpdate(() => this.#refresh());
  }

  /** The guide as far as it is known now. */
  get guide(): GuideState | undefined {
    return this.#context.service.guides().find((guide) => guide.pages[0]?.uri === this.#uri);
  }

  /** Shows the guide that the file belongs to, from its beginning. */
  async show(uri: string): Promise<ShowPreviewResult> {
    const { service } = this.#context;
    const guide = await this.#guideOf(uri);
    if (!guide) return null;
    const shown = guide.pages[0]!.uri;
    if (shown !== this.#uri) {
      this.#leave();
      // It stays although its editor may be closed.
      service.follow(shown, FOLLOWER);
      this.#uri = shown;
      this.preview = undefined;
    }
    const preview = this.preview ?? (await service.preview());
    if (this.#uri === shown) {
      this.preview = preview;
      preview.forgetShown();
      this.#isNew = true;
      this.#refresh();
    }
    return { uri: shown };
  }

  hide(): null {
    this.#leave();
    this.#uri = undefined;
    this.preview = undefined;
    return null;
  }

  #leave(): void {
    if (this.#uri !== undefined) this.#context.service.unfollow(this.#uri, FOLLOWER);
  }

  /** A file that no editor has open may be a guide; a page of one is looked for by its name. */
  async #guideOf(uri: string): Promise<GuideState | undefined> {
    const { service, caughtUp, guidesNaming } = this.#context;
    await caughtUp();
    const known = service.guidesOf(uri);
    if (known.length > 0) return known.find(({ pages }) => pages[0]?.uri === uri) ?? known[0];
    const [named] = await guidesNaming((one) => one === uri, uri);
    if (named === undefined) return undefined;
    service.follow(named, FOLLOWER);
    await caughtUp();
    const guide = service.guidesOf(named).find(({ pages }) => pages[0]?.uri === named);
    if (!guide) service.unfollow(named, FOLLOWER);
    return guide;
  }

  /** Resolves when blocks and guide are at the same state, but for edits that have come meanwhile. */
  async caughtUp(): Promise<void> {
    await this.#context.caughtUp();
    await this.#running;
  }

  #refresh(): void {
    if (this.#running) this.#again = true;
    else if (this.preview) this.#running = this.#run();
  }

  async #run(): Promise<void> {
    try {
      do {
        this.#again = false;
        await this.#follow();
      } while (this.#again);
    } catch (error) {
      this.#context.report(error);
    } finally {
      this.#running = undefined;
    }
  }

  async #follow(): Promise<void> {
    const { service, host } = this.#context;
    const { guide, preview } = this;
    // An update that is due ends with another call.
    if (!guide || !preview || service.isDirty) return;
    let sent = host.now();
    let sliceEnd = sent + SLICE;
    for (const pause of preview.follow(guide, service.previewPictures(guide))) {
      if (pause) this.#send(guide, preview);
      const now = host.now();
      if (now < sliceEnd) continue;
      if (now > sent + BETWEEN_PARTS) {
        this.#send(guide, preview);
        sent = now;
      }
      await host.pause();
      if (service.isDirty || this.preview !== preview) return;
      sliceEnd = host.now() + SLICE;
    }
    this.#send(guide, preview);
  }

  #send(guide: GuideState, preview: GuidePreview): void {
    const splices = preview.takePatch();
    if (splices.length === 0 && !this.#isNew) return;
    const patch: SentPatch = {
      uri: this.#uri!,
      title: preview.title ?? "",
      language: guide.frontMatter.language?.value ?? "en",
      isNew: this.#isNew,
      splices,
    };
    this.#isNew = false;
    this.#context.tell(PATCH_PREVIEW, patch);
  }
}

const FOLLOWER = "preview";
