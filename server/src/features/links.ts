/** Links on a page: to pictures, parts lists and further pages, and from `see` to its label. */
import { placeOf } from "../checks/verdict.ts";
import type { GuideState } from "../model/guideState.ts";
import type { PictureFact } from "../syntax/facts.ts";
import { type Span, shift } from "../text/span.ts";
import type { TextSource } from "../text/textSource.ts";
import type { Target } from "./definition.ts";

export type Link = { readonly span: Span } & (
  | { readonly to: "place"; readonly target: Target }
  /** A file as the front matter names it, relative to the page. */
  | { readonly to: "file"; readonly path: string }
  /** The address of a picture, as a reader's program follows it. */
  | { readonly to: "picture"; readonly url: string }
);

/** Links of a page in no order; the spans count in it. */
export function* linksOf(guide: GuideState, uri: string): Iterable<Link> {
  if (guide.pages[0]!.uri === uri) {
    const { parts, pages } = guide.frontMatter;
    const paths = [...parts.map(({ path }) => path), ...pages];
    for (const { value, span } of paths) yield { to: "file", path: value, span };
  }
  for (const piece of guide.pieces) {
    if (piece.page.uri !== uri) continue;
    for (const { name, span } of piece.references) {
      const [label] = guide.labels(name);
      if (label) yield { to: "place", target: placeOf(label), span: shift(span, piece.start) };
    }
    for (const fact of piece.facts.facts) {
      if (fact.kind !== "picture" || !("url" in fact.target)) continue;
      const span = addressOf(piece.page.text, fact, piece.start);
      if (span) yield { to: "picture", url: fact.target.url, span };
    }
  }
}

/** Where the address of `![text](address "title")` stands. */
function addressOf(text: TextSource, { span }: PictureFact, start: number): Span | undefined {
  const source = text.slice(start + span.start, start + span.end);
  const match = /\]\(\s*(?:<([^<>\r\n]+)>|([^<>()\s"']+))[^[\]]*\)$/.exec(source);
  const address = match?.[1] ?? match?.[2];
  if (!match || address === undefined) return undefined;
  const from = start + span.start + match.index + match[0].indexOf(address);
  return { start: from, end: from + address.length };
}
