/** The view of the guide's stages and steps, each with its parts and its worst finding. */

import * as vscode from "vscode";
import {
  type OverviewParams,
  type SentStage,
  type SentStep,
  STAGES,
  type StagesResult,
} from "../../../server/src/lsp/protocol.ts";
import type { Ask } from "../start.ts";
import type { FollowedGuide } from "./follow.ts";
import { show } from "./show.ts";

type Node = { readonly stage: SentStage } | { readonly step: SentStep };

export class StagesView implements vscode.TreeDataProvider<Node> {
  readonly onDidChangeTreeData: vscode.Event<void>;

  constructor(
    private readonly guide: FollowedGuide,
    private readonly ask: Ask,
  ) {
    this.onDidChangeTreeData = guide.onChange;
  }

  async getChildren(node?: Node): Promise<Node[]> {
    if (!node) return (await this.stages()).map((stage) => ({ stage }));
    return "stage" in node ? node.stage.steps.map((step) => ({ step })) : [];
  }

  /** The editor asks only while the view is open, and nobody else needs the steps. */
  private async stages(): Promise<readonly SentStage[]> {
    const uri = this.guide.overview?.uri;
    if (uri === undefined) return [];
    const params: OverviewParams = { uri };
    return (await this.ask<StagesResult>(STAGES, params)) ?? [];
  }

  getTreeItem(node: Node): vscode.TreeItem {
    return "stage" in node ? stageItem(node.stage) : stepItem(node.step);
  }
}

function stageItem({ number, title, fitted, worst, spot }: SentStage): vscode.TreeItem {
  const item = new vscode.TreeItem(
    title ? `${number}  ${title}` : `${number}`,
    vscode.TreeItemCollapsibleState.Collapsed,
  );
  item.id = `stage ${spot.uri} ${number}`;
  item.description = fitted === 1 ? "1 part" : `${fitted} parts`;
  item.command = show(spot);
  withFinding(item, worst, []);
  return item;
}

function stepItem({ number, text, parts, worst, spot }: SentStep): vscode.TreeItem {
  const item = new vscode.TreeItem(`${number}  ${text}`);
  item.id = `step ${spot.uri} ${number}`;
  item.description = parts.join(", ");
  item.tooltip = text;
  item.command = show(spot);
  withFinding(item, worst, parts);
  return item;
}

const ICONS: Readonly<Record<string, readonly [icon: string, colour: string, word: string]>> = {
  error: ["error", "problemsErrorIcon.foreground", "error"],
  warning: ["warning", "problemsWarningIcon.foreground", "warning"],
  information: ["info", "problemsInfoIcon.foreground", "information"],
};

/** Hints are quiet here as they are in the editor. What is seen is read out too: number, text, parts, finding. */
function withFinding(
  item: vscode.TreeItem,
  worst: string | undefined,
  parts: readonly string[],
): void {
  const known = worst === undefined ? undefined : ICONS[worst];
  const said = [item.label, ...parts];
  // Numbers stand below each other, with a finding or without.
  item.iconPath = new vscode.ThemeIcon("blank");
  if (known) {
    const [icon, colour, word] = known;
    item.iconPath = new vscode.ThemeIcon(icon, new vscode.ThemeColor(colour));
    said.push(word);
  }
  item.accessibilityInformation = { label: said.join(", ") };
}
