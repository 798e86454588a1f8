/** Asks the client to send the parts lists in use, whatever language it takes them for. */
import type { MessageConnection } from "vscode-jsonrpc";
import { URI, Utils } from "vscode-uri";
import { LIST_REQUESTS } from "./capabilities.ts";
import { TextDocumentSyncKind } from "./values.ts";

const REQUESTS: typeof LIST_REQUESTS = [
  { method: "textDocument/didOpen" },
  { method: "textDocument/didClose" },
  ...LIST_REQUESTS,
];

export class ListRegistrations {
  readonly #connection: MessageConnection;
  readonly #registered = new Set<string>();

  constructor(connection: MessageConnection) {
    this.#connection = connection;
  }

  /** Registers lists that are new; what is registered stays, since an open file must stay in sync. */
  async follow(uris: readonly string[]): Promise<void> {
    const fresh = uris.filter(
      (uri) => !this.#registered.has(uri) && !/\.(?:md|markdown)$/i.test(uri),
    );
    if (fresh.length === 0) return;
    for (const uri of fresh) this.#registered.add(uri);
    const documentSelector = fresh.map((uri) => ({ pattern: `**/${globOf(uri)}` }));
    const registrations = REQUESTS.map(({ method, options }) => ({
      id: `${method}#${this.#registered.size}`,
      method,
      registerOptions: { documentSelector, ...options },
    }));
    const method = "textDocument/didChange";
    const change = {
      id: `${method}#${this.#registered.size}`,
      method,
      registerOptions: { documentSelector, syncKind: TextDocumentSyncKind.Incremental },
    };
    await this.#connection.sendRequest("client/registerCapability", {
      registrations: [change, ...registrations],
    });
  }
}

/** The file's name as a glob; characters with a meaning in globs match any one character. */
function globOf(uri: string): string {
  return Utils.basename(URI.parse(uri)).replace(/[[\]{}*?!\\]/g, "?");
}
