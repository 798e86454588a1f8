/**
 * Writes the files of a publication into one folder: a file there is either the old one or the new one,
 * a file that is not ours is left alone, and nothing is written anywhere else.
 */
import { randomUUID } from "node:crypto";
import { lstat, mkdir, open, readFile, rename, rm } from "node:fs/promises";
import { dirname, join } from "node:path";
import { type Content, stretchesOf } from "../publish/content.ts";
import type { PublishedFile } from "../publish/outputs/output.ts";

/** The mark stands within so many bytes. */
const MARK_WITHIN = 2000;

/** What the names of our files look like: no way up, no drive, no hidden file. */
const SAFE = /^(?:[a-z0-9][A-Za-z0-9-]*\/)?[A-Za-z0-9][A-Za-z0-9.-]*$/;

/** Why none of the files was written; empty when all may be. */
export async function obstacles(
  folder: string,
  files: readonly PublishedFile[],
): Promise<readonly string[]> {
  const told = await Promise.all(files.map((file) => obstacle(folder, file)));
  return told.filter((one) => one !== undefined);
}

async function obstacle(folder: string, { name, content, mark }: PublishedFile) {
  const stats = await lstat(join(folder, name)).catch(() => undefined);
  if (!stats) return undefined;
  if (!stats.isFile()) return `\`${name}\` is there and is no ordinary file.`;
  const before = await readFile(join(folder, name));
  const isOurs = mark ? before.subarray(0, MARK_WITHIN).includes(mark) : isThere(before, content);
  if (isOurs) return undefined;
  return `\`${name}\` is there and was not made by Kitquill, or was changed at its beginning.`;
}

/** Makes the folder where needed and writes the files into it. Links in it are not followed. */
export async function writeFiles(folder: string, files: readonly PublishedFile[]): Promise<void> {
  await mkdir(folder, { recursive: true });
  for (const { name, content } of files) {
    if (!SAFE.test(name) || name.includes("..")) throw new Error(`\`${name}\` is no name of ours`);
    const path = join(folder, name);
    await makeFolder(folder, dirname(name));
    await replace(path, content);
  }
}

async function makeFolder(folder: string, name: string): Promise<void> {
  if (name === ".") return;
  await mkdir(join(folder, name), { recursive: true });
  const stats = await lstat(join(folder, name));
  if (!stats.isDirectory()) throw new Error(`\`${name}\` is a link that leads elsewhere`);
}

async function replace(path: string, content: Content): Promise<void> {
  const temporary = join(dirname(path), `.kitquill-${randomUUID()}.tmp`);
  try {
    const file = await open(temporary, "wx", 0o666);
    try {
      for (const stretch of stretchesOf(content)) await file.writeFile(stretch);
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(temporary, path);
  } catch (error) {
    await rm(temporary, { force: true });
    throw error;
  }
}

/** Whether the file holds just the bytes of a picture. */
function isThere(before: Buffer, content: Content): boolean {
  return content instanceof Uint8Array && Buffer.compare(before, content) === 0;
}
