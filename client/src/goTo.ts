/** The command by which a line of the server leads to a place; it is in no menu. */

import * as vscode from "vscode";
import type { Location } from "vscode-languageclient";
import { rangeOf } from "./rangeOf.ts";

export const GO_TO = "kitquill.goTo";

export function registerGoTo(): vscode.Disposable {
  return vscode.commands.registerCommand(GO_TO, goTo);
}

async function goTo({ uri, range }: Location): Promise<void> {
  await vscode.window.showTextDocument(vscode.Uri.parse(uri, true), { selection: rangeOf(range) });
}
