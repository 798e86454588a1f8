/** What a feature of the language server is made of: what it promises, and what it answers. */
import type { ClientCapabilities, Connection, ServerCapabilities } from "vscode-languageserver";
import type { Service } from "../../service.ts";

/** What a feature needs for its answers. */
export interface FeatureContext {
  readonly connection: Connection;
  readonly service: Service;
  readonly client: ClientCapabilities;
  /** Command of the client that shows completions anew. */
  readonly suggestAgain: string | undefined;
  /** Command of the client that goes to a location. */
  readonly goTo: string | undefined;
  /** Resolves when the analysis has caught up with all that came before. */
  caughtUp(): Promise<void>;
  /**
   * Guides of the workspace, followed or not, that are meant or whose front matter names a file that
   * is; without a workspace those near the file `near`.
   */
  guidesNaming(isMeant: (uri: string) => boolean, near: string): Promise<readonly string[]>;
}

export interface Feature {
  /** What the server can do by this feature, for a client that can take so much. */
  capabilities(client: ClientCapabilities): ServerCapabilities;
  /** Requests wanted for parts lists too, whatever language the editor takes them for. */
  readonly onLists?: readonly string[];
  /** Options of those requests. */
  readonly listOptions?: object;
  /** Sees to it that the requests are answered. */
  listen(context: FeatureContext): void;
}

/** What the features promise together. */
export function joinCapabilities(
  features: readonly Feature[],
  client: ClientCapabilities,
): ServerCapabilities {
  const joined: ServerCapabilities = {};
  for (const feature of features) {
    const { workspace, ...own } = feature.capabilities(client);
    Object.assign(joined, own);
    if (workspace) joined.workspace = { ...joined.workspace, ...workspace };
  }
  return joined;
}
