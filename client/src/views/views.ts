/** Sets the views up: stages, parts not yet fitted, and the status bar entry. */

import * as vscode from "vscode";
import type { Ask } from "../start.ts";
import type { FollowedGuide } from "./follow.ts";
import { INSERT_MARK, PartsLeftView } from "./partsLeft.ts";
import { StagesView } from "./stages.ts";
import { Status } from "./status.ts";

/** All that must be disposed of with the extension. */
export function createViews(guide: FollowedGuide, ask: Ask): vscode.Disposable[] {
  const parts = new PartsLeftView(guide);
  return [
    new Status(guide),
    vscode.window.createTreeView("kitquill.stages", {
      treeDataProvider: new StagesView(guide, ask),
      showCollapseAll: true,
    }),
    vscode.window.createTreeView("kitquill.partsLeft", {
      treeDataProvider: parts,
      dragAndDropController: parts,
      canSelectMany: true,
    }),
    vscode.commands.registerCommand(INSERT_MARK, insertMark),
  ];
}

/** Puts a mark where the cursor is, and the cursor behind it. */
async function insertMark(mark: string): Promise<void> {
  const editor = vscode.window.activeTextEditor ?? vscode.window.visibleTextEditors[0];
  if (!editor) return;
  const space = needsSpace(editor) ? " " : "";
  await editor.edit((edit) => edit.replace(editor.selection, space + mark));
  await vscode.window.showTextDocument(editor.document, editor.viewColumn);
}

function needsSpace({ document, selection }: vscode.TextEditor): boolean {
  const before = document.lineAt(selection.start.line).text.slice(0, selection.start.character);
  return /[^\s([]$/.test(before);
}
