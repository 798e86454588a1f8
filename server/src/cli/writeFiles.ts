/**
 * Writes the files of a publication into one folder: all of them or none, each either the old one or the
 * new one whatever happens meanwhile, and nothing anywhere else.
 */
import { randomUUID } from "node:crypto";
import { copyFile, link, lstat, mkdir, open, rename, rm, rmdir } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { stretchesOf } from "../publish/content.ts";
import type { PublishedFile } from "../publish/outputs/output.ts";
import { type Replacing, refuseUnsafe, replaceAll } from "../publish/replacing.ts";
import { UsageError } from "./arguments.ts";

/** So many pictures are written at a time: most of it is waiting for the disk. */
const AT_A_TIME = 8;

/** Signs of text. */
const WRITTEN_AT_ONCE = 1_000_000;

/** Makes the folder where needed. Links in it are not followed. Rejects with the error of the system. */
export async function writeFiles(folder: string, files: readonly PublishedFile[]): Promise<void> {
  refuseUnsafe(files);
  const made = await mkdir(folder, { recursive: true });
  const drafts = join(folder, `.kitquill-${randomUUID()}`);
  try {
    await mkdir(drafts);
    const draft = (index: number) => join(drafts, String(index));
    await writeDrafts(files, draft);
    for (const name of new Set(files.map(({ name }) => dirname(name)))) {
      await makeFolder(join(folder, name));
    }
    const replacements = files.map(({ name }, index) => ({
      draft: draft(index),
      target: join(folder, name),
      aside: `${draft(index)}-before`,
    }));
    await replaceAll(replacements, DISK_FILES);
  } catch (error) {
    await rm(drafts, { recursive: true, force: true });
    if (made !== undefined) await removeEmpty(folder, made);
    throw error;
  }
  await rm(drafts, { recursive: true });
}

const DISK_FILES: Replacing<string> = { keep, replace: rename, remove: rm };

/** Keeps the file as it is, a link as a link; false where there is none. */
async function keep(file: string, aside: string): Promise<boolean> {
  if (!(await lstat(file).catch(() => undefined))) return false;
  // Some file systems know no second name of a file.
  await link(file, aside).catch(() => copyFile(file, aside));
  return true;
}

/** Pictures, which are there already, go to the disk while the pages are made. */
async function writeDrafts(
  files: readonly PublishedFile[],
  draft: (index: number) => string,
): Promise<void> {
  const numbered = files.map((file, index) => ({ file, path: draft(index) }));
  const there = numbered.filter(({ file }) => file.mark === undefined);
  const made = numbered.filter(({ file }) => file.mark !== undefined);
  // Both are waited for, also when one fails: nothing is written to a folder that is being removed.
  const ended = await Promise.allSettled([
    writeInTurn(there, AT_A_TIME),
    // One by one, so that not all are held at once.
    writeInTurn(made, 1),
  ]);
  for (const one of ended) if (one.status === "rejected") throw one.reason;
}

async function writeInTurn(
  drafts: readonly { readonly file: PublishedFile; readonly path: string }[],
  atATime: number,
): Promise<void> {
  for (let from = 0; from < drafts.length; from += atATime) {
    const some = drafts.slice(from, from + atATime);
    await Promise.all(some.map(({ file, path }) => writeDraft(path, file)));
  }
}

/** While a stretch is written the next one is made. */
async function writeDraft(path: string, { content }: PublishedFile): Promise<void> {
  const file = await open(path, "wx", 0o666);
  let written = Promise.resolve();
  try {
    for (const stretch of joined(stretchesOf(content()))) {
      await written;
      written = file.writeFile(stretch);
    }
    await written;
    await file.sync();
  } finally {
    await Promise.allSettled([written]);
    await file.close();
  }
}

/** Short stretches together: a long file has many, and each write is waited for. */
function* joined(stretches: Iterable<string | Uint8Array>): Iterable<string | Uint8Array> {
  let text = "";
  for (const stretch of stretches) {
    if (typeof stretch === "string") text += stretch;
    else {
      yield text;
      text = "";
      yield stretch;
    }
    if (text.length < WRITTEN_AT_ONCE) continue;
    yield text;
    text = "";
  }
  yield text;
}

async function makeFolder(path: string): Promise<void> {
  await mkdir(path, { recursive: true });
  if ((await lstat(path)).isDirectory()) return;
  throw new UsageError(
    `nothing was published: \`${basename(path)}\` is a link that leads elsewhere.`,
  );
}

/** Removes folders that we have made, from the inmost up to `made`, as far as nothing is in them. */
async function removeEmpty(folder: string, made: string): Promise<void> {
  try {
    for (let path = folder; path.length >= made.length; path = dirname(path)) await rmdir(path);
  } catch {
    // Somebody else has put something there: it is theirs.
  }
}
