/** What the front matter of a guide must say after files were moved or renamed. */
import { URI, Utils } from "vscode-uri";
import type { FrontMatter, Spanned } from "../syntax/frontMatter.ts";
import type { TextEdit } from "../text/span.ts";
import type { TextSource } from "../text/textSource.ts";
import { resolveReference, splitSheet } from "./paths.ts";

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
