/**
 * The life of the server as the user sees it: started with the extension, restarted by command
 * or after a crash, and when it cannot start, one clear message with the way to the log.
 */

import * as vscode from "vscode";
import {
  type BaseLanguageClient,
  CloseAction,
  ErrorAction,
  type ErrorHandler,
  type LanguageClientOptions,
  ProgressType,
  State,
  type WorkDoneProgressReport,
} from "vscode-languageclient";
import { PATCH_PREVIEW, type SentPatch } from "../../server/src/lsp/protocol.ts";
import { adopt } from "./adopt.ts";
import { registerExplain } from "./explain.ts";
import { serveFiles } from "./files.ts";
import { registerGoTo } from "./goTo.ts";
import { clientOptions, watchFiles } from "./options.ts";
import { createPreview, type PreviewServer } from "./preview/preview.ts";
import { publishGuide } from "./publish/publish.ts";
import { createRevision } from "./revision/commands.ts";
import { startGuide } from "./startGuide.ts";
import { FollowedGuide } from "./views/follow.ts";
import { createViews } from "./views/views.ts";

/** Makes a client for this host; the two hosts differ in how a server is run. */
export type MakeClient = (options: LanguageClientOptions) => BaseLanguageClient;

/** Asks the server; undefined while none runs, or when it has no answer. */
export type Ask = <Answer>(
  method: string,
  params: object,
  long?: LongRequest,
) => Promise<Answer | undefined>;

/** A request that takes its time: it tells how far it is, and may be cancelled. */
export interface LongRequest {
  readonly token: vscode.CancellationToken;
  readonly report: (report: WorkDoneProgressReport) => void;
}

const REPORTS = new ProgressType<WorkDoneProgressReport>();

/** How long a server may take for its first answer before the user is told. */
const PATIENCE_MS = 20_000;
/** Crashes are healed silently this often in the time below, then the user decides. */
const RESTARTS = 3;
const RESTARTS_WITHIN_MS = 180_000;

const NO_ANSWER = `Kitquill cannot check your guides: its server has not answered for ${PATIENCE_MS / 1000} seconds.`;
const NO_START = "Kitquill cannot check your guides: its server did not start.";
const CRASHES = "Kitquill has stopped checking your guides: its server keeps crashing.";
const WHAT_NOW = "The log says more; your files are untouched.";

const SHOW_LOG = "Show Log";
const RESTART = "Restart Server";

/** Starts the server and adds the commands; all of it ends with the extension. */
export function start(context: vscode.ExtensionContext, make: MakeClient): void {
  const log = vscode.window.createOutputChannel("Kitquill", { log: true });
  const session = new Session(make, log);
  // First, since all else can wait. Not awaited: a server that never answers must not keep the extension
  // from being active.
  void session.start();
  const guide = new FollowedGuide(session.ask);
  context.subscriptions.push(
    log,
    session,
    registerGoTo(),
    registerExplain(context.extensionUri),
    vscode.commands.registerCommand("kitquill.showLog", () => log.show()),
    vscode.commands.registerCommand("kitquill.restartServer", () => session.restart()),
    vscode.commands.registerCommand("kitquill.adopt", (guide?: vscode.Uri) =>
      adopt(session.ask, guide),
    ),
    vscode.commands.registerCommand("kitquill.startGuide", (list?: vscode.Uri) =>
      startGuide(session.ask, list),
    ),
    vscode.commands.registerCommand("kitquill.publishGuide", (page?: vscode.Uri) =>
      publishGuide(session.ask, page, guide.overview?.uri),
    ),
    guide,
    ...createViews(guide, session.ask),
    ...createPreview(context.extensionUri, session, guide),
    ...createRevision(session.ask, context.workspaceState),
  );
}

/** One launch of the server, until its first answer or failure. */
interface Launch {
  pending: boolean;
  /** The user hears of a failure once, whatever else follows from it. */
  told: boolean;
}

class Session implements vscode.Disposable, PreviewServer {
  private client: BaseLanguageClient | undefined;
  private readonly patched = new vscode.EventEmitter<SentPatch>();
  private readonly running = new vscode.EventEmitter<void>();
  readonly onPatch = this.patched.event;
  readonly onRunning = this.running.event;
  private readonly watched = watchFiles();
  private readonly crashes: number[] = [];
  private requests = 0;
  private launched: Promise<void> | undefined;

