/** The view of the parts that no step fits yet, by board and height; a click or a drag marks one. */

import * as vscode from "vscode";
import type { SentPart } from "../../../server/src/lsp/protocol.ts";
import type { FollowedGuide } from "./follow.ts";

export const INSERT_MARK = "kitquill.insertMark";

interface Group {
  readonly label: string;
  readonly id: string;
  readonly parts: readonly SentPart[];
  readonly groups: readonly Group[];
}

type Node = { readonly group: Group } | { readonly part: SentPart };

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
    if (!node) return children(byBoard(this.guide.overview?.left ?? []));
    return "group" in node ? children(node.group) : [];
  }

  getTreeItem(node: Node): vscode.TreeItem {
    return "group" in node ? groupItem(node.group) : partItem(node.part);
  }

  handleDrag(nodes: readonly Node[], transfer: vscode.DataTransfer): void {
    const parts = nodes.flatMap((node) => ("part" in node ? [node.part] : allOf(node.group)));
    transfer.set("text/plain", new vscode.DataTransferItem(markOf(parts)));
  }
}

/** The part mark that fits these parts. */
function markOf(parts: readonly SentPart[]): string {
  return `[${parts.map(({ name }) => name).join(", ")}]`;
}

/** Boards only where the kit has several. */
function byBoard(parts: readonly SentPart[]): Group {
  const boards = groupBy(parts, ({ board }) => board);
  const groups =
    boards.size > 1
      ? [...boards].map(([board, own]) => ({ ...byHeight(own, board), label: board || "no board" }))
      : byHeight(parts, "").groups;
  return { label: "", id: "", parts: [], groups };
}

function byHeight(parts: readonly SentPart[], board: string): Group {
  const heights = groupBy(parts, ({ height }) => height);
  const groups = [...heights].map(([height, own]) => ({
    label: height === undefined ? "height not known" : `${height} mm`,
    id: `${board} ${height}`,
    parts: own,
    groups: [],
  }));
  return { label: board, id: board, parts: [], groups };
}

function children({ groups, parts }: Group): Node[] {
  return [...groups.map((group) => ({ group })), ...parts.map((part) => ({ part }))];
}

function allOf({ groups, parts }: Group): SentPart[] {
  return [...parts, ...groups.flatMap(allOf)];
}

function groupItem(group: Group): vscode.TreeItem {
  const item = new vscode.TreeItem(group.label, vscode.TreeItemCollapsibleState.Expanded);
  item.id = `group ${group.id}`;
  const count = allOf(group).length;
  item.description = count === 1 ? "1 part" : `${count} parts`;
  return item;
}

function partItem(part: SentPart): vscode.TreeItem {
  const item = new vscode.TreeItem(part.name);
  item.id = `part ${part.name}`;
  item.description = [part.value, part.package].filter((text) => text !== "").join(" · ");
  item.tooltip = `Click to insert ${markOf([part])} at the cursor, or hold Shift and drag it into the text`;
  item.command = { command: INSERT_MARK, title: "Insert Part Mark", arguments: [markOf([part])] };
  return item;
}

function groupBy<Item, Key>(items: readonly Item[], keyOf: (item: Item) => Key): Map<Key, Item[]> {
  const groups = new Map<Key, Item[]>();
  for (const item of items) {
    const key = keyOf(item);
    const group = groups.get(key);
    if (group) group.push(item);
    else groups.set(key, [item]);
  }
  return groups;
}
