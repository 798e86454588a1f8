/** The words with which a step begins, for lists in which the author looks for it. */
import type { Step } from "../model/guide.ts";

/** Longer beginnings are cut at a word. */
const LONGEST = 60;

/** The first line of the step as written, without its list number; cut where it is long. */
export function openingWords({ piece, fact }: Step, longest = LONGEST): string {
  const from = piece.start + fact.span.start;
  const to = Math.min(piece.start + fact.span.end, from + 4 * longest);
  const [line = ""] = piece.page.text.slice(from, to).split(/[\r\n]/, 1);
  const text = line.replace(/^\s*(?:\d{1,9}[.)]|[-*+]|#{1,6}|\|)\s+/, "").trim();
  if (text.length <= longest) return text;
  const cut = text.lastIndexOf(" ", longest);
  return `${text.slice(0, cut > 0 ? cut : longest)} …`;
}
