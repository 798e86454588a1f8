/**
 * Writes the files of a publication into one folder of the workspace: a file there is either the old
 * one or the new one, and one that is not ours is left alone unless the user says otherwise.
 */

import * as vscode from "vscode";
import type { SentOutput } from "../../../server/src/lsp/protocol.ts";

/** The mark stands within so many bytes. */
const MARK_WITHIN = 2000;

/** What the names of our files look like: no way up, no drive, no hidden file. */
const SAFE = /^(?:[a-z0-9][A-Za-z0-9-]*\/)?[A-Za-z0-9][A-Za-z0-9.-]*$/;

/** Names of files that are there and are not ours. */
export async function foreignFiles(
  folder: vscode.Uri,
  files: readonly SentOutput[],
): Promise<readonly string[]> {
  const foreign = await Promise.all(files.map((file) => isForeign(folder, file)));
  return files.filter((_, index) => foreign[index]).map(({ name }) => name);
}

async function isForeign(
  folder: vscode.Uri,
  { name, content, mark }: SentOutput,
): Promise<boolean> {
  const before = await readIfThere(vscode.Uri.joinPath(folder, name));
  if (!before) return false;
  if (mark === undefined) return !sameBytes(before, bytesOf(content));
  return !new TextDecoder().decode(before.subarray(0, MARK_WITHIN)).includes(mark);
}

async function readIfThere(uri: vscode.Uri): Promise<Uint8Array | undefined> {
  try {
    return await vscode.workspace.fs.readFile(uri);
  } catch (error) {
    if (error instanceof vscode.FileSystemError && error.code === "FileNotFound") return undefined;
    throw error;
  }
}

/** Writes one file. Its folder is made where needed. */
export async function writeFile(folder: vscode.Uri, { name, content }: SentOutput): Promise<void> {
  if (!SAFE.test(name) || name.includes("..")) throw new Error(`"${name}" is no name of ours`);
  const target = vscode.Uri.joinPath(folder, name);
  const temporary = vscode.Uri.joinPath(target, `../.kitquill-${Date.now()}.tmp`);
  await vscode.workspace.fs.writeFile(temporary, bytesOf(content));
  try {
    await vscode.workspace.fs.rename(temporary, target, { overwrite: true });
  } catch (error) {
    await vscode.workspace.fs.delete(temporary);
    throw error;
  }
}

function bytesOf(content: SentOutput["content"]): Uint8Array {
  if ("text" in content) return new TextEncoder().encode(content.text);
  return Uint8Array.from(atob(content.base64), (sign) => sign.charCodeAt(0));
}

function sameBytes(a: Uint8Array, b: Uint8Array): boolean {
  return a.length === b.length && a.every((byte, index) => byte === b[index]);
}
