/** The language server: keeps texts, files and settings in step with the client, and publishes. */
import { type CancellationToken, type MessageConnection, ResponseError } from "vscode-jsonrpc";
import type {
  DidChangeConfigurationParams,
  DidChangeTextDocumentParams,
  DidChangeWatchedFilesParams,
  DidChangeWorkspaceFoldersParams,
  DidCloseTextDocumentParams,
  DidOpenTextDocumentParams,
  InitializeParams,
  InitializeResult,
} from "vscode-languageserver";
import { type FileDiagnoses, Service } from "../service.ts";
import { guidesNaming } from "../workspace/companions.ts";
import type { Files } from "../workspace/files.ts";
import { markedFile } from "../workspace/openElsewhere.ts";
import { canonicalUri } from "../workspace/paths.ts";
import { capabilitiesFor } from "./capabilities.ts";
import { ClientSettings } from "./clientSettings.ts";
import { rangeToSpan, toDiagnostic } from "./convert.ts";
import type { Answers, FeatureContext } from "./features/feature.ts";
import { ListRegistrations } from "./lists.ts";
import type { ClientOffers } from "./protocol.ts";
import { type Host, Updater } from "./updater.ts";
import { ErrorCode, MessageType } from "./values.ts";

/** What the server needs of the place it runs in. */
export interface Environment extends Host {
  /** Files for a client that offers to serve them, or from disk. */
  files(offers: ClientOffers): Files & FileFinder;
}

export interface FileFinder {
  /** Markdown files in which the guide of a page may be found. */
  filesEnding(endings: readonly string[], limit: number, near: string): Promise<readonly string[]>;
}

const MARKDOWN = ["md", "markdown"];
/** So many Markdown files are looked into for the guide that a page belongs to. */
const MOST_CANDIDATES = 500;

/** What the place that a server runs in may know of it. */
export interface Session {
  /** Process of the client, where it tells. */
  readonly editor: number | undefined;
  /** Whether the client has asked the server to end. */
  readonly isOver: boolean;
}

/** Serves one client until it disconnects. */
export function serve(connection: MessageConnection, environment: Environment): Session {
  const server = new Server(connection, environment);
  connection.onRequest("initialize", (params: InitializeParams) => server.initialize(params));
  connection.onNotification("initialized", () => server.initialized());
  connection.onRequest("shutdown", () => server.shutdown());
  connection.listen();
  return server;
}

class Server implements Session {
  editor: number | undefined;
  isOver = false;
  readonly #connection: MessageConnection;
  readonly #environment: Environment;
  #files!: Files & FileFinder;
  #service!: Service;
  #updater!: Updater;
  #context!: FeatureContext;
  #answers: Answers | undefined;
  #lists: ListRegistrations | undefined;
  #settings!: ClientSettings;
  readonly #updateListeners: (() => void)[] = [];
  /** Guides followed for the sake of an open page of theirs. */
  readonly #companions = new Map<string, readonly string[]>();

  constructor(connection: MessageConnection, environment: Environment) {
    this.#connection = connection;
    this.#environment = environment;
  }

