/** The view of the parts that no step fits yet, by board and height; a click or a drag marks them. */

import * as vscode from "vscode";
import type { SentPart, SentPartGroup } from "../../../server/src/lsp/protocol.ts";
import type { FollowedGuide } from "./follow.ts";
import { type Choice, markOf } from "./markOf.ts";

export const INSERT_MARK = "kitquill.insertMark";

type Node = { readonly board: string; readonly groups: readonly SentPartGroup[] } | Choice;

export class PartsLeftView
  implements vscode.TreeDataProvider<Node>, vscode.TreeDragAndDropController<Node>
{
  readonly onDidChangeTreeData: vscode.Event<void>;
  readonly dragMimeTypes = ["text/plain"];
  readonly dropMimeTypes = [];

  constructor(private readonly guide: FollowedGuide) {
    this.onDidChangeTreeData = guide.onChange;
  }

  getChildren(node?: Node): Node[] {
    if (!node) return roots(this.guide.overview?.left ?? []);
    if ("groups" in node) return node.groups.map((group) => ({ group }));
    const { group, part } = node;
    return part ? [] : group.parts.map((each) => ({ group, part: each }));
  }

  getTreeItem(node: Node): vscode.TreeItem {
    if ("groups" in node) return boardItem(node.board, node.groups);
    return node.part ? partItem(node, node.part) : groupItem(node.group);
  }

  handleDrag(nodes: readonly Node[], transfer: vscode.DataTransfer): void {
    const choices = nodes.flatMap<Choice>((node) =>
      "groups" in node ? node.groups.map((group) => ({ group })) : [node],
    );
    transfer.set("text/plain", new vscode.DataTransferItem(markOf(choices)));
  }
}

/** Boards only where the kit has several. */
function roots(left: readonly SentPartGroup[]): Node[] {
  const boards = new Map<string, SentPartGroup[]>();
  for (const group of left) boards.set(group.board, [...(boards.get(group.board) ?? []), group]);
  const [only, ...others] = boards.keys();
  if (only === "" && others.length === 0) return left.map((group) => ({ group }));
  return [...boards].map(([board, groups]) => ({ board, groups }));
}

function boardItem(board: string, groups: readonly SentPartGroup[]): vscode.TreeItem {
  const item = new vscode.TreeItem(board || "no board", vscode.TreeItemCollapsibleState.Expanded);
  item.id = `board ${board}`;
  item.description = counted(groups.reduce((sum, { parts }) => sum + parts.length, 0));
  return item;
}

function groupItem({ board, height, offBoard, parts }: SentPartGroup): vscode.TreeItem {
  const unknown = offBoard ? "off the boards" : "height not known";
  const label = height === undefined ? unknown : `${height} mm`;
  const item = new vscode.TreeItem(label, vscode.TreeItemCollapsibleState.Expanded);
  item.id = `group ${board} ${label}`;
  item.description = counted(parts.length);
  return item;
}

function partItem(choice: Choice, part: SentPart): vscode.TreeItem {
  const item = new vscode.TreeItem(part.name);
  const mark = markOf([choice]);
  item.id = `part ${mark}`;
  item.description = [part.value, part.package].filter((text) => text !== "").join(" · ");
  item.tooltip = `Click to insert ${mark} at the cursor, or hold Shift and drag it into the text`;
  const label = [part.name, part.value, part.package].filter((text) => text !== "").join(", ");
  item.accessibilityInformation = { label };
  item.command = { command: INSERT_MARK, title: "Insert Part Mark", arguments: [mark] };
  return item;
}

function counted(parts: number): string {
  return parts === 1 ? "1 part" : `${parts} parts`;
}
