/** Entry of the extension in a desktop or remote editor: the server is a Node process. */

import * as vscode from "vscode";
import type { LanguageClientOptions } from "vscode-languageclient";
import { LanguageClient } from "vscode-languageclient/node";
import { ServerProcess } from "./serverProcess.ts";
import { start } from "./start.ts";

export function activate(context: vscode.ExtensionContext): void {
  const module = vscode.Uri.joinPath(context.extensionUri, "dist", "server.mjs").fsPath;
  start(context, (options) => new NodeClient(new ServerProcess(module), options));
}

class NodeClient extends LanguageClient {
  constructor(
    private readonly server: ServerProcess,
    options: LanguageClientOptions,
  ) {
    super("kitquill", "Kitquill", () => server.run((end) => this.error(end)), options);
  }

  /** Errors go to the log alone: start.ts says in one message what the user must know. */
  override error(message: string, data?: unknown): void {
    super.error(message, data, false);
  }

  override async dispose(timeout?: number): Promise<void> {
    try {
      await super.dispose(timeout);
    } finally {
      this.server.end();
    }
  }
}
