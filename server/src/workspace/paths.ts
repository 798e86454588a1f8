/** From the path that a guide names to the file that is meant, kept inside the workspace. */
import { URI, Utils } from "vscode-uri";

export interface Reach {
  /** Folders whose files may be read, as URIs. None: the folder of the guide. */
  readonly folders: readonly string[];
  /** Whether files outside those folders may be read as well. */
  readonly outsideAllowed: boolean;
}

export type Resolved =
  | { readonly uri: string }
  | {
      readonly problem: string;
      /** What to write instead, when that is plain. */
      readonly suggestion?: string;
    };

/** A scheme has two letters at least, so that `C:` stays a drive. */
const SCHEME = /^[A-Za-z][A-Za-z0-9+.-]+:/;
const DRIVE = /^[A-Za-z]:/;

/**
 * The file that `reference`, written in the page at `baseUri`, names. It is a path as on disk:
 * percent signs and spaces mean themselves; `/` parts folders; relative to the page's folder.
 */
export function resolveReference(baseUri: string, reference: string, reach: Reach): Resolved {
  const problem = refuse(reference);
  if (problem) return problem;
  const base = URI.parse(baseUri);
  const folder = Utils.dirname(base);
  const path = DRIVE.test(reference) ? `/${reference}` : reference;
  const uri = Utils.resolvePath(folder, path);
  const folders = reach.folders.length > 0 ? reach.folders : [folder.toString()];
  if (!reach.outsideAllowed && !folders.some((each) => isInside(uri.toString(), each))) {
    return { problem: outside(reference) };
  }
  return { uri: uri.toString() };
}

/** `kit.xlsx#Main board`: the file of a workbook and the sheet that is meant. */
export function splitSheet(reference: string): { path: string; sheet?: string } {
  const [, path, sheet] = /^(.*?\.(?:xlsx|xlsm|ods))#(.*)$/is.exec(reference) ?? [];
  return path !== undefined && sheet?.trim() ? { path, sheet: sheet.trim() } : { path: reference };
}

/** The URI of the list in a sheet of a workbook. */
export function sheetUri(uri: string, sheet: string | undefined): string {
  return sheet === undefined ? uri : `${uri}#${encodeURIComponent(sheet)}`;
}

function refuse(reference: string): Exclude<Resolved, { uri: string }> | undefined {
  if (reference.trim() === "" || /\/\.{0,2}$|^\.{1,2}$/.test(reference)) {
    return { problem: `\`${reference}\` names no file. Write the path of a file.` };
  }
  // Half a surrogate pair has no place in a URI either.
  if (/[\u0000-\u001f\u007f]|\p{Cs}/u.test(reference)) {
    return { problem: "The path holds a control character. Type it anew." };
  }
  if (SCHEME.test(reference)) {
    return {
      problem: `\`${reference}\` is an address. Nothing is fetched from the net: put the file beside the guide and write its path.`,
    };
  }
  if (reference.includes("\\")) {
    const suggestion = reference.replaceAll("\\", "/");
    return {
      problem: `\`${reference}\` has backslashes, which separate folders on one system only. Write \`${suggestion}\`: that works on all.`,
      suggestion,
    };
  }
  return undefined;
}

function outside(reference: string): string {
  return `\`${reference}\` lies outside the folder that is open, so it is not read. Move the file inside, open the folder above, or allow files outside in the settings.`;
}

/** The path of a file as a guide writes it; undefined where there is none from here to there. */
export function relativePath(from: string, to: string): string | undefined {
  const [base, target] = [URI.parse(from), URI.parse(to)];
  if (base.scheme !== target.scheme || base.authority !== target.authority) return undefined;
  const above = Utils.dirname(base).path.split("/").filter(Boolean);
  const path = target.path.split("/").filter(Boolean);
  let shared = 0;
  while (shared < above.length && shared < path.length - 1 && above[shared] === path[shared]) {
    shared++;
  }
  return [...above.slice(shared).map(() => ".."), ...path.slice(shared)].join("/");
}

/** The name of the file, as a reader knows it. */
export function fileName(uri: string): string {
  return decodeURIComponent(uri.slice(uri.lastIndexOf("/") + 1));
}

/** Whether the file at `uri` lies in the folder or anywhere below it. Both paths are normal. */
export function isInside(uri: string, folderUri: string): boolean {
  const file = URI.parse(uri);
  const folder = URI.parse(folderUri);
  if (file.scheme !== folder.scheme || file.authority !== folder.authority) return false;
  const below = comparable(folder.path).replace(/\/*$/, "/");
  return comparable(file.path).startsWith(below);
}

/** Drive letters come in either case. */
function comparable(path: string): string {
  return path.replace(/^\/[A-Z]:/, (drive) => drive.toLowerCase());
}

/** The URI as every part of Kitquill spells it, whatever the editor sent. */
export function canonicalUri(uri: string): string {
  return URI.parse(uri).toString();
}

/** What to tell about a reference that names no file on disk. */
export function missingFile(reference: string): string {
  const decoded = reference.replace(/%20/g, " ");
  const hint = decoded === reference ? "" : ` A space is written as a space: \`${decoded}\`.`;
  return `There is no file \`${reference}\`. The path counts from the guide's folder.${hint}`;
}
