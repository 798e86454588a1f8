/** Which files may be parts lists, and which one the author means. */
import * as vscode from "vscode";

/** The usual endings; a list may have any other. */
export const ENDINGS = ["csv", "tsv", "txt", "xlsx", "xlsm", "ods", "xml"];
const MOST = 200;

/** The pattern of files with these endings, in small letters or capitals. */
export function filesOf(endings: readonly string[]): string {
  return `**/*.{${endings},${endings.map((ending) => ending.toUpperCase())}}`;
}

/** Files in the workspace, or in the folder and below it, that may be parts lists. */
export async function findLists(folder?: vscode.Uri): Promise<vscode.Uri[]> {
  const all = filesOf(ENDINGS);
  const pattern = folder ? new vscode.RelativePattern(folder, all) : all;
  const found = await vscode.workspace.findFiles(pattern, undefined, MOST);
  // Spreadsheet programs tell by such a file that they have a list open.
  return found.filter(({ path }) => !path.includes("/~$"));
}

/** Whether a file's name is a list's. */
export function isListName(name: string): boolean {
  return ENDINGS.includes(name.slice(name.lastIndexOf(".") + 1).toLowerCase());
}

/** The file in the editor, if it is named like a list. */
export function activeList(): vscode.Uri | undefined {
  const uri = vscode.window.activeTextEditor?.document.uri;
  return uri && isListName(uri.path) ? uri : undefined;
}

/** A list to choose; without `uri` the entry that asks for a file elsewhere. */
export interface ListPick extends vscode.QuickPickItem {
  readonly uri?: vscode.Uri;
}

/** The lists of the workspace, by name. */
export async function listPicks(): Promise<ListPick[]> {
  const paths = (await findLists()).map((uri) => ({
    label: vscode.workspace.asRelativePath(uri),
    uri,
  }));
  return paths.sort((a, b) => a.label.localeCompare(b.label));
}

export const ANOTHER_FILE: ListPick = { label: "$(folder-opened) Another file…" };

/** What the author picks in the list, or in the file dialog for what is not in it. */
export async function pickList(
  picks: readonly ListPick[],
  options: vscode.QuickPickOptions,
  dialog: vscode.OpenDialogOptions,
): Promise<ListPick | undefined> {
  const all = [...picks, ANOTHER_FILE];
  const picked = picks.length > 0 ? await vscode.window.showQuickPick(all, options) : ANOTHER_FILE;
  if (!picked || picked.uri) return picked;
  const uri = (await vscode.window.showOpenDialog(dialog))?.[0];
  return uri && { uri, label: vscode.workspace.asRelativePath(uri) };
}
