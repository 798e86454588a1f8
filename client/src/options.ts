/** What the client tells the language client library: which documents, files and settings. */

import * as vscode from "vscode";
import type { LanguageClientOptions, Middleware } from "vscode-languageclient";
import type { ClientOffers } from "../../server/src/lsp/protocol.ts";
import { EXPLAIN } from "./explain.ts";
import { GO_TO } from "./goTo.ts";
import { ENDINGS, filesOf } from "./partsLists.ts";
import { refuseForAll } from "./renaming.ts";

/** Guides, every kind of file that parts lists come in, what tells that one is open, and pictures. */
const WATCHED = filesOf([
  "md",
  "markdown",
  ...ENDINGS,
  "xlsx#",
  "ods#",
  "png",
  "jpg",
  "jpeg",
  "gif",
  "svg",
  "webp",
  "avif",
]);

/** Views of a file that is not the one in the folder: an old version, a notebook's cell. */
const COPIES = new Set(["git", "vscode-notebook-cell", "comment", "output", "walkThroughSnippet"]);

/**
 * Only Markdown is selected here, whatever file system it is on. The server registers the parts
 * lists in use by itself (dynamic registration), whatever language the editor takes them for.
 * `watched` must be disposed by the caller.
 */
export function clientOptions(
  log: vscode.LogOutputChannel,
  watched: vscode.FileSystemWatcher,
): LanguageClientOptions {
  const offers: ClientOffers = {
    clientFiles: true,
    suggestAgain: "editor.action.triggerSuggest",
    goTo: GO_TO,
    explain: EXPLAIN,
  };
  return {
    documentSelector: [{ language: "markdown" }],
    synchronize: { fileEvents: watched },
    initializationOptions: offers,
    outputChannel: log,
    diagnosticCollectionName: "kitquill",
    middleware: { ...leaveCopiesAlone(), ...refuseForAll() },
    // start.ts tells the user in its own words.
    initializationFailedHandler: () => false,
  };
}

/** A watcher for the files that findings can depend on. */
export function watchFiles(): vscode.FileSystemWatcher {
  return vscode.workspace.createFileSystemWatcher(WATCHED);
}

function leaveCopiesAlone(): Middleware {
  const isCopy = (document: vscode.TextDocument) => COPIES.has(document.uri.scheme);
  return {
    didOpen: async (document, next) => (isCopy(document) ? undefined : next(document)),
    didChange: async (event, next) => (isCopy(event.document) ? undefined : next(event)),
    didSave: async (document, next) => (isCopy(document) ? undefined : next(document)),
    didClose: async (document, next) => (isCopy(document) ? undefined : next(document)),
  };
}
