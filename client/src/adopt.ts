/** The command that marks the parts which a plain Markdown guide names, after the author has seen each. */

import * as vscode from "vscode";
import { ADOPT, type AdoptParams, type AdoptResult } from "../../server/src/lsp/protocol.ts";
import { findLists, isListName } from "./partsLists.ts";
import { rangeOf } from "./rangeOf.ts";
import type { Ask } from "./start.ts";
import { tell, tellAndOffer } from "./tell.ts";

/** `named` is the file that the author clicked; else the one in the editor. */
export async function adopt(ask: Ask, named: vscode.Uri | undefined): Promise<void> {
  const uri = named ?? vscode.window.activeTextEditor?.document.uri;
  const document = uri && (await vscode.workspace.openTextDocument(uri));
  if (document?.languageId !== "markdown") {
    tell("Open the Markdown file of a build guide first.");
    return;
  }
  await vscode.window.showTextDocument(document);
  const params: AdoptParams = { uri: document.uri.toString() };
  let found = await ask<AdoptResult>(ADOPT, params);
  if (found === null) {
    if (!(await namePartsList(document))) return;
    found = await ask<AdoptResult>(ADOPT, params);
  }
  if (found) await mark(found);
}

async function mark({ marks, left }: NonNullable<AdoptResult>): Promise<void> {
  if (marks.length === 0) {
    const nothing = "No step is sure to fit a part that is not marked yet.";
    tellWithLeft(nothing, left);
    return;
  }
  const edit = new vscode.WorkspaceEdit();
  for (const one of marks) {
    const metadata = { label: one.why, description: left, needsConfirmation: true };
    edit.replace(vscode.Uri.parse(one.uri, true), rangeOf(one.range), one.text, metadata);
  }
  const how = "Tick the marks that are right, or the file for all of them, and apply.";
  tellWithLeft(how, left);
  await vscode.workspace.applyEdit(edit, { isRefactoring: true });
}

/** `left` names the parts that the author must mark; empty where there are none. */
function tellWithLeft(message: string, left: string): void {
  if (left === "") tell(message);
  else
    void tellAndOffer(
      `${message} ${left}`,
      "Show Parts Not Yet Fitted",
      "kitquill.partsLeft.focus",
    );
}

/** Writes the key `parts` into the front matter: that is what makes the file a guide. */
async function namePartsList(document: vscode.TextDocument): Promise<boolean> {
  const list = await chooseList(document);
  if (!list) return false;
  const line = `parts: ${JSON.stringify(list)}\n`;
  const hasFrontMatter = /^---\s*$/.test(document.lineAt(0).text);
  const edit = new vscode.WorkspaceEdit();
  if (hasFrontMatter) edit.insert(document.uri, new vscode.Position(1, 0), line);
  else edit.insert(document.uri, new vscode.Position(0, 0), `---\n${line}---\n\n`);
  return vscode.workspace.applyEdit(edit);
}

/** One of the lists in the guide's folder or below it. */
async function chooseList(document: vscode.TextDocument): Promise<string | undefined> {
  const folder = vscode.Uri.joinPath(document.uri, "..");
  const paths = (await findLists(folder)).map(({ path }) =>
    path.slice(folder.path.replace(/\/$/, "").length + 1),
  );
  // Not every file system can be searched; beside the guide is where lists are.
  for (const [name] of await vscode.workspace.fs.readDirectory(folder)) {
    if (isListName(name)) paths.push(name);
  }
  return vscode.window.showQuickPick([...new Set(paths)].sort(), {
    title: "Parts List of This Guide",
    placeHolder:
      paths.length > 0 ? "Its parts are marked where they are fitted" : "No list is here",
  });
}
