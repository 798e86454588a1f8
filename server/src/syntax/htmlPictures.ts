/** Pictures in HTML, `<img src="a.jpg" alt="…" width="300">`, which authors write to set a width. */
import type { PictureFact } from "./facts.ts";

/** A tag ends at the next `<` at the latest, so that no text is gone over twice. */
const SIGNS = /<!--|-->|<img\b[^<>]*>/gi;
const ATTRIBUTE = /\s(src|alt)\s*=\s*(?:"([^"]*)"|'([^']*)'|([^\s"'=<>]+))/gi;

/** The pictures in a stretch of HTML, those in comments left out; `offset` is added to their spans. */
export function readHtmlPictures(html: string, offset: number): PictureFact[] {
  const found: PictureFact[] = [];
  let isComment = false;
  for (const { 0: sign, index } of html.matchAll(SIGNS)) {
    if (sign === "<!--" || sign === "-->") isComment = sign === "<!--";
    else if (!isComment) found.push(...pictureIn(sign, offset + index));
  }
  return found;
}

function pictureIn(tag: string, start: number): PictureFact[] {
  const values = new Map<string, string>();
  for (const [, name, ...value] of tag.matchAll(ATTRIBUTE)) {
    values.set(name!.toLowerCase(), value.find((one) => one !== undefined) ?? "");
  }
  const url = values.get("src")?.replaceAll("&amp;", "&");
  if (!url) return [];
  const span = { start, end: start + tag.length };
  return [{ kind: "picture", span, alt: values.get("alt") ?? "", target: { url } }];
}
