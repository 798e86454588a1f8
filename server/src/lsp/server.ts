/** The language server: keeps texts, files and settings in step with the client, and publishes. */
import {
  type Connection,
  DidChangeConfigurationNotification,
  type DidChangeTextDocumentParams,
  type InitializeParams,
  type InitializeResult,
  TextDocumentSyncKind,
} from "vscode-languageserver";
import { type FileDiagnoses, Service } from "../service.ts";
import { guidesNaming } from "../workspace/companions.ts";
import type { Files } from "../workspace/files.ts";
import { canonicalUri } from "../workspace/paths.ts";
import { rangeToSpan, toDiagnostic } from "./convert.ts";
import { FEATURES } from "./features/all.ts";
import { joinCapabilities } from "./features/feature.ts";
import { ListRegistrations } from "./lists.ts";
import type { ClientOffers } from "./protocol.ts";
import { readSettings } from "./settings.ts";
import { type Host, Updater } from "./updater.ts";

/** What the server needs of the place it runs in. */
export interface Environment extends Host {
  /** Files for a client that offers to serve them, or from disk. */
  files(offers: ClientOffers): Files & MarkdownFinder;
}

export interface MarkdownFinder {
  /** Markdown files in which the guide of a page may be found. */
  markdownFiles(limit: number, near: string): Promise<readonly string[]>;
}

/** So many Markdown files are looked into for the guide that a page belongs to. */
const MOST_CANDIDATES = 500;

/** Serves one client until it disconnects. */
export function serve(connection: Connection, environment: Environment): void {
  const server = new Server(connection, environment);
  connection.onInitialize((params) => server.initialize(params));
  connection.onInitialized(() => server.initialized());
}

class Server {
  readonly #connection: Connection;
  readonly #environment: Environment;
  #files!: Files & MarkdownFinder;
  #service!: Service;
  #updater!: Updater;
  #lists: ListRegistrations | undefined;
  #folders: string[] = [];
  #section: unknown;
  #asksForSettings = false;
  /** Guides followed for the sake of an open page of theirs. */
  readonly #companions = new Map<string, readonly string[]>();

  constructor(connection: Connection, environment: Environment) {
    this.#connection = connection;
    this.#environment = environment;
  }

  initialize(params: InitializeParams): InitializeResult {
    const offers = readOffers(params.initializationOptions);
    this.#files = this.#environment.files(offers);
    this.#folders = foldersOf(params);
    this.#section = params.initializationOptions?.settings;
    this.#service = new Service(this.#files, readSettings(this.#section, this.#folders));
    this.#updater = new Updater(
      this.#service,
      this.#environment,
      (changes) => this.#publish(changes),
      (error) => this.#report(error),
    );
    const { workspace, textDocument } = params.capabilities;
    this.#asksForSettings = workspace?.configuration === true;
    if (textDocument?.synchronization?.dynamicRegistration) {
      this.#lists = new ListRegistrations(this.#connection);
    }
    this.#listen();
    for (const feature of FEATURES) {
      feature.listen({
        connection: this.#connection,
        service: this.#service,
        client: params.capabilities,
        suggestAgain: offers.suggestAgain,
        goTo: offers.goTo,
        caughtUp: () => this.#updater.wake(),
        guidesNaming: (isMeant, near) => this.#guidesNaming(isMeant, near),
      });
    }
    const features = joinCapabilities(FEATURES, params.capabilities);
    return {
      serverInfo: { name: "kitquill" },
      capabilities: {
        textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
        ...features,
        workspace: {
          ...features.workspace,
          workspaceFolders: { supported: true, changeNotifications: true },
        },
      },
    };
  }

  async initialized(): Promise<void> {
    if (this.#asksForSettings) {
      await this.#connection.client.register(DidChangeConfigurationNotification.type, {
        section: "kitquill",
      });
      await this.#fetchSettings();
    }
  }

  #listen(): void {
    const connection = this.#connection;
    connection.onDidOpenTextDocument(({ textDocument: { uri, version, text } }) => {
      this.#service.open(canonicalUri(uri), version, withoutMark(text));
      this.#wake();
      void this.#followCompanions(canonicalUri(uri)).catch((error) => this.#report(error));
    });
    connection.onDidChangeTextDocument((params) => this.#change(params));
    connection.onDidCloseTextDocument(({ textDocument }) => this.#close(textDocument.uri));
    connection.onDidChangeWatchedFiles(({ changes }) => {
      for (const { uri } of changes) this.#service.changedOutside(canonicalUri(uri));
      this.#wake();
    });
    connection.onDidChangeConfiguration(({ settings }) => this.#settingsChanged(settings));
    connection.onNotification(
      "workspace/didChangeWorkspaceFolders",
      ({ event }: { event: { added: { uri: string }[]; removed: { uri: string }[] } }) => {
        const removed = new Set(event.removed.map(({ uri }) => canonicalUri(uri)));
        const added = event.added.map(({ uri }) => canonicalUri(uri));
        this.#folders = [...this.#folders.filter((uri) => !removed.has(uri)), ...added];
        this.#configure();
      },
    );
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

  async #guidesNaming(isMeant: (uri: string) => boolean, near: string): Promise<readonly string[]> {
    const candidates = await this.#files.markdownFiles(MOST_CANDIDATES, near);
    return guidesNaming(isMeant, candidates.map(canonicalUri), this.#files);
  }

  #settingsChanged(settings: unknown): void {
    if (this.#asksForSettings) {
      void this.#fetchSettings().catch((error) => this.#report(error));
      return;
    }
    this.#section = (settings as { kitquill?: unknown } | null)?.kitquill;
    this.#configure();
  }

  async #fetchSettings(): Promise<void> {
    this.#section = await this.#connection.workspace.getConfiguration("kitquill");
    this.#configure();
  }

  #configure(): void {
    this.#service.configure(readSettings(this.#section, this.#folders));
    this.#wake();
  }

  #wake(): void {
    void this.#updater.wake();
  }

  #publish(changes: readonly FileDiagnoses[]): void {
    for (const { uri, version, diagnoses } of changes) {
      void this.#connection.sendDiagnostics({
        uri,
        ...(version !== undefined && { version }),
        diagnostics: diagnoses.map(toDiagnostic),
      });
    }
    const registered = this.#lists?.follow(this.#service.lists());
    void registered?.catch((error) => this.#report(error));
  }

  #report(error: unknown): void {
    const text = error instanceof Error ? (error.stack ?? error.message) : String(error);
    this.#connection.console.error(text);
  }
}

function readOffers(options: unknown): ClientOffers {
  const offers = options as Partial<ClientOffers> | null | undefined;
  return {
    clientFiles: offers?.clientFiles === true,
    ...(typeof offers?.suggestAgain === "string" && { suggestAgain: offers.suggestAgain }),
    ...(typeof offers?.goTo === "string" && { goTo: offers.goTo }),
  };
}

function foldersOf(params: InitializeParams): string[] {
  const folders = params.workspaceFolders?.map(({ uri }) => uri) ?? [];
  const root = params.rootUri;
  return (folders.length > 0 ? folders : root ? [root] : []).map(canonicalUri);
}

/** Offsets count from after a byte-order mark. */
function withoutMark(text: string): string {
  return text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
}
