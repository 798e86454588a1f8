/** A language client for tests, joined to the server in this process by two streams. */
import { PassThrough } from "node:stream";
import {
  createMessageConnection,
  type MessageConnection,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-jsonrpc/node";
import type { Diagnostic, PublishDiagnosticsParams } from "vscode-languageserver";
import { serve } from "../../server/src/lsp/server.ts";
import { MemoryFiles } from "../memoryFiles.ts";

export const FOLDER = "file:///kit/";

export class TestClient {
  readonly files = new MemoryFiles();
  readonly connection: MessageConnection;
  /** What was published last, by file name. */
  readonly published = new Map<string, PublishDiagnosticsParams>();
  /** Every publication, oldest first. */
  readonly log: PublishDiagnosticsParams[] = [];
  #version = 0;

  constructor(files: Readonly<Record<string, string>>) {
    for (const [name, text] of Object.entries(files)) this.files.set(FOLDER + name, text);
    const [toServer, toClient] = [new PassThrough(), new PassThrough()];
    const server = createMessageConnection(
      new StreamMessageReader(toServer),
      new StreamMessageWriter(toClient),
    );
    serve(server, {
      pause: () => new Promise((resolve) => setImmediate(resolve)),
      now: () => performance.now(),
      files: () =>
        Object.assign(this.files, {
          filesEnding: (endings: readonly string[]) => this.#filesEnding(endings),
        }),
    });
    this.connection = createMessageConnection(
      new StreamMessageReader(toClient),
      new StreamMessageWriter(toServer),
    );
    this.connection.onNotification(
      "textDocument/publishDiagnostics",
      (params: PublishDiagnosticsParams) => {
        this.published.set(params.uri.slice(FOLDER.length), params);
        this.log.push(params);
      },
    );
    this.connection.listen();
  }

  /** `capabilities` as a client tells them; `offers` are what it does beyond the protocol. */
  async start(settings: object = {}, capabilities: object = {}, offers: object = {}) {
    await this.connection.sendRequest("initialize", {
      processId: null,
      rootUri: FOLDER.slice(0, -1),
      capabilities,
      initializationOptions: { settings, ...offers },
    });
    await this.notify("initialized", {});
  }

  open(name: string, text: string): Promise<void> {
    this.#version = 1;
    const textDocument = { uri: FOLDER + name, languageId: "markdown", version: 1, text };
    return this.notify("textDocument/didOpen", { textDocument });
  }

  /** Replaces a range of one line. */
  change(name: string, line: number, from: number, to: number, text: string): Promise<void> {
    this.#version++;
    const range = { start: { line, character: from }, end: { line, character: to } };
    return this.notify("textDocument/didChange", {
      textDocument: { uri: FOLDER + name, version: this.#version },
      contentChanges: [{ range, text }],
    });
  }

  /** Replaces what stands between two places. */
  replace(
    name: string,
    start: { line: number; character: number },
    end: { line: number; character: number },
    text: string,
  ): Promise<void> {
    this.#version++;
    return this.notify("textDocument/didChange", {
      textDocument: { uri: FOLDER + name, version: this.#version },
      contentChanges: [{ range: { start, end }, text }],
    });
  }

  close(name: string): Promise<void> {
    return this.notify("textDocument/didClose", { textDocument: { uri: FOLDER + name } });
  }

  /** Changes or deletes a file on disk and tells the server. */
  changeFile(name: string, text: string | undefined): Promise<void> {
    this.files.set(FOLDER + name, text);
    const changes = [{ uri: FOLDER + name, type: text === undefined ? 3 : 2 }];
    return this.notify("workspace/didChangeWatchedFiles", { changes });
  }

  /** Asks about a place once the server has caught up. */
  ask<Result>(method: string, name: string, line: number, character: number): Promise<Result> {
    const textDocument = { uri: FOLDER + name };
    return this.connection.sendRequest(method, { textDocument, position: { line, character } });
  }

  /** `line:column code` of the findings of a file, when the server has caught up. */
  async findings(name: string): Promise<string[]> {
    await this.settled();
    return (this.published.get(name)?.diagnostics ?? []).map(brief);
  }

  /** Resolves when the server has worked through all that it was sent. */
  async settled(): Promise<void> {
    for (let quiet = 0; quiet < 5; ) {
      const before = this.log.length;
      await this.connection.sendRequest("textDocument/hover", {
        textDocument: { uri: `${FOLDER}nothing.md` },
        position: { line: 0, character: 0 },
      });
      quiet = this.log.length === before ? quiet + 1 : 0;
    }
  }

  stop(): void {
    this.connection.dispose();
  }

  notify(method: string, params: object): Promise<void> {
    return this.connection.sendNotification(method, params);
  }

  async #filesEnding(endings: readonly string[]): Promise<readonly string[]> {
    const entries = await this.files.list(FOLDER);
    const uris = entries.map(({ uri }) => uri);
    return uris.filter((uri) => endings.some((ending) => uri.endsWith(`.${ending}`)));
  }
}

function brief({ range, code }: Diagnostic): string {
  return `${range.start.line}:${range.start.character} ${code}`;
}
