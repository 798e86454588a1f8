/**
 * Serves files of the workspace to the server, which has no file system in a browser and none
 * for virtual folders.
 */

import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import {
  FIND_FILES,
  type FindFilesParams,
  type FindFilesResult,
  LIST_FOLDER,
  type ListFolderParams,
  type ListFolderResult,
  READ_FILE,
  type ReadFileParams,
  type ReadFileResult,
  STAT,
  type StatParams,
  type StatResult,
} from "../../server/src/lsp/protocol.ts";
import { toBase64 } from "./base64.ts";

/** Installed packages hold Markdown by the thousand and no guides. */
const NO_GUIDES_HERE = "**/node_modules/**";

/** Answers the server's file requests for as long as the client lives. */
export function serveFiles(client: BaseLanguageClient): void {
  client.onRequest<ReadFileResult, void>(READ_FILE, readFile);
  client.onRequest<StatResult, void>(STAT, stat);
  client.onRequest<ListFolderResult, void>(LIST_FOLDER, listFolder);
  client.onRequest<FindFilesResult, void>(FIND_FILES, findFiles);
}

async function readFile({ uri, maxBytes }: ReadFileParams): Promise<ReadFileResult> {
  const file = vscode.Uri.parse(uri);
  try {
    const { size } = await vscode.workspace.fs.stat(file);
    if (size > maxBytes) return { kind: "too-large", size };
    const bytes = await vscode.workspace.fs.readFile(file);
    // Some providers do not know a size before they have read the file.
    if (bytes.length > maxBytes) return { kind: "too-large", size: bytes.length };
    return { kind: "bytes", base64: toBase64(bytes) };
  } catch (error) {
    return failure(error);
  }
}

async function stat({ uri }: StatParams): Promise<StatResult> {
  try {
    const { type, size, mtime } = await vscode.workspace.fs.stat(vscode.Uri.parse(uri));
    const kind = type & vscode.FileType.Directory ? "folder" : "file";
    return { kind, size, mtime };
  } catch (error) {
    return failure(error);
  }
}

/** Links are left out, as the server leaves them out on disk. */
async function listFolder({ uri }: ListFolderParams): Promise<ListFolderResult> {
  try {
    const found = await vscode.workspace.fs.readDirectory(vscode.Uri.parse(uri));
    const kinds = {
      [vscode.FileType.File]: "file",
      [vscode.FileType.Directory]: "folder",
    } as const;
    const entries = found.flatMap(([name, type]) => {
      const kind = type in kinds ? kinds[type as keyof typeof kinds] : undefined;
      return kind ? [{ name, kind }] : [];
    });
    return { kind: "entries", entries };
  } catch (error) {
    return failure(error);
  }
}

async function findFiles({ glob, limit }: FindFilesParams): Promise<FindFilesResult> {
  const found = await vscode.workspace.findFiles(glob, NO_GUIDES_HERE, limit);
  return { uris: found.map((uri) => uri.toString()) };
}

function failure(error: unknown) {
  const code = error instanceof vscode.FileSystemError ? error.code : "";
  if (code === "FileNotFound" || code === "FileNotADirectory") return { kind: "missing" } as const;
  const message = error instanceof Error ? error.message : String(error);
  return { kind: "unreadable", message } as const;
}
