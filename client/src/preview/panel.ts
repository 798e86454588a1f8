/** The panel that shows one guide: its page, and what it may read. */

import * as vscode from "vscode";
import type { PreviewPlace, SentPatch } from "../../../server/src/lsp/protocol.ts";
import type { FromPage, PictureRoot, ToPage } from "./messages.ts";
import { pageFolder, pageHtml } from "./page.ts";

export const PANEL = "kitquill.preview";

export class PreviewPanel implements vscode.Disposable {
  private readonly subscriptions: vscode.Disposable[];
  private folders: readonly vscode.Uri[] = [];
  private isReady = false;

  constructor(
    private readonly panel: vscode.WebviewPanel,
    private readonly extension: vscode.Uri,
    heard: (message: FromPage) => void,
    hidden: () => void,
    closed: () => void,
  ) {
    this.subscriptions = [
      panel.webview.onDidReceiveMessage((message: FromPage) => {
        if (message.kind === "ready") this.isReady = true;
        heard(message);
      }),
      // A hidden page is gone; it begins anew when it is shown again.
      panel.onDidChangeViewState(() => {
        if (panel.visible) return;
        this.isReady = false;
        hidden();
      }),
      panel.onDidDispose(closed),
    ];
    this.mayRead(undefined);
    panel.webview.html = pageHtml(panel.webview, extension);
  }

  dispose(): void {
    for (const one of this.subscriptions) one.dispose();
    this.panel.dispose();
  }

  get isVisible(): boolean {
    return this.panel.visible;
  }

  show(): void {
    this.panel.reveal(undefined, true);
  }

  /** Pictures of the workspace are shown, and without one those beside the guide. */
  mayRead(guide: vscode.Uri | undefined): void {
    const open = (vscode.workspace.workspaceFolders ?? []).map(({ uri }) => uri);
    const own = guide ? [vscode.Uri.joinPath(guide, "..")] : [];
    const folders = open.length > 0 ? open : own;
    if (folders.join("\n") === this.folders.join("\n") && this.panel.webview.options.enableScripts)
      return;
    this.folders = folders;
    this.panel.webview.options = {
      enableScripts: true,
      localResourceRoots: [pageFolder(this.extension), ...folders],
    };
  }

  patch(patch: SentPatch): void {
    this.panel.title = patch.title === "" ? "Guide Preview" : `Preview of ${patch.title}`;
    this.send({ kind: "patch", patch, roots: this.roots() });
  }

  reveal(place: PreviewPlace, withMarked: boolean): void {
    this.send({ kind: "reveal", place, withMarked });
  }

  mark(block: number | undefined): void {
    this.send({ kind: "mark", block });
  }

  private send(message: ToPage): void {
    if (this.isReady) void this.panel.webview.postMessage(message);
  }

  private roots(): PictureRoot[] {
    return this.folders.map((folder) => ({
      from: withSlash(folder),
      to: withSlash(this.panel.webview.asWebviewUri(folder)),
    }));
  }
}

/** A folder at the root of its file system has one at its end already. */
function withSlash(folder: vscode.Uri): string {
  return folder.toString().replace(/\/*$/, "/");
}
