/** Asks which list the one at hand is compared with: a committed state of it, or another file. */

import * as vscode from "vscode";
import { activeList, type ListPick, listPicks, pickList } from "../partsLists.ts";
import { committedStates } from "./git.ts";

const TITLE = "Compare with Another Parts List";

export interface Chosen {
  readonly uri: vscode.Uri;
  /** What the author knows it by. */
  readonly label: string;
}

export async function chooseOld(list: vscode.Uri): Promise<Chosen | undefined> {
  const name = vscode.workspace.asRelativePath(list);
  const picked = await pickList(
    await picksFor(list),
    {
      title: TITLE,
      placeHolder: `The list as it was before ${name}`,
      matchOnDescription: true,
    },
    {
      title: "Old Parts List",
      openLabel: "Compare",
      defaultUri: vscode.Uri.joinPath(list, ".."),
    },
  );
  if (!picked?.uri) return undefined;
  return { uri: picked.uri, label: picked.label.replace(/^\$\([\w-]+\) /, "") };
}

/** The list of the command's call, the one in the editor, or one that the author is asked for. */
export async function chooseList(named: vscode.Uri | undefined): Promise<vscode.Uri | undefined> {
  const known = named ?? activeList();
  if (known) return known;
  const picked = await pickList(
    await listPicks(),
    { title: TITLE, placeHolder: "The list as it is now" },
    { title: "New Parts List", openLabel: "Choose" },
  );
  return picked?.uri;
}

async function picksFor(list: vscode.Uri): Promise<ListPick[]> {
  const [states, files] = await Promise.all([committedStates(list), listPicks()]);
  const others = files.filter(({ uri }) => uri?.toString() !== list.toString());
  return [...section("From git", states), ...section("Files", others)];
}

function section(label: string, picks: readonly ListPick[]): ListPick[] {
  if (picks.length === 0) return [];
  return [{ label, kind: vscode.QuickPickItemKind.Separator }, ...picks];
}
