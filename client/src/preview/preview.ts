/** The preview beside the text: one panel, which follows the guide that the author works on. */

import * as vscode from "vscode";
import {
  HIDE_PREVIEW,
  type SentPatch,
  SHOW_PREVIEW,
  type ShowPreviewResult,
} from "../../../server/src/lsp/protocol.ts";
import type { Ask } from "../start.ts";
import { tell } from "../tell.ts";
import type { FollowedGuide } from "../views/follow.ts";
import type { FromPage } from "./messages.ts";
import { PANEL, PreviewPanel } from "./panel.ts";
import { PreviewSync } from "./sync.ts";

const OPEN_PREVIEW = "kitquill.openPreview";
const NO_GUIDE =
  "There is no guide to preview. A guide is a Markdown file whose front matter names its parts list with `parts`.";

/** The server as the preview needs it. */
export interface PreviewServer {
  readonly ask: Ask;
  readonly onPatch: vscode.Event<SentPatch>;
  /** A server has begun to run, which knows nothing of a preview. */
  readonly onRunning: vscode.Event<void>;
}

/** All that must be disposed of with the extension. */
export function createPreview(
  extension: vscode.Uri,
  server: PreviewServer,
  guide: FollowedGuide,
): vscode.Disposable[] {
  const preview = new Preview(extension, server, guide);
  return [
    preview,
    vscode.commands.registerCommand(OPEN_PREVIEW, () => preview.open()),
    vscode.window.registerWebviewPanelSerializer(PANEL, {
      async deserializeWebviewPanel(panel) {
        preview.take(panel);
      },
    }),
  ];
}

class Preview implements vscode.Disposable {
  private panel: PreviewPanel | undefined;
  /** URI of the guide that is shown. */
  private shown: string | undefined;
  private readonly sync: PreviewSync;
  private readonly subscriptions: vscode.Disposable[];

  constructor(
    private readonly extension: vscode.Uri,
    private readonly server: PreviewServer,
    private readonly guide: FollowedGuide,
  ) {
    this.sync = new PreviewSync(server.ask, () => this.panel);
    this.subscriptions = [
      this.sync,
      server.onPatch((patch) => this.patch(patch)),
      server.onRunning(() => this.again()),
      guide.onChange(() => this.follow()),
    ];
  }

  dispose(): void {
    for (const one of this.subscriptions) one.dispose();
    this.panel?.dispose();
  }

  /** Shows the guide of the active editor, or the one worked on last. */
  async open(): Promise<void> {
    const active = vscode.window.activeTextEditor?.document.uri.toString();
    const found = active === undefined ? null : await this.guideOf(active);
    // A server that does not run yet will be asked when it does.
    const shown = found === undefined ? active : (found?.uri ?? this.guide.overview?.uri);
    if (shown === undefined) {
      tell(NO_GUIDE);
      return;
    }
    this.shown = shown;
    if (this.panel) {
      this.panel.show();
      await this.show(shown);
      return;
    }
    const where = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
    this.take(vscode.window.createWebviewPanel(PANEL, "Guide Preview", where));
  }

  /** Takes a new panel, or one that the editor has restored; its page says when it is ready. */
  take(panel: vscode.WebviewPanel): void {
    this.panel?.dispose();
    const taken: PreviewPanel = new PreviewPanel(
      panel,
      this.extension,
      (message) => this.heard(message),
      () => this.rest(),
      () => {
        if (this.panel === taken) this.panel = undefined;
        this.rest();
      },
    );
    this.panel = taken;
  }

  private heard(message: FromPage): void {
    if (message.kind !== "ready") this.sync.heard(message);
    else {
      this.shown ??= message.uri ?? this.guide.overview?.uri;
      void this.again();
    }
  }

  /** Asks a server that has begun, or for a page that has. */
  private async again(): Promise<void> {
    if (this.panel && this.shown !== undefined) await this.show(this.shown);
  }

  /** Nobody looks: the server need not keep the preview current. */
  private rest(): void {
    void this.server.ask(HIDE_PREVIEW, {});
  }

  private follow(): void {
    const followed = this.guide.overview?.uri;
    if (!this.panel?.isVisible || followed === undefined || followed === this.shown) return;
    void this.show(followed);
  }

  /** Null for a file of no guide, undefined while no server runs. */
  private guideOf(uri: string): Promise<ShowPreviewResult | undefined> {
    return this.server.ask<ShowPreviewResult>(SHOW_PREVIEW, { uri });
  }

  private async show(uri: string): Promise<void> {
    this.panel?.mayRead(vscode.Uri.parse(uri));
    this.shown = (await this.guideOf(uri))?.uri ?? this.shown;
  }

  private patch(patch: SentPatch): void {
    this.panel?.patch(patch);
    if (patch.isNew) this.sync.fromText();
  }
}
