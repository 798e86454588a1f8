/** What a feature of the language server is made of: what it needs, and what it answers. */
import type { CancellationToken, ClientCapabilities } from "vscode-languageserver";
import type { Service } from "../../service.ts";
import type { Host } from "../updater.ts";

/** What a feature needs for its answers. */
export interface FeatureContext {
  readonly service: Service;
  readonly client: ClientCapabilities;
  /** Command of the client that shows completions anew. */
  readonly suggestAgain: string | undefined;
  /** Command of the client that goes to a location. */
  readonly goTo: string | undefined;
  /** Command of the client that shows the page of a check. */
  readonly explain: string | undefined;
  /** For work of a feature's own that must not keep messages waiting. */
  readonly host: Host;
  /** Resolves when the analysis has caught up with all that came before. */
  caughtUp(): Promise<void>;
  /** Calls the listener whenever the analysis has taken something in. */
  onUpdate(listener: () => void): void;
  /** Asks the client to do what the method says, such as to fetch something anew. */
  ask(method: string): void;
  /** Files of the workspace whose names end so; without a workspace those near the file `near`. */
  filesEnding(endings: readonly string[], near: string): Promise<readonly string[]>;
  /**
   * Guides of the workspace, followed or not, that are meant or whose front matter names a file that
   * is; without a workspace those near the file `near`.
   */
  guidesNaming(isMeant: (uri: string) => boolean, near: string): Promise<readonly string[]>;
  /** Sends the client a notification. */
  tell(method: string, params: object): void;
  /** Puts an error into the log. */
  report(error: unknown): void;
}

/**
 * Answers to requests, by the method that asks. A feature gives them its state; what the client is
 * promised of them stands in capabilities.ts.
 */
export type Feature = (context: FeatureContext) => Answers;

export type Answers = Readonly<Record<string, Answer>>;

/** The parameters are those that the protocol gives the method. */
export type Answer = (params: never, token: CancellationToken) => unknown;
