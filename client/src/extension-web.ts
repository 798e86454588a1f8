/** Entry of the extension in a browser: the server is a web worker. */

import * as vscode from "vscode";
import type { LanguageClientOptions, MessageTransports } from "vscode-languageclient";
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  LanguageClient,
} from "vscode-languageclient/browser";
import { start } from "./start.ts";

export function activate(context: vscode.ExtensionContext): void {
  const address = (name: string) =>
    vscode.Uri.joinPath(context.extensionUri, "dist", name).toString(true);
  const scripts = { starter: address("server-worker.js"), server: address("worker.mjs") };
  start(context, (options) => new WorkerClient(scripts, options));
}

/** Addresses of the script that a worker begins with, and of the server that it then loads. */
interface Scripts {
  readonly starter: string;
  readonly server: string;
}

/** Ends its worker with itself, and keeps errors to the log as its desktop sibling does. */
class WorkerClient extends LanguageClient {
  private worker: Worker | undefined;

  constructor(scripts: Scripts, options: LanguageClientOptions) {
    super("kitquill", "Kitquill", () => this.startWorker(scripts), options);
  }

  override error(message: string, data?: unknown): void {
    super.error(message, data, false);
  }

  override async stop(timeout?: number): Promise<void> {
    try {
      await super.stop(timeout);
    } finally {
      this.worker?.terminate();
    }
  }

  /** Resolves when the server has been loaded and listens. */
  private async startWorker({ starter, server }: Scripts): Promise<MessageTransports> {
    this.worker?.terminate();
    const worker = new Worker(starter);
    this.worker = worker;
    await new Promise((loaded, failed) => {
      worker.onmessage = loaded;
      worker.onerror = ({ message }) => failed(new Error(message));
      worker.postMessage(server);
    });
    return { reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) };
  }
}
