/** The outline of a page, and stages and parts found by name in all guides that are followed. */
import type {
  CancellationToken,
  DocumentSymbol,
  DocumentSymbolParams,
  SymbolInformation,
  WorkspaceSymbolParams,
} from "vscode-languageserver";
import { type OutlineEntry, outlineOf } from "../../features/outline.ts";
import { type FoundSymbol, symbolsMatching } from "../../features/symbols.ts";
import type { LineIndex } from "../../text/lines.ts";
import { spanToRange, toLocations } from "../convert.ts";
import { SymbolKind } from "../values.ts";
import type { Feature, FeatureContext } from "./feature.ts";
import { placesOf } from "./place.ts";

const KINDS: Readonly<Record<OutlineEntry["kind"], DocumentSymbol["kind"]>> = {
  stage: SymbolKind.Module,
  step: SymbolKind.Method,
  note: SymbolKind.Event,
};

export const outline: Feature = (context) => ({
  "textDocument/documentSymbol": (params: DocumentSymbolParams, token) =>
    ofPage(context, params, token),
  "workspace/symbol": ({ query }: WorkspaceSymbolParams, token) =>
    ofWorkspace(context, query, token),
});

async function ofPage(
  context: FeatureContext,
  { textDocument }: DocumentSymbolParams,
  token: CancellationToken,
): Promise<DocumentSymbol[] | SymbolInformation[] | null> {
  const [place] = await placesOf(context, textDocument, token);
  if (!place || place.list) return null;
  const { guide, uri, lines } = place;
  const entries = outlineOf(guide, uri);
  return context.client.textDocument?.documentSymbol?.hierarchicalDocumentSymbolSupport
    ? entries.map((entry) => toSymbol(entry, lines))
    : entries.flatMap((entry) => flatten(entry, uri, lines));
}

function toSymbol(entry: OutlineEntry, lines: LineIndex): DocumentSymbol {
  const { name, detail, kind, span, opening, inner } = entry;
  return {
    name,
    ...(detail && { detail }),
    kind: KINDS[kind],
    range: spanToRange(span, lines),
    selectionRange: spanToRange(opening, lines),
    children: inner.map((one) => toSymbol(one, lines)),
  };
}

function flatten(entry: OutlineEntry, uri: string, lines: LineIndex): SymbolInformation[] {
  const { name, kind, span, inner } = entry;
  const own = { name, kind: KINDS[kind], location: { uri, range: spanToRange(span, lines) } };
  return [own, ...inner.flatMap((one) => flatten(one, uri, lines))];
}

async function ofWorkspace(
  { service, caughtUp }: FeatureContext,
  query: string,
  token: CancellationToken,
): Promise<SymbolInformation[] | null> {
  await caughtUp();
  if (token.isCancellationRequested) return null;
  const found = service.guides().flatMap((guide) => [...symbolsMatching(guide, query)]);
  const byPlace = new Map(found.map((one) => [`${one.uri}#${one.span.start}#${one.name}`, one]));
  return [...byPlace.values()].flatMap((one) => toInformation(one, service));
}

function toInformation(
  { kind, name, within, ...target }: FoundSymbol,
  service: FeatureContext["service"],
): SymbolInformation[] {
  return toLocations([target], service).map((location) => ({
    name,
    kind: kind === "stage" ? SymbolKind.Module : SymbolKind.Constant,
    containerName: within,
    location,
  }));
}
