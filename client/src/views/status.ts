/** The status bar entry: how far the guide is, and whether something is wrong. */

import * as vscode from "vscode";
import type { SentOverview } from "../../../server/src/lsp/protocol.ts";
import type { FollowedGuide } from "./follow.ts";

export class Status implements vscode.Disposable {
  private readonly item = vscode.window.createStatusBarItem(
    "kitquill.progress",
    vscode.StatusBarAlignment.Left,
  );
  private readonly subscription: vscode.Disposable;

  constructor(guide: FollowedGuide) {
    this.item.name = "Kitquill";
    this.item.command = "kitquill.partsLeft.focus";
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
    const { fitted, listed, errors, warnings } = overview;
    const faults = [
      ...(errors > 0 ? [`$(error) ${errors}`] : []),
      ...(warnings > 0 ? [`$(warning) ${warnings}`] : []),
    ];
    this.item.text = [`$(checklist) ${fitted} of ${listed} fitted`, ...faults].join("  ");
    const left = listed - fitted;
    this.item.tooltip =
      left === 0
        ? "Every part of the list is fitted in a step."
        : `${left === 1 ? "1 part is" : `${left} parts are`} fitted in no step yet. Click to see what is left.`;
    this.item.show();
  }
}
