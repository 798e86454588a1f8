/** Keeps the overview of the guide that the author works on; the views show what it holds. */

import * as vscode from "vscode";
import {
  OVERVIEW,
  type OverviewParams,
  type OverviewResult,
  type SentOverview,
} from "../../../server/src/lsp/protocol.ts";
import type { Ask } from "../start.ts";
import { setContext } from "../tell.ts";

/** Typing and checking settle before the views are drawn anew. */
const PAUSE_MS = 250;

/** The overview of the guide to which the last active page or parts list belongs. */
export class FollowedGuide implements vscode.Disposable {
  private readonly changed = new vscode.EventEmitter<void>();
  private readonly subscriptions: vscode.Disposable[];
  private timer: ReturnType<typeof setTimeout> | undefined;
  private uri: string | undefined;
  private asked = 0;
  /** Undefined while no guide is known. */
  overview: SentOverview | undefined;
  readonly onChange = this.changed.event;

  constructor(private readonly ask: Ask) {
    this.subscriptions = [
      this.changed,
      vscode.window.onDidChangeActiveTextEditor(() => this.soon()),
      vscode.workspace.onDidChangeTextDocument(() => this.soon()),
      vscode.languages.onDidChangeDiagnostics(() => this.soon()),
    ];
    this.soon();
  }

  dispose(): void {
    clearTimeout(this.timer);
    for (const one of this.subscriptions) one.dispose();
  }

  private soon(): void {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => void this.refresh(), PAUSE_MS);
  }

  /** A page of a guide or a list in use becomes the one to follow; other files change nothing. */
  private async refresh(): Promise<void> {
    const order = ++this.asked;
    const active = vscode.window.activeTextEditor?.document.uri.toString();
    const own = active === undefined ? undefined : await this.overviewOf(active);
    const found = own ?? (await this.known());
    if (order !== this.asked) return;
    // While a panel has the focus, what holds for the text beside it stays.
    if (active !== undefined) setContext("inGuide", own !== undefined);
    this.overview = found;
    this.uri = found?.uri;
    setContext("hasGuide", found !== undefined);
    setContext("hasParts", found !== undefined && found.listed > 0);
    this.changed.fire();
  }

  /** The guide followed so far, if it still is one. */
  private async known(): Promise<SentOverview | undefined> {
    return this.uri === undefined ? undefined : this.overviewOf(this.uri);
  }

  private async overviewOf(uri: string): Promise<SentOverview | undefined> {
    const params: OverviewParams = { uri };
    return (await this.ask<OverviewResult>(OVERVIEW, params)) ?? undefined;
  }
}
