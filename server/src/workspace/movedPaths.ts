/** What a guide must say of lists, pages and pictures after files were moved or renamed. */
import { URI, Utils } from "vscode-uri";
import type { FrontMatter, Spanned } from "../syntax/frontMatter.ts";
import type { Span, TextEdit } from "../text/span.ts";
import type { TextSource } from "../text/textSource.ts";
import { resolveReference, splitSheet } from "./paths.ts";
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
      const target = resolveReference(uri, file, { folders: [], outsideAllowed: true });
      if (!("uri" in target)) return [];
      const path = relativePath(movedTo(uri), movedTo(target.uri));
      const isSame = path === undefined || path === relativePath(uri, target.uri);
      if (isSame) return [];
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
    const target = resolveReference(uri, pathOf(url), { folders: [], outsideAllowed: true });
    if (!("uri" in target)) continue;
    const path = relativePath(movedTo(uri), movedTo(target.uri));
    if (path === undefined || path === relativePath(uri, target.uri)) continue;
    const behind = /[?#].*$/s.exec(url)?.[0] ?? "";
    edits.push({ span, text: path.replace(SPECIAL, encoded) + behind });
  }
  return edits;
}

/** What would end an address in Markdown, or mean something else there. */
const SPECIAL = /[\s<>()"'`%?#\\[\]*&{}|]/g;

function encoded(sign: string): string {
  return `%${sign.charCodeAt(0).toString(16).toUpperCase().padStart(2, "0")}`;
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

/** A path as YAML wants it behind the sign that stands before it. */
export function writtenPath(path: string, sign: string): string {
  if (sign === "'") return path.replaceAll("'", "''");
  const escaped = path.replace(/["\\]/g, "\\$&");
  if (sign === '"') return escaped;
  return /^[\p{L}\p{N}._/][\p{L}\p{N}._/ ()+-]*$/u.test(path) ? path : `"${escaped}"`;
}
