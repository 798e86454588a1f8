/** Asks which list the one at hand is compared with: a committed state of it, or another file. */

import * as vscode from "vscode";
import { activeList, findLists } from "../partsLists.ts";
import { committedStates } from "./git.ts";

const TITLE = "Compare with Another Parts List";

export interface Chosen {
  readonly uri: vscode.Uri;
  /** What the author knows it by. */
  readonly label: string;
}

interface Pick extends vscode.QuickPickItem {
  /** Undefined for the entry that asks for a file elsewhere. */
  readonly uri?: vscode.Uri;
}

export async function chooseOld(list: vscode.Uri): Promise<Chosen | undefined> {
  const name = vscode.workspace.asRelativePath(list);
  const picked = await vscode.window.showQuickPick(picksFor(list), {
    title: TITLE,
    placeHolder: `The list as it was before ${name}`,
    matchOnDescription: true,
  });
  if (!picked) return undefined;
  if (picked.uri) return { uri: picked.uri, label: picked.label.replace(/^\$\([\w-]+\) /, "") };
  const files = await vscode.window.showOpenDialog({
    title: "Old Parts List",
    openLabel: "Compare",
    defaultUri: vscode.Uri.joinPath(list, ".."),
  });
  const uri = files?.[0];
  return uri && { uri, label: vscode.workspace.asRelativePath(uri) };
}

/** The list of the command's call, the one in the editor, or one that the author is asked for. */
export async function chooseList(named: vscode.Uri | undefined): Promise<vscode.Uri | undefined> {
  const known = named ?? activeList();
  if (known) return known;
  const picked = await vscode.window.showQuickPick(lists(), {
    title: TITLE,
    placeHolder: "The list as it is now",
  });
  return picked?.uri;
}

async function picksFor(list: vscode.Uri): Promise<Pick[]> {
  const [states, files] = await Promise.all([committedStates(list), lists()]);
  const others = files.filter(({ uri }) => uri?.toString() !== list.toString());
  return [
    ...section("From git", states),
    ...section("Files", others),
    { label: "$(folder-opened) Another file…" },
  ];
}

function section(label: string, picks: readonly Pick[]): Pick[] {
  if (picks.length === 0) return [];
  return [{ label, kind: vscode.QuickPickItemKind.Separator }, ...picks];
}

async function lists(): Promise<Pick[]> {
  const paths = (await findLists()).map((uri) => ({
    label: vscode.workspace.asRelativePath(uri),
    uri,
  }));
  return paths.sort((a, b) => a.label.localeCompare(b.label));
}
