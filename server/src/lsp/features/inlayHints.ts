/** Shows in the text what formulas come to. */
import {
  type CancellationToken,
  type InlayHint,
  InlayHintKind,
  type InlayHintParams,
} from "vscode-languageserver";
import { figureHints } from "../../features/figure/hints.ts";
import { rangeToSpan, toPosition } from "../convert.ts";
import type { Feature, FeatureContext } from "./feature.ts";
import { placesOf } from "./place.ts";

export const inlayHints: Feature = {
  capabilities: () => ({ inlayHintProvider: true }),
  listen(context) {
    context.connection.languages.inlayHint.on((params, token) => answer(context, params, token));
  },
};

async function answer(
  context: FeatureContext,
  { textDocument, range }: InlayHintParams,
  token: CancellationToken,
): Promise<InlayHint[] | null> {
  const [place] = await placesOf(context, textDocument, token);
  if (!place || place.list) return null;
  const { guide, uri, lines } = place;
  return figureHints(guide, uri, rangeToSpan(range, lines)).map(({ at, text, tooltip }) => ({
    position: toPosition(lines.positionAt(at)),
    label: text,
    kind: InlayHintKind.Type,
    ...(tooltip && { tooltip }),
  }));
}
