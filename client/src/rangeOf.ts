/** The editor's range of one that the server sends. */
import * as vscode from "vscode";
import type { SentMark } from "../../server/src/lsp/protocol.ts";

export function rangeOf({ start, end }: SentMark["range"]): vscode.Range {
  return new vscode.Range(start.line, start.character, end.line, end.character);
}
