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

/** The file in the editor, unless it is a guide or another Markdown text of prose. */
export function activeList(): vscode.Uri | undefined {
  const document = vscode.window.activeTextEditor?.document;
  return document?.languageId === "markdown" ? undefined : document?.uri;
}
