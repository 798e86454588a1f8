/** Keeps text and preview at the same place: scrolling both ways, the cursor's step, and jumps. */

import * as vscode from "vscode";
import {
  FIND_IN_PREVIEW,
  type FindInPreviewParams,
  type FindInPreviewResult,
  SOURCE_OF_PREVIEW,
  type SourceOfPreviewParams,
  type SourceOfPreviewResult,
} from "../../../server/src/lsp/protocol.ts";
import type { Ask } from "../start.ts";
import type { FromPage } from "./messages.ts";
import type { PreviewPanel } from "./panel.ts";

/** The text does not answer to its own echo for so long (ms). */
const ECHO_MS = 300;

export class PreviewSync implements vscode.Disposable {
  private readonly subscriptions: vscode.Disposable[];
  private quietUntil = 0;
  /** The first line that each text shows. */
  private readonly firstLines = new WeakMap<vscode.TextEditor, number>();
  /** Of several questions of one kind only the last one's answer counts. */
  private readonly asked = { mark: 0, reveal: 0, scroll: 0 };

  constructor(
    private readonly ask: Ask,
    private readonly panel: () => PreviewPanel | undefined,
  ) {
    this.subscriptions = [
      vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => this.mark(textEditor)),
      vscode.window.onDidChangeTextEditorVisibleRanges(({ textEditor }) => {
        // A line that wraps as it is typed moves the end of what is shown, and nobody has scrolled.
        if (this.hasMoved(textEditor) && Date.now() >= this.quietUntil)
          void this.reveal(textEditor);
      }),
    ];
  }

  dispose(): void {
    for (const one of this.subscriptions) one.dispose();
  }

  /** Brings the preview to where the text is. */
  fromText(): void {
    const editor = vscode.window.activeTextEditor ?? vscode.window.visibleTextEditors[0];
    if (!editor) return;
    void this.mark(editor);
    void this.reveal(editor);
  }

  heard(message: Exclude<FromPage, { kind: "ready" }>): void {
    if (message.kind === "scrolled") void this.scrollText(message.place);
    else if (message.kind === "open") void this.open(message.block, message.step);
    else void this.followLink(message.block, message.href);
  }

  private async mark(editor: vscode.TextEditor): Promise<void> {
    const order = ++this.asked.mark;
    const place = await this.find(editor, editor.selection.active.line);
    if (place && order === this.asked.mark) this.panel()?.mark(place.block);
  }

  private hasMoved(editor: vscode.TextEditor): boolean {
    const line = editor.visibleRanges[0]?.start.line;
    if (line === undefined || line === this.firstLines.get(editor)) return false;
    this.firstLines.set(editor, line);
    return true;
  }

  private async reveal(editor: vscode.TextEditor): Promise<void> {
    const [first] = editor.visibleRanges;
    if (!first) return;
    const order = ++this.asked.reveal;
    const place = await this.find(editor, first.start.line);
    if (!place || order !== this.asked.reveal) return;
    const { active } = editor.selection;
    const withMarked = editor.visibleRanges.some((range) => range.contains(active));
    this.panel()?.reveal(place, withMarked);
  }

  private async find(editor: vscode.TextEditor, line: number): Promise<FindInPreviewResult> {
    if (!this.panel()?.isVisible || editor.document.languageId !== "markdown") return null;
    const params: FindInPreviewParams = { uri: editor.document.uri.toString(), line };
    return (await this.ask<FindInPreviewResult>(FIND_IN_PREVIEW, params)) ?? null;
  }

  private source(params: SourceOfPreviewParams): Promise<SourceOfPreviewResult | undefined> {
    return this.ask<SourceOfPreviewResult>(SOURCE_OF_PREVIEW, params);
  }

  private async scrollText(place: { block: number; share: number }): Promise<void> {
    const order = ++this.asked.scroll;
    const spot = await this.source(place);
    const editor = spot && editorOf(spot.uri);
    if (!spot || !editor || order !== this.asked.scroll) return;
    this.quietUntil = Date.now() + ECHO_MS;
    const { line } = spot.range.start;
    editor.revealRange(new vscode.Range(line, 0, line, 0), vscode.TextEditorRevealType.AtTop);
  }

  private async open(block: number, step: string | undefined): Promise<void> {
    const spot = await this.source({ block, share: 0, step });
    if (!spot) return;
    const { line, character } = spot.range.start;
    const at = new vscode.Position(line, character);
    const viewColumn = editorOf(spot.uri)?.viewColumn ?? vscode.ViewColumn.One;
    this.quietUntil = Date.now() + ECHO_MS;
    await vscode.window.showTextDocument(vscode.Uri.parse(spot.uri, true), {
      selection: new vscode.Range(at, at),
      viewColumn,
    });
  }

  /** Opens a file that a link names, as long as it lies in a folder that is open. */
  private async followLink(block: number, href: string): Promise<void> {
    const spot = await this.source({ block, share: 0 });
    if (!spot || /^[a-z][a-z0-9+.-]*:/i.test(href) || href.startsWith("/")) return;
    const path = decodeURIComponent(href.replace(/[?#].*$/s, ""));
    const file = vscode.Uri.joinPath(vscode.Uri.parse(spot.uri, true), "..", path);
    if (!vscode.workspace.getWorkspaceFolder(file)) return;
    await vscode.commands.executeCommand("vscode.open", file, vscode.ViewColumn.One);
  }
}

function editorOf(uri: string): vscode.TextEditor | undefined {
  return vscode.window.visibleTextEditors.find(({ document }) => document.uri.toString() === uri);
}
