/** The guides that a request about a place of an open file concerns. */
import type { CancellationToken, TextDocumentPositionParams } from "vscode-languageserver";
import type { GuideState } from "../../model/guideState.ts";
import type { PartsList } from "../../model/list/partsList.ts";
import type { LineIndex } from "../../text/lines.ts";
import { canonicalUri } from "../../workspace/paths.ts";
import { fromPosition } from "../convert.ts";
import type { FeatureContext } from "./feature.ts";

export interface Place {
  readonly guide: GuideState;
  readonly uri: string;
  readonly lines: LineIndex;
  /** The parts list that the file is; undefined for a page. */
  readonly list: PartsList | undefined;
}

/** One for each guide that the open file belongs to, when the analysis has caught up. */
export async function placesOf(
  { service, caughtUp }: FeatureContext,
  textDocument: { readonly uri: string },
  token: CancellationToken,
): Promise<readonly Place[]> {
  await caughtUp();
  const uri = canonicalUri(textDocument.uri);
  const lines = service.openLines(uri);
  if (!lines || token.isCancellationRequested) return [];
  return service.guidesOf(uri).map((guide) => {
    const list = guide.lists.find((one) => one.uri === uri);
    return { guide, uri, lines, list };
  });
}

/** As `placesOf`, with the offset of the position. */
export async function placesAt(
  context: FeatureContext,
  { textDocument, position }: TextDocumentPositionParams,
  token: CancellationToken,
): Promise<readonly (Place & { readonly offset: number })[]> {
  const places = await placesOf(context, textDocument, token);
  return places.map((place) => ({
    ...place,
    offset: place.lines.offsetAt(fromPosition(position)),
  }));
}
