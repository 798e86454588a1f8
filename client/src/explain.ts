/** The command to which the code of a finding leads; it is in no menu. */

import * as vscode from "vscode";

export const EXPLAIN = "kitquill.explain";

/** `extension` is the folder of the extension, which holds the pages of the checks. */
export function registerExplain(extension: vscode.Uri): vscode.Disposable {
  return vscode.commands.registerCommand(EXPLAIN, async (code: string) => {
    // A link in any text can run a command; this one opens pages of checks and nothing else.
    if (!/^[a-z-]+$/.test(code)) return;
    const page = vscode.Uri.joinPath(extension, "server", "docs", "checks", `${code}.md`);
    await vscode.commands.executeCommand("markdown.showPreview", page);
  });
}
