/** File names as output shows them: relative to the folder the command runs in, parted by `/`. */
import { isAbsolute, relative, sep } from "node:path";
import { pathToFileURL } from "node:url";
import { URI } from "vscode-uri";

/** The path from `cwd`; files elsewhere get as many `../` as it takes. */
export function shownPath(uri: string, cwd: string): string {
  const path = relative(cwd, URI.parse(uri).fsPath);
  return path.split(sep).join("/");
}

/** A shown path as a URI reference: relative where it can be (RFC 3986 4.2). */
export function uriReference(shown: string): string {
  if (isAbsolute(shown)) return pathToFileURL(shown).href;
  return shown.split("/").map(encodeURIComponent).join("/");
}
