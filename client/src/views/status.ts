/** The status bar entry: how far the guide is, and whether something is wrong. */

import * as vscode from "vscode";
import type { SentOverview } from "../../../server/src/lsp/protocol.ts";
import type { FollowedGuide } from "./follow.ts";
import { progressOf } from "./progress.ts";

export class Status implements vscode.Disposable {
  private readonly item = vscode.window.createStatusBarItem(
    "kitquill.progress",
    vscode.StatusBarAlignment.Left,
  );
  private readonly subscription: vscode.Disposable;

  constructor(guide: FollowedGuide) {
    this.item.name = "Kitquill";
    this.subscription = guide.onChange(() => this.show(guide.overview));
  }

  dispose(): void {
    this.subscription.dispose();
    this.item.dispose();
  }

  private show(overview: SentOverview | undefined): void {
    if (!overview) {
      this.item.hide();
      return;
    }
    const { text, tooltip, command } = progressOf(overview);
    this.item.text = text;
    this.item.tooltip = tooltip;
    this.item.command = command;
    this.item.show();
  }
}
