/** Entry of the extension in a browser: the server is a web worker. */

import * as vscode from "vscode";
import type { LanguageClientOptions } from "vscode-languageclient";
import { LanguageClient } from "vscode-languageclient/browser";
import { start } from "./start.ts";

export function activate(context: vscode.ExtensionContext): void {
  const script = vscode.Uri.joinPath(context.extensionUri, "dist", "server-worker.js");
  start(context, (options) => new WorkerClient(script.toString(true), options));
}

/** Ends its worker with itself, and keeps errors to the log as its desktop sibling does. */
class WorkerClient extends LanguageClient {
  private readonly worker: Worker;

  constructor(script: string, options: LanguageClientOptions) {
    const worker = new Worker(script);
    super("kitquill", "Kitquill", worker, options);
    this.worker = worker;
  }

  override error(message: string, data?: unknown): void {
    super.error(message, data, false);
  }

  override async stop(timeout?: number): Promise<void> {
    try {
      await super.stop(timeout);
    } finally {
      this.worker.terminate();
    }
  }
}
