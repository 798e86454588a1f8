/** The command that begins a guide from a parts list, beside that list. */

import * as vscode from "vscode";
import {
  kitName,
  NAMELESS,
  namesOnPath,
  START_GUIDE,
  type StartGuideParams,
  type StartGuideResult,
  tellingWords,
} from "../../server/src/lsp/protocol.ts";
import { activeList, ENDINGS, listPicks, pickList } from "./partsLists.ts";
import type { Ask } from "./start.ts";
import { tellError } from "./tell.ts";

const TITLE = "Start a Guide from This Parts List";

/** `named` is the file that the author clicked; else the one in the editor, else the author is asked. */
export async function startGuide(ask: Ask, named: vscode.Uri | undefined): Promise<void> {
  const list = named ?? activeList() ?? (await chooseList());
  if (!list) return;
  const guide = await freeName(list);
  const title = await vscode.window.showInputBox({
    title: TITLE,
    prompt: "Name of the kit, as the guide's title gives it",
    value: titleOf(list),
  });
  if (title === undefined) return;
  const language = vscode.env.language.slice(0, 2);
  const params: StartGuideParams = {
    list: list.toString(),
    guide: guide.toString(),
    title: title.trim() || titleOf(list),
    language,
  };
  const result = await ask<StartGuideResult>(START_GUIDE, params);
  if (!result) return;
  if ("problem" in result) {
    tellError(result.problem);
    return;
  }
  const edit = new vscode.WorkspaceEdit();
  edit.createFile(guide, { contents: new TextEncoder().encode(result.text) });
  if (await vscode.workspace.applyEdit(edit)) await vscode.window.showTextDocument(guide);
  else {
    const name = vscode.workspace.asRelativePath(guide);
    tellError(`${name} cannot be written, so no guide was started.`);
  }
}

async function chooseList(): Promise<vscode.Uri | undefined> {
  const folder = vscode.workspace.workspaceFolders?.[0]?.uri;
  const picked = await pickList(
    await listPicks(),
    { title: TITLE, placeHolder: "The parts list of the kit" },
    {
      title: "Parts List of the Kit",
      openLabel: "Start Guide",
      filters: { "Parts lists": [...ENDINGS, "md"], "All files": ["*"] },
      ...(folder && { defaultUri: folder }),
    },
  );
  return picked?.uri;
}

/** `heron-parts.csv` lists the parts of Heron, and so does `heron/bom.csv`. */
function titleOf(list: vscode.Uri): string {
  return kitName(namesOnPath(list.path)) ?? NAMELESS;
}

/** `heron.md` is the guide of `heron-parts.csv`. */
function stemOf(list: vscode.Uri): string {
  const [name] = namesOnPath(list.path);
  return tellingWords(name ?? "").join("-") || "guide";
}

/** A Markdown file beside the list that does not exist yet. */
async function freeName(list: vscode.Uri): Promise<vscode.Uri> {
  const folder = vscode.Uri.joinPath(list, "..");
  for (let number = 1; ; number++) {
    const name = number === 1 ? `${stemOf(list)}.md` : `${stemOf(list)}-${number}.md`;
    const uri = vscode.Uri.joinPath(folder, name);
    if (!(await exists(uri))) return uri;
  }
}

async function exists(uri: vscode.Uri): Promise<boolean> {
  try {
    await vscode.workspace.fs.stat(uri);
    return true;
  } catch {
    // Whatever keeps the file from being seen, it is in nobody's way.
    return false;
  }
}
