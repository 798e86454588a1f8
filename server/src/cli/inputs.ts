/** From the files and folders that the user names to the guides that are meant. */
import { existsSync } from "node:fs";
import { stat } from "node:fs/promises";
import { dirname, join, resolve } from "node:path";
import { URI } from "vscode-uri";
import { DiskFiles } from "../workspace/disk.ts";
import { FileError } from "../workspace/files.ts";
import { findGuides, holdsGuide } from "../workspace/guides.ts";
import { isInside } from "../workspace/paths.ts";
import { asArgument } from "./asArgument.ts";
import { noFile } from "./noFile.ts";
import { shownPath } from "./shownPath.ts";

/** A guide to check. */
export interface Input {
  readonly uri: string;
  /** The folder whose files it may draw on. */
  readonly folder: string;
}

export interface Inputs {
  readonly guides: readonly Input[];
  /** What is named and cannot be used, one message each. */
  readonly problems: readonly string[];
}

/** The disk as a check of the guide may read it. */
export function diskFor({ folder }: Input, listsOutside: boolean): DiskFiles {
  return new DiskFiles(listsOutside ? [] : [folder]);
}

/** The guides named by `names`, each once. `onFound` hears of each as it is found. */
export async function findInputs(
  names: readonly string[],
  cwd: string,
  onFound: (count: number) => void,
): Promise<Inputs> {
  const guides = new Map<string, Input>();
  const problems: string[] = [];
  for (const name of names) {
    for await (const { uri, problem } of guidesAt(resolve(cwd, name), name, cwd)) {
      if (problem !== undefined) problems.push(problem);
      else if (!guides.has(uri)) guides.set(uri, { uri, folder: reachOf(uri, cwd) });
      onFound(guides.size);
    }
  }
  return { guides: [...guides.values()], problems };
}

type Found = { readonly uri: string; readonly problem?: string };

async function* guidesAt(path: string, name: string, cwd: string): AsyncGenerator<Found> {
  const uri = URI.file(path).toString();
  const stats = await stat(path).catch(() => undefined);
  if (!stats) {
    yield { uri, problem: await noFile(name, cwd, "file or folder") };
  } else if (stats.isDirectory()) {
    yield* guidesBelow(uri, name, cwd);
  } else {
    const problem = await noGuide({ uri, folder: reachOf(uri, cwd) }, name);
    yield problem === undefined ? { uri } : { uri, problem };
  }
}

async function* guidesBelow(uri: string, name: string, cwd: string): AsyncGenerator<Found> {
  let empty = true;
  for await (const found of findGuides(new DiskFiles(), uri)) {
    empty = false;
    if (found.problem === undefined) yield found;
    else yield { ...found, problem: `${shownPath(found.uri, cwd)}: ${found.problem}` };
  }
  if (empty) {
    const problem = `There is no guide in \`${name}\`: no Markdown file there has the key \`parts\` in its front matter. \`kitquill start LIST\` begins one from a parts list.`;
    yield { uri, problem };
  }
}

/** Why the file is not taken for a guide, or undefined when it is one. */
export async function noGuide(input: Input, name: string): Promise<string | undefined> {
  try {
    const bytes = await new DiskFiles([input.folder]).read(input.uri);
    if (bytes && holdsGuide(bytes)) return undefined;
  } catch (error) {
    if (error instanceof FileError) return error.message;
    throw error;
  }
  if (/\.(?:md|markdown)$/i.test(name)) {
    return `\`${name}\` is no guide: its front matter has no key \`parts\`. Of a guide with several pages, name the first. \`kitquill adopt ${asArgument(name)} --parts LIST\` makes a guide of plain Markdown.`;
  }
  return `\`${name}\` is no guide. A parts list is checked with the guide that names it; \`kitquill list parts ${asArgument(name)}\` shows how it is read.`;
}

/**
 * The folder whose files a guide or list may draw on: the repository it is in, else the folder the
 * command runs in where that is above it, else its own.
 */
export function reachOf(uri: string, cwd: string): string {
  const own = dirname(URI.parse(uri).fsPath);
  const repository = repositoryOf(own);
  if (repository) return URI.file(repository).toString();
  const here = URI.file(cwd).toString();
  return isInside(uri, here) ? here : URI.file(own).toString();
}

function repositoryOf(folder: string): string | undefined {
  if (existsSync(join(folder, ".git"))) return folder;
  const above = dirname(folder);
  return above === folder ? undefined : repositoryOf(above);
}
