/** Shows above stages and above lines of a parts list how far the fitting has come. */
import type { CancellationToken, CodeLens, CodeLensParams, Command } from "vscode-languageserver";
import { useAt } from "../../checks/places.ts";
import { placeOf } from "../../checks/verdict.ts";
import { type Lens, lineLenses, stageLenses } from "../../features/lenses.ts";
import { spanToRange, toLocations } from "../convert.ts";
import type { Feature, FeatureContext } from "./feature.ts";
import { placesOf } from "./place.ts";

export const lenses: Feature = (context) => ({
  "textDocument/codeLens": (params: CodeLensParams, token) => answer(context, params, token),
});

async function answer(
  context: FeatureContext,
  { textDocument }: CodeLensParams,
  token: CancellationToken,
): Promise<CodeLens[] | null> {
  const [place] = await placesOf(context, textDocument, token);
  if (!place) return null;
  const { guide, uri, list, lines } = place;
  const found = list ? lineLenses(guide, list) : stageLenses(guide, uri);
  return found.map((lens) => ({
    range: spanToRange(lens.span, lines),
    command: commandOf(lens, context),
  }));
}

/** Leads to the step where the client has a command for that; else it only tells. */
function commandOf({ title, use }: Lens, { goTo, service }: FeatureContext): Command {
  const [location] = use ? toLocations([placeOf(useAt(use))], service) : [];
  return goTo && location
    ? { title, command: goTo, arguments: [location] }
    : { title, command: "" };
}
