/**
 * What the server refuses to rename stays as it is. Told of a refusal, the editor asks its other
 * extensions, and the one for Markdown takes the mark `[R1 = 4k7]` for the name of a link and writes
 * the new name over it.
 */
import * as vscode from "vscode";
import type { Middleware } from "vscode-languageclient";
import { tellError } from "./tell.ts";

/** The library's answer for a place where the server knows nothing to rename: others may. */
const NOTHING_HERE = "The element can't be renamed.";

export function refuseForAll(): Pick<Middleware, "prepareRename" | "provideRenameEdits"> {
  return {
    // The reason is told when a new name is given.
    prepareRename: async (document, position, token, next) => {
      try {
        return await next(document, position, token);
      } catch (error) {
        if (token.isCancellationRequested || reasonOf(error) === NOTHING_HERE) throw error;
        const range = document.getWordRangeAtPosition(position);
        return range ?? new vscode.Range(position, position);
      }
    },
    provideRenameEdits: async (document, position, name, token, next) => {
      try {
        return (await next(document, position, name, token)) ?? new vscode.WorkspaceEdit();
      } catch (error) {
        if (error instanceof vscode.CancellationError) throw error;
        tellError(reasonOf(error));
        return new vscode.WorkspaceEdit();
      }
    },
  };
}

function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
