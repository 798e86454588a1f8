/** The commands around a comparison of two parts lists, and the view of what it touches. */

import * as vscode from "vscode";
import type { SentEdit, SentRenumbering } from "../../../server/src/lsp/protocol.ts";
import { rangeOf } from "../rangeOf.ts";
import type { Ask } from "../start.ts";
import { tell, tellError } from "../tell.ts";
import { itemsOf, type TouchedNode, TouchedView } from "../views/touched.ts";
import { chooseList, chooseOld } from "./chooseOld.ts";
import { Comparison } from "./comparison.ts";

const VIEW = "kitquill.touched";

/** All that must be disposed of with the extension. */
export function createRevision(ask: Ask, store: vscode.Memento): vscode.Disposable[] {
  const comparison = new Comparison(ask, store);
  const view = vscode.window.createTreeView(VIEW, {
    treeDataProvider: new TouchedView(comparison),
    showCollapseAll: true,
  });
  const entitle = comparison.onChange(() => {
    const count = comparison.items.length;
    view.description = comparison.label && `since ${comparison.label}`;
    view.badge = count > 0 ? { value: count, tooltip: `${count} places to see to` } : undefined;
  });
  const on = (name: string, run: (...args: never[]) => unknown) =>
    vscode.commands.registerCommand(`kitquill.${name}`, run);
  return [
    comparison,
    view,
    entitle,
    on("compareLists", (list?: vscode.Uri) => compare(comparison, list)),
    on("endComparison", () => comparison.end()),
    on("dismissTouched", (node: TouchedNode) =>
      comparison.dismiss(itemsOf(node, comparison.items).map(({ key }) => key)),
    ),
    on("fixTouched", (node: TouchedNode) => fix(node)),
    on("carryRenumbering", () => carry(comparison)),
  ];
}

async function compare(comparison: Comparison, named: vscode.Uri | undefined): Promise<void> {
  const list = await chooseList(named);
  const old = list && (await chooseOld(list));
  if (!old) return;
  const problem = await comparison.start(list, old.uri, old.label);
  if (problem !== undefined) {
    tellError(problem);
    return;
  }
  if (comparison.items.length === 0) {
    tell("The lists differ in nothing that touches the guide.");
  }
  await vscode.commands.executeCommand(`${VIEW}.focus`);
}

async function fix(node: TouchedNode): Promise<void> {
  if (!("item" in node)) return;
  const { fixes } = node.item.touched;
  const titles = fixes.map(({ title }) => title);
  const title = titles.length > 1 ? await vscode.window.showQuickPick(unique(titles)) : titles[0];
  // The same may be due at several places of a step.
  const edits = fixes.filter((one) => one.title === title).flatMap((one) => one.edits);
  if (edits.length > 0) await apply(edits);
}

/** The author confirms the guessed pairs, and may look at each edit before it is made. */
async function carry(comparison: Comparison): Promise<void> {
  const pairs = await confirm(comparison.renumbered);
  const result = pairs.length > 0 ? await comparison.renumber(pairs) : undefined;
  if (!result) return;
  if ("problem" in result) {
    tellError(result.problem);
    return;
  }
  const { edits } = result;
  if (edits.length === 0) {
    tell("The guide names none of these designators.");
    return;
  }
  const files = new Set(edits.map(({ uri }) => uri)).size;
  const question = `Carry ${counted(pairs.length, "designator")} through the guide? ${counted(edits.length, "line")} in ${counted(files, "file")} will change.`;
  const answer = await vscode.window.showInformationMessage(
    question,
    { modal: true },
    "Change",
    "Preview",
  );
  if (answer) await apply(edits, answer === "Preview");
}

async function confirm(pairs: readonly SentRenumbering[]): Promise<readonly SentRenumbering[]> {
  const picks = pairs.map((pair) => ({
    label: `${pair.from} → ${pair.to}`,
    ...(pair.board !== "" && { description: pair.board }),
    picked: true,
    pair,
  }));
  const picked = await vscode.window.showQuickPick(picks, {
    title: "Carry Renumbered Designators Through the Guide",
    placeHolder: "Guesses, by kind of part: leave out those that are wrong",
    canPickMany: true,
  });
  return (picked ?? []).map(({ pair }) => pair);
}

/** In one edit, which one undo takes back. */
async function apply(edits: readonly SentEdit[], isPreviewed = false): Promise<void> {
  const edit = new vscode.WorkspaceEdit();
  for (const { uri, range, text, version } of edits) {
    const open = vscode.workspace.textDocuments.find((one) => one.uri.toString() === uri);
    if (version !== undefined && open && open.version !== version) {
      tellError("The text has changed meanwhile. Try again.");
      return;
    }
    const metadata = { needsConfirmation: true, label: "New designators" };
    edit.replace(vscode.Uri.parse(uri), rangeOf(range), text, isPreviewed ? metadata : undefined);
  }
  await vscode.workspace.applyEdit(edit, { isRefactoring: true });
}

function counted(number: number, noun: string): string {
  return `${number} ${noun}${number === 1 ? "" : "s"}`;
}

function unique(texts: readonly string[]): string[] {
  return [...new Set(texts)];
}
