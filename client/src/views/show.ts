/** The command by which a row of a view leads to its place. */

import * as vscode from "vscode";
import type { SentSpot } from "../../../server/src/lsp/protocol.ts";

export function show({ uri, range }: SentSpot): vscode.Command {
  const { line, character } = range.start;
  const start = new vscode.Position(line, character);
  const selection = new vscode.Range(start, start);
  return {
    command: "vscode.open",
    title: "Show",
    arguments: [vscode.Uri.parse(uri), { selection } satisfies vscode.TextDocumentShowOptions],
  };
}
