/**
 * What the server promises. It is told before the features are loaded, which happens when the first of
 * them is asked for.
 */
import type { ClientCapabilities, ServerCapabilities } from "vscode-languageserver";
import { TOKEN_MODIFIERS, TOKEN_TYPES } from "../features/tokens/token.ts";
import { CodeActionKind, TextDocumentSyncKind } from "./values.ts";

/** Signs behind which something may be offered. */
const TRIGGERS = ["[", "{", "*", ":", ",", " ", "#", "/", "+", "×", "=", "(", ";"];
/** Files whose move is followed by the paths that guides name. */
const FILES = "**/*.{md,markdown,csv,tsv,txt,xlsx,xlsm,ods,png,jpg,jpeg,gif,svg,webp,avif}";

/** For a client that can take so much. */
export function capabilitiesFor(client: ClientCapabilities): ServerCapabilities {
  return {
    textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
    codeActionProvider: { codeActionKinds: Object.values(CodeActionKind), resolveProvider: true },
    codeLensProvider: {},
    completionProvider: { triggerCharacters: TRIGGERS, resolveProvider: true },
    definitionProvider: true,
    documentHighlightProvider: true,
    documentLinkProvider: {},
    documentSymbolProvider: true,
    foldingRangeProvider: true,
    hoverProvider: true,
    inlayHintProvider: true,
    referencesProvider: true,
    renameProvider: client.textDocument?.rename?.prepareSupport ? { prepareProvider: true } : true,
    selectionRangeProvider: true,
    semanticTokensProvider: {
      legend: { tokenTypes: [...TOKEN_TYPES], tokenModifiers: [...TOKEN_MODIFIERS] },
      full: { delta: true },
      range: true,
    },
    signatureHelpProvider: { triggerCharacters: ["(", ";"] },
    workspaceSymbolProvider: true,
    workspace: {
      workspaceFolders: { supported: true, changeNotifications: true },
      fileOperations: {
        willRename: {
          filters: [
            { pattern: { glob: FILES, matches: "file", options: { ignoreCase: true } } },
            { pattern: { glob: "**", matches: "folder" } },
          ],
        },
      },
    },
  };
}

/** Requests wanted for parts lists too, whatever language the editor takes them for. */
export const LIST_REQUESTS: readonly { readonly method: string; readonly options?: object }[] = [
  { method: "textDocument/codeAction", options: { resolveProvider: true } },
  { method: "textDocument/codeLens" },
  { method: "textDocument/definition" },
  { method: "textDocument/documentHighlight" },
  { method: "textDocument/hover" },
  { method: "textDocument/references" },
  { method: "textDocument/rename", options: { prepareProvider: true } },
];
