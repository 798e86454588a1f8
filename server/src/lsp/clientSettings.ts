/** The settings of the client, and the folders that they are for: asked for, told, and taken over. */
import type { MessageConnection } from "vscode-jsonrpc";
import type {
  DidChangeConfigurationParams,
  DidChangeWorkspaceFoldersParams,
  InitializeParams,
} from "vscode-languageserver";
import type { ServiceSettings } from "../service.ts";
import { canonicalUri } from "../workspace/paths.ts";
import { readSettings } from "./settings.ts";

/** Takes new settings over; `ofFolders` by URI of the folders that have their own. */
type Configure = (
  settings: ServiceSettings,
  ofFolders: ReadonlyMap<string, ServiceSettings>,
) => void;

export class ClientSettings {
  readonly #connection: MessageConnection;
  readonly #configure: Configure;
  /** The client is asked; one that cannot be tells. */
  readonly #asks: boolean;
  #folders: readonly string[];
  #section: unknown;
  /** Of a window with several folders, their own settings. */
  #sectionsOfFolders: readonly unknown[] = [];

  constructor(connection: MessageConnection, params: InitializeParams, configure: Configure) {
    this.#connection = connection;
    this.#configure = configure;
    this.#asks = params.capabilities.workspace?.configuration === true;
    this.#folders = foldersOf(params);
    this.#section = params.initializationOptions?.settings;
  }

  /** Those of the whole window. */
  get usual(): ServiceSettings {
    return this.#read(this.#section);
  }

  /** Asks a client that can be asked, and to be told of changes. */
  async initialized(): Promise<void> {
    if (!this.#asks) return;
    const method = "workspace/didChangeConfiguration";
    await this.#connection.sendRequest("client/registerCapability", {
      registrations: [{ id: method, method, registerOptions: { section: "kitquill" } }],
    });
    await this.#fetch();
  }

  async changed({ settings }: DidChangeConfigurationParams): Promise<void> {
    if (this.#asks) return this.#fetch();
    this.#section = (settings as { kitquill?: unknown } | null)?.kitquill;
    this.#tell();
  }

  async foldersChanged({ event }: DidChangeWorkspaceFoldersParams): Promise<void> {
    const removed = new Set(event.removed.map(({ uri }) => canonicalUri(uri)));
    const added = event.added.map(({ uri }) => canonicalUri(uri));
    this.#folders = [...this.#folders.filter((uri) => !removed.has(uri)), ...added];
    this.#sectionsOfFolders = [];
    if (this.#asks) return this.#fetch();
    this.#tell();
  }

  async #fetch(): Promise<void> {
    const asked = this.#folders;
    const folders = asked.length > 1 ? asked : [];
    const items = [{}, ...folders.map((scopeUri) => ({ scopeUri }))];
    const answer = await this.#connection.sendRequest<unknown[]>("workspace/configuration", {
      items: items.map((item) => ({ ...item, section: "kitquill" })),
    });
    // Folders that came meanwhile have asked anew.
    if (folders.length > 0 && asked !== this.#folders) return;
    [this.#section, ...this.#sectionsOfFolders] = answer;
    this.#tell();
  }

  #tell(): void {
    const ofFolders = this.#sectionsOfFolders.map(
      (section, index) => [this.#folders[index]!, this.#read(section)] as const,
    );
    this.#configure(this.usual, new Map(ofFolders));
  }

  #read(section: unknown): ServiceSettings {
    return readSettings(section, this.#folders);
  }
}

function foldersOf(params: InitializeParams): string[] {
  const folders = params.workspaceFolders?.map(({ uri }) => uri) ?? [];
  const root = params.rootUri;
  return (folders.length > 0 ? folders : root ? [root] : []).map(canonicalUri);
}
