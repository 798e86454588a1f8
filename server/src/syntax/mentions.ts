/** Words of the prose that have the form of a designator; the parts list decides what they are. */
import type { MentionFact } from "./facts.ts";

const MENTION =
  /(?<![\p{L}\p{N}_$&#/.-])\p{Lu}[\p{L}_]{0,15}\d{1,5}[A-Za-z]?(?![\p{L}\p{N}_]|[.-]\d)/gu;

/** Mentions in a stretch of source text; `offset` is added to their spans. */
export function readMentions(source: string, offset: number): MentionFact[] {
  const found: MentionFact[] = [];
  for (const match of source.matchAll(MENTION)) {
    const start = offset + match.index;
    found.push({ kind: "mention", name: match[0], span: { start, end: start + match[0].length } });
  }
  return found;
}
