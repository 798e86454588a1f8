/** Entry of the extension in a desktop or remote editor: the server is a Node process. */

import * as vscode from "vscode";
import type { LanguageClientOptions } from "vscode-languageclient";
import { LanguageClient, type ServerOptions, TransportKind } from "vscode-languageclient/node";
import { type MakeClient, start } from "./start.ts";

export function activate(context: vscode.ExtensionContext): void {
  const module = vscode.Uri.joinPath(context.extensionUri, "dist", "server.mjs").fsPath;
  const server: ServerOptions = { module, transport: TransportKind.ipc };
  const make: MakeClient = (options) => new NodeClient(server, options);
  start(context, make);
}

/** Errors go to the log alone: start.ts says in one message what the user must know. */
class NodeClient extends LanguageClient {
  constructor(server: ServerOptions, options: LanguageClientOptions) {
    super("kitquill", "Kitquill", server, options);
  }

  override error(message: string, data?: unknown): void {
    super.error(message, data, false);
  }
}
