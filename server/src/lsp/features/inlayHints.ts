/**
 * Shows in the text what formulas come to and, if set, what parts are. The client asks anew for a page that was edited; when the
 * results of another open page change, it is told to.
 */
import type { CancellationToken, InlayHint, InlayHintParams } from "vscode-languageserver";
import { figureHints } from "../../features/figure/hints.ts";
import { partHints } from "../../features/part/hints.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { Span } from "../../text/span.ts";
import { rangeToSpan, toPosition } from "../convert.ts";
import { InlayHintKind } from "../values.ts";
import type { Feature, FeatureContext } from "./feature.ts";
import { placesOf } from "./place.ts";

export const inlayHints: Feature = (context) => {
  const pages = new HintedPages(context);
  if (context.client.workspace?.inlayHint?.refreshSupport) {
    context.onUpdate(() => {
      if (pages.takeStale()) context.ask("workspace/inlayHint/refresh");
    });
  }
  return {
    "textDocument/inlayHint": (params: InlayHintParams, token) => pages.answer(params, token),
  };
};

interface Hint {
  readonly at: number;
  readonly text: string;
  readonly tooltip?: string | undefined;
}

/** What a client was last shown of a page. */
interface Shown {
  readonly range: InlayHintParams["range"];
  readonly version: number | undefined;
  readonly guide: GuideState;
  readonly revision: number;
  /** Whether parts have hints. */
  readonly parts: boolean;
  readonly labels: string;
}

class HintedPages {
  readonly #context: FeatureContext;
  readonly #shown = new Map<string, Shown>();

  constructor(context: FeatureContext) {
    this.#context = context;
  }

  async answer(
    { textDocument, range }: InlayHintParams,
    token: CancellationToken,
  ): Promise<InlayHint[] | null> {
    const [place] = await placesOf(this.#context, textDocument, token);
    if (!place || place.list) return null;
    const { guide, uri, lines } = place;
    const hints = this.#hints(guide, uri, rangeToSpan(range, lines));
    const version = this.#context.service.version(uri);
    const { revision } = guide.figures;
    const parts = this.#context.service.showsPartHints;
    this.#shown.set(uri, { range, version, guide, revision, parts, labels: labelsOf(hints) });
    return hints.map(({ at, text, tooltip }) => ({
      position: toPosition(lines.positionAt(at)),
      label: text,
      kind: InlayHintKind.Type,
      ...(tooltip && { tooltip }),
    }));
  }

  /** Whether a page would show other results than it does, though nobody has edited it. */
  takeStale(): boolean {
    let stale = false;
    for (const [uri, shown] of this.#shown) {
      const now = this.#now(uri, shown);
      if (now) this.#shown.set(uri, now);
      else this.#shown.delete(uri);
      if (now && now.labels !== shown.labels) stale = true;
    }
    return stale;
  }

  /** Undefined for a page that is closed, no guide's any more, or asked for anew after an edit. */
  #now(uri: string, shown: Shown): Shown | undefined {
    const { service } = this.#context;
    const lines = service.openLines(uri);
    const [guide] = service.guidesOf(uri);
    if (!lines || !guide || service.version(uri) !== shown.version) return undefined;
    const { revision } = guide.figures;
    const isSame = guide === shown.guide && revision === shown.revision;
    if (isSame && !service.showsPartHints && !shown.parts) return shown;
    const labels = labelsOf(this.#hints(guide, uri, rangeToSpan(shown.range, lines)));
    return { ...shown, guide, revision, parts: service.showsPartHints, labels };
  }

  #hints(guide: GuideState, uri: string, within: Span): readonly Hint[] {
    const figures = figureHints(guide, uri, within);
    return this.#context.service.showsPartHints
      ? [...figures, ...partHints(guide, uri, within)]
      : figures;
  }
}

function labelsOf(hints: readonly Hint[]): string {
  return hints.map(({ text, tooltip }) => `${text}\t${tooltip}`).join("\n");
}
