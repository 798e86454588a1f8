/** Offers what may be written at the cursor. */
import type {
  CancellationToken,
  ClientCapabilities,
  CompletionItem,
  CompletionList,
  TextDocumentPositionParams,
} from "vscode-languageserver";
import { completeInGuide } from "../../features/completion/complete.ts";
import type {
  Completion,
  CompletionKind,
  Completions,
} from "../../features/completion/completion.ts";
import { completePaths, pathPlaceAt } from "../../features/completion/paths.ts";
import type { LineIndex } from "../../text/lines.ts";
import { markedFile } from "../../workspace/openElsewhere.ts";
import { canonicalUri, relativePath } from "../../workspace/paths.ts";
import { spanToRange } from "../convert.ts";
import { CompletionItemKind, InsertTextFormat, InsertTextMode, MarkupKind } from "../values.ts";
import type { Feature, FeatureContext } from "./feature.ts";
import { placesAt } from "./place.ts";

const KINDS: Readonly<Record<CompletionKind, NonNullable<CompletionItem["kind"]>>> = {
  part: CompletionItemKind.Value,
  hardware: CompletionItemKind.Value,
  set: CompletionItemKind.Enum,
  role: CompletionItemKind.Keyword,
  label: CompletionItemKind.Reference,
  figure: CompletionItemKind.Variable,
  function: CompletionItemKind.Function,
  unit: CompletionItemKind.Unit,
  word: CompletionItemKind.Text,
  note: CompletionItemKind.Snippet,
  key: CompletionItemKind.Property,
  value: CompletionItemKind.EnumMember,
  file: CompletionItemKind.File,
};

export const completion: Feature = (context) => {
  const shown = new ShownLists();
  return {
    "textDocument/completion": (params: TextDocumentPositionParams, token) =>
      answer(context, shown, params, token),
    "completionItem/resolve": (item: CompletionItem) => shown.document(item),
  };
};

async function answer(
  context: FeatureContext,
  shown: ShownLists,
  params: TextDocumentPositionParams,
  token: CancellationToken,
): Promise<CompletionList | null> {
  for (const { guide, uri, list, offset, lines } of await placesAt(context, params, token)) {
    const found = list ? undefined : completeInGuide(guide, uri, offset);
    if (found) return toList(found, lines, context, shown.keep(found.items));
    const place = list ? undefined : pathPlaceAt(guide, uri, offset);
    if (!place) continue;
    const files = (await context.filesEnding(place.endings, uri))
      .filter((file) => markedFile(file) === undefined)
      .map(canonicalUri);
    const others = files.filter((file) => file !== uri);
    const named = others.flatMap((file) => relativePath(uri, file) ?? []);
    const paths = completePaths(place, named);
    return toList(paths, lines, context, shown.keep(paths.items));
  }
  return null;
}

/** The list that was sent last: its documentation is made for the item that is looked at. */
class ShownLists {
  #number = 0;
  #items: readonly Completion[] = [];

  /** Gives the number of the list. */
  keep(items: readonly Completion[]): number {
    this.#items = items;
    return ++this.#number;
  }

  document(item: CompletionItem): CompletionItem {
    const { list, index } = (item.data ?? {}) as { list?: number; index?: number };
    if (list !== this.#number || index === undefined) return item;
    const value = this.#items[index]?.documentation?.();
    if (value) item.documentation = { kind: MarkupKind.Markdown, value };
    return item;
  }
}

function toList(
  { items, span, complete }: Completions,
  lines: LineIndex,
  { client, suggestAgain }: FeatureContext,
  number: number,
): CompletionList {
  const range = spanToRange(span, lines);
  const digits = `${items.length}`.length;
  const again = suggestAgain && { title: "", command: suggestAgain };
  return {
    isIncomplete: !complete,
    items: items.map((item, index) => ({
      ...labelOf(item, client),
      kind: KINDS[item.kind],
      sortText: `${index}`.padStart(digits, "0"),
      filterText: item.filter ?? item.label,
      textEdit: { range, newText: item.text ?? item.label },
      ...(item.isSnippet && { insertTextFormat: InsertTextFormat.Snippet }),
      ...(item.text?.includes("\n") && { insertTextMode: InsertTextMode.asIs }),
      ...(item.leadsOn && again && { command: again }),
      ...(item.documentation && { data: { list: number, index } }),
    })),
  };
}

function labelOf(
  { label, detail, description }: Completion,
  client: ClientCapabilities,
): Pick<CompletionItem, "label" | "labelDetails" | "detail"> {
  if (!detail && !description) return { label };
  if (client.textDocument?.completion?.completionItem?.labelDetailsSupport) {
    return {
      label,
      labelDetails: {
        ...(detail && { detail: `  ${detail}` }),
        ...(description && { description }),
      },
    };
  }
  return { label, detail: [detail, description].filter(Boolean).join(" · ") };
}
