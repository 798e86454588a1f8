/** Asks the client to send the parts lists in use, whatever language it takes them for. */
import {
  type Connection,
  DidChangeTextDocumentNotification,
  DidCloseTextDocumentNotification,
  DidOpenTextDocumentNotification,
  TextDocumentSyncKind,
} from "vscode-languageserver";
import { URI, Utils } from "vscode-uri";
import { FEATURES } from "./features/all.ts";

const REQUESTS: readonly { readonly method: string; readonly options?: object | undefined }[] = [
  { method: DidOpenTextDocumentNotification.method },
  { method: DidCloseTextDocumentNotification.method },
  ...FEATURES.flatMap(({ onLists = [], listOptions: options }) =>
    onLists.map((method) => ({ method, options })),
  ),
];

export class ListRegistrations {
  readonly #connection: Connection;
  readonly #registered = new Set<string>();

  constructor(connection: Connection) {
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
    const { method } = DidChangeTextDocumentNotification;
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
