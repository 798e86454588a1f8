/**
 * Writes the files of a publication into one folder of the workspace: all of them or none, and one that
 * is not ours is left alone unless the user says otherwise.
 */

import * as vscode from "vscode";
import {
  MARK_WITHIN,
  type Replacing,
  refuseUnsafe,
  replaceAll,
  type SentOutput,
} from "../../../server/src/lsp/protocol.ts";

/** Names of files that are there and are not ours, or are those of another guide. */
export async function foreignFiles(
  folder: vscode.Uri,
  files: readonly SentOutput[],
): Promise<readonly string[]> {
  const foreign = await Promise.all(files.map((file) => isForeign(folder, file)));
  return files.filter((_, index) => foreign[index]).map(({ name }) => name);
}

async function isForeign(
  folder: vscode.Uri,
  { name, content, mark, titleMark = "" }: SentOutput,
): Promise<boolean> {
  const before = await readIfThere(vscode.Uri.joinPath(folder, name));
  if (!before) return false;
  if (mark === undefined) return !sameBytes(before, bytesOf(content));
  const beginning = new TextDecoder().decode(before.subarray(0, MARK_WITHIN));
  return !(beginning.includes(mark) && beginning.includes(titleMark));
}

async function readIfThere(uri: vscode.Uri): Promise<Uint8Array | undefined> {
  try {
    return await vscode.workspace.fs.readFile(uri);
  } catch (error) {
    if (isMissing(error)) return undefined;
    throw error;
  }
}

/**
 * Writes all the files or, when one cannot be written, none of them. Their folders are made where
 * needed. Before each it asks whether to go on; false when it is to stop, and nothing is written then.
 */
export async function writeFiles(
  folder: vscode.Uri,
  files: readonly SentOutput[],
  goOn: (file: SentOutput, index: number) => boolean,
): Promise<boolean> {
  refuseUnsafe(files);
  const drafts = vscode.Uri.joinPath(folder, `.kitquill-${Date.now()}`);
  const replacements = files.map(({ name }, index) => ({
    draft: vscode.Uri.joinPath(drafts, `${index}`),
    target: vscode.Uri.joinPath(folder, name),
    aside: vscode.Uri.joinPath(drafts, `${index}-before`),
  }));
  await vscode.workspace.fs.createDirectory(drafts);
  try {
    for (const [index, file] of files.entries()) {
      if (!goOn(file, index)) return false;
      await vscode.workspace.fs.writeFile(replacements[index]!.draft, bytesOf(file.content));
    }
    await replaceAll(replacements, EDITOR_FILES);
    return true;
  } finally {
    await vscode.workspace.fs.delete(drafts, { recursive: true });
  }
}

const EDITOR_FILES: Replacing<vscode.Uri> = {
  async keep(file, aside) {
    if (!(await isThere(file))) return false;
    await vscode.workspace.fs.copy(file, aside);
    return true;
  },
  replace: async (from, to) => vscode.workspace.fs.rename(from, to, { overwrite: true }),
  remove: async (file) => vscode.workspace.fs.delete(file),
};

async function isThere(file: vscode.Uri): Promise<boolean> {
  try {
    await vscode.workspace.fs.stat(file);
    return true;
  } catch (error) {
    if (isMissing(error)) return false;
    throw error;
  }
}

function isMissing(error: unknown): boolean {
  return error instanceof vscode.FileSystemError && error.code === "FileNotFound";
}

function bytesOf(content: SentOutput["content"]): Uint8Array {
  if ("text" in content) return new TextEncoder().encode(content.text);
  return Uint8Array.from(atob(content.base64), (sign) => sign.charCodeAt(0));
}

function sameBytes(a: Uint8Array, b: Uint8Array): boolean {
  return a.length === b.length && a.every((byte, index) => byte === b[index]);
}