  constructor(
    private readonly make: MakeClient,
    private readonly log: vscode.LogOutputChannel,
  ) {}

  /** Resolves when the server runs or the user has been told why it does not. */
  start(): Promise<void> {
    this.launched = this.launch();
    return this.launched;
  }

  private async launch(): Promise<void> {
    const launch: Launch = { pending: true, told: false };
    this.log.info("Starting the server.");
    const late = setTimeout(() => this.tellFailed(launch, NO_ANSWER), PATIENCE_MS);
    try {
      const options = clientOptions(this.log, this.watched);
      const client = this.make({ ...options, errorHandler: this.errorHandler(launch) });
      this.client = client;
      serveFiles(client);
      client.onNotification(PATCH_PREVIEW, (patch: SentPatch) => this.patched.fire(patch));
      client.onDidChangeState(({ newState }) => {
        if (newState === State.Running) this.running.fire();
      });
      await client.start();
      this.log.info("The server is running.");
    } catch (error) {
      const reason = error instanceof Error ? error.message : String(error);
      this.log.error(`The server did not start: ${reason}`);
      this.tellFailed(launch, NO_START);
    } finally {
      launch.pending = false;
      clearTimeout(late);
    }
  }

  readonly ask: Ask = async <Answer>(method: string, params: object, long?: LongRequest) => {
    // A command may be what woke the extension, before its server runs.
    await this.launched;
    const client = this.client;
    if (!client?.isRunning()) return undefined;
    if (!long) return this.answer<Answer>(client.sendRequest(method, params), method);
    const workDoneToken = `kitquill-${++this.requests}`;
    const reports = client.onProgress(REPORTS, workDoneToken, long.report);
    const request = client.sendRequest<Answer>(method, { ...params, workDoneToken }, long.token);
    return this.answer(request, method).finally(() => reports.dispose());
  };

  private async answer<Answer>(
    request: Promise<Answer>,
    method: string,
  ): Promise<Answer | undefined> {
    try {
      return await request;
    } catch (error) {
      // A server that stops meanwhile answers nothing; its end is told elsewhere.
      this.log.debug(`${method} has no answer: ${error}`);
      return undefined;
    }
  }

  async restart(): Promise<void> {
    this.log.info("Restarting the server.");
    this.crashes.length = 0;
    await this.stop();
    await this.start();
  }

  async dispose(): Promise<void> {
    await this.stop();
    this.watched.dispose();
    this.patched.dispose();
    this.running.dispose();
  }

  private async stop(): Promise<void> {
    const client = this.client;
    this.client = undefined;
    try {
      await client?.dispose();
    } catch (error) {
      // A client whose server never ran refuses to stop; there is nothing to stop then.
      this.log.debug(`The old server could not be asked to stop: ${error}`);
    }
  }

  private errorHandler(launch: Launch): ErrorHandler {
    return {
      error: (error) => {
        // A worker that fails while it loads never answers; this is the only sign of it.
        if (launch.pending) this.tellFailed(launch, NO_START);
        const message = `The connection to the server has an error: ${error.message}`;
        return { action: ErrorAction.Continue, handled: true, message };
      },
      closed: () => {
        const doNotRestart = { action: CloseAction.DoNotRestart, handled: true };
        // start() tells about this one.
        if (launch.pending) return doNotRestart;
        if (this.countCrash() <= RESTARTS) return { action: CloseAction.Restart, handled: true };
        this.tell(CRASHES);
        return doNotRestart;
      },
    };
  }

  /** Crashes in the recent past, this one included. */
  private countCrash(): number {
    const now = Date.now();
    this.crashes.push(now);
    return this.crashes.filter((time) => time > now - RESTARTS_WITHIN_MS).length;
  }

  private tellFailed(launch: Launch, message: string): void {
    if (!launch.told) this.tell(message);
    launch.told = true;
  }

  private tell(message: string): void {
    const shown = vscode.window.showErrorMessage(`${message} ${WHAT_NOW}`, SHOW_LOG, RESTART);
    void shown.then((choice) => {
      if (choice === SHOW_LOG) this.log.show();
      if (choice === RESTART) void this.restart();
    });
  }
}
