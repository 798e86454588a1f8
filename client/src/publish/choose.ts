/** What the user is asked before a guide is published: in spite of errors, what of it, and where to. */

import * as vscode from "vscode";
import type { SentPublishable } from "../../../server/src/lsp/protocol.ts";
import { tellError } from "../tell.ts";

const TITLE = "Publish Guide";
const ANYWAY = "Publish Anyway";
const SHOW = "Show Problems";

/** Whether to go on; errors must be waived by the user. */
export async function goOnWithErrors(errors: number): Promise<boolean> {
  if (errors === 0) return true;
  const count = errors === 1 ? "one error" : `${errors} errors`;
  const chosen = await vscode.window.showWarningMessage(
    `The checks found ${count} in this guide.`,
    {
      modal: true,
      detail:
        "Builders would follow them. The page will say that it was published in spite of errors.",
    },
    SHOW,
    ANYWAY,
  );
  if (chosen === SHOW) await vscode.commands.executeCommand("workbench.actions.view.problems");
  return chosen === ANYWAY;
}

/** Whether to go on although what would be written is wrong in itself. */
export async function goOnWithFaults(faults: readonly string[]): Promise<boolean> {
  if (faults.length === 0) return true;
  const options = { modal: true, detail: faults.join("\n") };
  const message = "What would be published does not agree with the parts list.";
  return (await vscode.window.showWarningMessage(message, options, ANYWAY)) === ANYWAY;
}

/** Whether files that are not ours may be replaced. */
export async function mayReplace(names: readonly string[]): Promise<boolean> {
  if (names.length === 0) return true;
  const options = { modal: true, detail: names.join("\n") };
  const message =
    "Files of these names are there that Kitquill did not make, that come from a guide of another title, or that were changed at their beginning.";
  return (await vscode.window.showWarningMessage(message, options, "Replace")) === "Replace";
}

/** Undefined when the user leaves. */
export async function chooseOutputs(
  outputs: SentPublishable["outputs"],
): Promise<readonly string[] | undefined> {
  const items = outputs.map(({ name, summary }) => ({
    label: name,
    description: summary,
    picked: true,
  }));
  const chosen = await vscode.window.showQuickPick(items, {
    title: TITLE,
    placeHolder: "What to publish",
    canPickMany: true,
  });
  return chosen && chosen.length > 0 ? chosen.map(({ label }) => label) : undefined;
}

/** A folder inside the workspace; undefined when the user leaves. */
export async function chooseFolder(guide: vscode.Uri): Promise<vscode.Uri | undefined> {
  const usual = usualFolder(guide);
  const beside = vscode.workspace.asRelativePath(usual);
  const other = "Another folder…";
  const chosen = await vscode.window.showQuickPick([beside, other], {
    title: TITLE,
    placeHolder: "Where to write it",
  });
  if (chosen !== other) return chosen === undefined ? undefined : usual;
  const [folder] =
    (await vscode.window.showOpenDialog({
      title: TITLE,
      openLabel: "Publish Here",
      canSelectFiles: false,
      canSelectFolders: true,
      defaultUri: vscode.Uri.joinPath(guide, ".."),
    })) ?? [];
  if (!folder || vscode.workspace.getWorkspaceFolder(folder)) return folder;
  tellError(
    `${folder.path} lies outside the workspace, so nothing was published. Choose a folder inside it, or use \`kitquill publish --out\`.`,
  );
  return undefined;
}

/** Beside the guide, named after it, as the command line does. */
function usualFolder(guide: vscode.Uri): vscode.Uri {
  const name = guide.path.slice(guide.path.lastIndexOf("/") + 1);
  return vscode.Uri.joinPath(guide, "..", `${name.replace(/\.\w+$/, "")}-published`);
}
