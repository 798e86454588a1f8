/** Which files are perhaps meant by a path that names none. */
import { URI, Utils } from "vscode-uri";
import { nearestWord } from "../text/nearest.ts";
import { FileError, type Files } from "./files.ts";
import { missingFile, relativePath } from "./paths.ts";

/** What a path in the front matter may name: the endings of such files, without the dot. */
export interface NamedKind {
  readonly endings: readonly string[];
  /** Whether the few files of this kind beside the guide are told where no name is near. */
  readonly isRare: boolean;
}

export const LISTS: NamedKind = {
  endings: ["csv", "tsv", "xlsx", "xlsm", "ods", "txt", "xml"],
  isRare: true,
};
export const PAGES: NamedKind = { endings: ["md", "markdown"], isRare: false };

/** More than these are no help in a message. */
const FEW = 3;

/** A path in a guide's front matter that leads to no file. */
export interface LostPath {
  readonly reference: string;
  /** Where it leads to. */
  readonly uri: string;
  readonly kind: NamedKind;
  /** URIs of the guide itself and of what its front matter names: none of them is meant once more. */
  readonly named: ReadonlySet<string>;
}

export interface Lost {
  readonly message: string;
  /** Paths from the guide's folder that may be meant, the likeliest first. */
  readonly meant: readonly string[];
}

/** What to tell of it. The files of its folder are looked at, and those of the guide's own. */
export async function lostFile(
  { reference, uri, kind, named }: LostPath,
  guideUri: string,
  files: Files,
): Promise<Lost> {
  const endings = new Set([...kind.endings, endingOf(reference)]);
  const pathsIn = async (folder: string) =>
    (await filesIn(folder, files))
      .filter((file) => endings.has(endingOf(file)) && !named.has(file))
      .flatMap((file) => relativePath(guideUri, file) ?? []);
  const own = await pathsIn(folderOf(guideUri));
  const there = folderOf(uri) === folderOf(guideUri) ? [] : await pathsIn(folderOf(uri));
  const known = [...there, ...own];
  const near = nearestWord(nameOf(reference), known.map(nameOf));
  const meant = known.find((path) => nameOf(path) === near);
  if (meant !== undefined) {
    return {
      message: `There is no file \`${reference}\`. Did you mean \`${meant}\`?`,
      meant: [meant],
    };
  }
  const beside = own.filter((path) => kind.isRare && kind.endings.includes(endingOf(path)));
  if (beside.length === 0 || beside.length > FEW) {
    return { message: missingFile(reference), meant: [] };
  }
  const names = beside.map((path) => `\`${path}\``).join(", ");
  return { message: `${missingFile(reference)} In that folder: ${names}.`, meant: beside };
}

/** URIs of the files in a folder; none where it cannot be read. */
async function filesIn(folder: string, files: Files): Promise<readonly string[]> {
  try {
    const entries = await files.list(folder);
    return entries.filter(({ kind }) => kind === "file").map(({ uri }) => uri);
  } catch (error) {
    if (error instanceof FileError) return [];
    throw error;
  }
}

export function folderOf(uri: string): string {
  return Utils.dirname(URI.parse(uri)).toString();
}

function nameOf(path: string): string {
  return path.slice(path.lastIndexOf("/") + 1);
}

function endingOf(path: string): string {
  return path.slice(path.lastIndexOf(".") + 1).toLowerCase();
}
