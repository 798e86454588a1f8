/** What a guide must say of lists, pages and pictures after files were moved or renamed. */
import type { FrontMatter, Spanned } from "../syntax/frontMatter.ts";
import type { Span, TextEdit } from "../text/span.ts";
import type { TextSource } from "../text/textSource.ts";
import { relativePath, resolveReference, splitSheet } from "./paths.ts";
import { pathOf } from "./pictures.ts";

/** Edits of `text`, the guide at `uri`. `movedTo` gives where a file is now, be it where it was. */
export function pathEdits(
  uri: string,
  text: TextSource,
  { parts, pages }: FrontMatter,
  movedTo: (uri: string) => string,
): readonly TextEdit[] {
  return [...parts.map(({ path }) => path), ...pages].flatMap(
    ({ value, span }: Spanned<string>) => {
      const { path: file, sheet } = splitSheet(value);
      const path = movedPath(uri, file, movedTo);
      if (path === undefined) return [];
      const whole = sheet === undefined ? path : `${path}#${sheet}`;
      return [{ span, text: writtenPath(whole, text.slice(span.start - 1, span.start)) }];
    },
  );
}

/** Edits of the page at `uri`, whose pictures have these addresses at these places. */
export function pictureEdits(
  uri: string,
  pictures: Iterable<{ readonly url: string; readonly span: Span }>,
  movedTo: (uri: string) => string,
): readonly TextEdit[] {
  const edits: TextEdit[] = [];
  for (const { url, span } of pictures) {
    const path = movedPath(uri, pathOf(url), movedTo);
    if (path === undefined) continue;
    const behind = /[?#].*$/s.exec(url)?.[0] ?? "";
    edits.push({ span, text: path.replace(SPECIAL, encoded) + behind });
  }
  return edits;
}

/** The path by which the page at `uri` then reaches what `path` names now; undefined where it is the same. */
function movedPath(
  uri: string,
  path: string,
  movedTo: (uri: string) => string,
): string | undefined {
  const target = resolveReference(uri, path, { folders: [], outsideAllowed: true });
  if (!("uri" in target)) return undefined;
  const moved = relativePath(movedTo(uri), movedTo(target.uri));
  return moved === relativePath(uri, target.uri) ? undefined : moved;
}

/** What would end an address in Markdown, or mean something else there. */
const SPECIAL = /[\s<>()"'`%?#\\[\]*&{}|]/g;

function encoded(sign: string): string {
  return `%${sign.charCodeAt(0).toString(16).toUpperCase().padStart(2, "0")}`;
}

/** A path as YAML wants it behind the sign that stands before it. */
export function writtenPath(path: string, sign: string): string {
  if (sign === "'") return path.replaceAll("'", "''");
  const escaped = path.replace(/["\\]/g, "\\$&");
  if (sign === '"') return escaped;
  return /^[\p{L}\p{N}._/][\p{L}\p{N}._/ ()+-]*$/u.test(path) ? path : `"${escaped}"`;
}
