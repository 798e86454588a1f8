/** The view of what a revised parts list touches in the guide, by kind. */

import * as vscode from "vscode";
import type { Comparison, TouchedItem } from "../revision/comparison.ts";
import { show } from "./show.ts";

export type TouchedNode = { readonly kind: string } | { readonly item: TouchedItem };

export class TouchedView implements vscode.TreeDataProvider<TouchedNode> {
  readonly onDidChangeTreeData: vscode.Event<void>;

  constructor(private readonly comparison: Comparison) {
    this.onDidChangeTreeData = comparison.onChange;
  }

  getChildren(node?: TouchedNode): TouchedNode[] {
    const { items } = this.comparison;
    if (!node)
      return [...new Set(items.map(({ touched }) => touched.kind))].map((kind) => ({ kind }));
    return itemsOf(node, items)
      .filter((item) => !("item" in node && node.item === item))
      .map((item) => ({ item }));
  }

  getTreeItem(node: TouchedNode): vscode.TreeItem {
    if ("item" in node) return itemOf(node.item);
    const item = new vscode.TreeItem(node.kind, vscode.TreeItemCollapsibleState.Expanded);
    item.id = `kind ${node.kind}`;
    item.contextValue = "kind";
    item.description = String(itemsOf(node, this.comparison.items).length);
    return item;
  }
}

/** The item itself, or all of the kind. */
export function itemsOf(node: TouchedNode, items: readonly TouchedItem[]): readonly TouchedItem[] {
  return "item" in node ? [node.item] : items.filter(({ touched }) => touched.kind === node.kind);
}

function itemOf({ key, touched }: TouchedItem): vscode.TreeItem {
  const { step, message, spot, fixes } = touched;
  const item = new vscode.TreeItem(step === undefined ? message : `${step}  ${message}`);
  item.id = key;
  item.tooltip = message;
  item.command = show(spot);
  item.contextValue = fixes.length > 0 ? "fixable" : "touched";
  if (fixes.length > 0) item.iconPath = new vscode.ThemeIcon("lightbulb");
  return item;
}