  initialize(params: InitializeParams): InitializeResult {
    const offers = readOffers(params.initializationOptions);
    this.editor = params.processId ?? undefined;
    this.#files = this.#environment.files(offers);
    this.#settings = new ClientSettings(this.#connection, params, (settings, ofFolders) => {
      this.#service.configure(settings, ofFolders);
      this.#wake();
    });
    this.#service = new Service(this.#files, this.#settings.usual);
    this.#updater = new Updater(
      this.#service,
      this.#environment,
      (changes) => this.#publish(changes),
      (error) => this.#report(error),
    );
    const { textDocument } = params.capabilities;
    if (textDocument?.synchronization?.dynamicRegistration) {
      this.#lists = new ListRegistrations(this.#connection);
    }
    this.#listen();
    this.#context = {
      service: this.#service,
      client: params.capabilities,
      suggestAgain: offers.suggestAgain,
      goTo: offers.goTo,
      explain: offers.explain,
      host: this.#environment,
      caughtUp: () => this.#updater.wake(),
      onUpdate: (listener) => this.#updateListeners.push(listener),
      ask: (method) => this.#attempt(this.#connection.sendRequest(method)),
      filesEnding: (endings, near) => this.#filesEnding(endings, near),
      guidesNaming: (isMeant, near) => this.#guidesNaming(isMeant, near),
      tell: (method, params) => void this.#connection.sendNotification(method, params),
      report: (error) => this.#report(error),
    };
    return {
      serverInfo: { name: "kitquill" },
      capabilities: capabilitiesFor(params.capabilities),
    };
  }

  initialized(): Promise<void> {
    return this.#settings.initialized();
  }

  shutdown(): null {
    this.isOver = true;
    return null;
  }

  #listen(): void {
    const connection = this.#connection;
    const told = <Params>(method: string, take: (params: Params) => void) =>
      connection.onNotification(method, take);
    told<DidOpenTextDocumentParams>("textDocument/didOpen", (params) => this.#open(params));
    told<DidChangeTextDocumentParams>("textDocument/didChange", (params) => this.#change(params));
    told<DidCloseTextDocumentParams>("textDocument/didClose", ({ textDocument }) =>
      this.#close(textDocument.uri),
    );
    told<DidChangeWatchedFilesParams>("workspace/didChangeWatchedFiles", ({ changes }) => {
      for (const { uri } of changes) {
        // A program that closes a file frees it, and takes its mark away.
        this.#service.changedOutside(canonicalUri(markedFile(uri) ?? uri));
      }
      this.#wake();
    });
    told<DidChangeConfigurationParams>("workspace/didChangeConfiguration", (params) =>
      this.#attempt(this.#settings.changed(params)),
    );
    told<DidChangeWorkspaceFoldersParams>("workspace/didChangeWorkspaceFolders", (params) =>
      this.#attempt(this.#settings.foldersChanged(params)),
    );
    connection.onRequest((method, params, token) => this.#answer(method, params, token));
  }

  async #answer(method: string, params: unknown, token: CancellationToken): Promise<unknown> {
    const answers = await this.#features();
    const answer = answers[method];
    if (!answer) throw new ResponseError(ErrorCode.MethodNotFound, `There is no ${method} here.`);
    return answer(params as never, token);
  }

  /** The features. They are loaded when a guide has been checked, or when the first request comes. */
  async #features(): Promise<Answers> {
    const { answersOf } = await import("./features/all.ts");
    this.#answers ??= answersOf(this.#context);
    return this.#answers;
  }

  #open({ textDocument: { uri, version, text } }: DidOpenTextDocumentParams): void {
    this.#service.open(canonicalUri(uri), version, withoutMark(text));
    this.#wake();
    this.#attempt(this.#followCompanions(canonicalUri(uri)));
  }

  #change({ textDocument, contentChanges }: DidChangeTextDocumentParams): void {
    const uri = canonicalUri(textDocument.uri);
    for (const change of contentChanges) {
      const lines = this.#service.openLines(uri);
      if (!lines) return;
      const span =
        "range" in change
          ? rangeToSpan(change.range, lines)
          : { start: 0, end: this.#service.text(uri)!.length };
      this.#service.edit(uri, textDocument.version, [{ span, text: change.text }]);
    }
    this.#wake();
  }

  #close(raw: string): void {
    const uri = canonicalUri(raw);
    this.#service.close(uri);
    const companions = this.#companions.get(uri) ?? [];
    this.#companions.delete(uri);
    const wanted = new Set([...this.#companions.values()].flat());
    for (const guide of companions) if (!wanted.has(guide)) this.#service.unfollow(guide);
    this.#wake();
  }

  /** A page does not say whose it is: the guide that names it is looked for and followed. */
  async #followCompanions(uri: string): Promise<void> {
    await this.#updater.wake();
    if (this.#service.guidesOf(uri).length > 0) return;
    const guides = await this.#guidesNaming((named) => named === uri, uri);
    if (guides.length === 0 || !this.#service.openLines(uri)) return;
    this.#companions.set(uri, guides);
    for (const guide of guides) this.#service.follow(guide);
    this.#wake();
  }

  #filesEnding(endings: readonly string[], near: string): Promise<readonly string[]> {
    return this.#files.filesEnding(endings, MOST_CANDIDATES, near);
  }

  async #guidesNaming(isMeant: (uri: string) => boolean, near: string): Promise<readonly string[]> {
    const candidates = await this.#filesEnding(MARKDOWN, near);
    return guidesNaming(isMeant, candidates.map(canonicalUri), this.#files);
  }

  #wake(): void {
    this.#attempt(this.#updater.wake().then(() => this.#prepare()));
  }

  /** Who has opened a guide will soon ask something of it, and should not wait for the features then. */
  async #prepare(): Promise<void> {
    if (this.#answers || this.#service.guides().length === 0) return;
    await this.#environment.pause();
    await this.#features();
  }

  #publish(changes: readonly FileDiagnoses[]): void {
    const { explain } = this.#context;
    for (const { uri, version, diagnoses } of changes) {
      void this.#connection.sendNotification("textDocument/publishDiagnostics", {
        uri,
        ...(version !== undefined && { version }),
        diagnostics: diagnoses.map((one) => toDiagnostic(one, explain)),
      });
    }
    for (const listener of this.#updateListeners) listener();
    if (this.#lists) this.#attempt(this.#lists.follow(this.#service.lists()));
  }

  /** Nobody waits for it: when it fails, the client is told. */
  #attempt(work: Promise<unknown>): void {
    work.catch((error) => this.#report(error));
  }

  #report(error: unknown): void {
    const message = error instanceof Error ? (error.stack ?? error.message) : String(error);
    const type = MessageType.Error;
    void this.#connection.sendNotification("window/logMessage", { type, message });
  }
}

function readOffers(options: unknown): ClientOffers {
  const offers = options as Partial<ClientOffers> | null | undefined;
  return {
    clientFiles: offers?.clientFiles === true,
    ...(typeof offers?.suggestAgain === "string" && { suggestAgain: offers.suggestAgain }),
    ...(typeof offers?.goTo === "string" && { goTo: offers.goTo }),
    ...(typeof offers?.explain === "string" && { explain: offers.explain }),
  };
}

/** Offsets count from after a byte-order mark. */
function withoutMark(text: string): string {
  return text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
}
