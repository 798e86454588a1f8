/** Headings with nothing below them. */
import type { HeadingFact } from "../syntax/facts.ts";
import type { GuidePiece } from "./guide.ts";

/** The last heading of a piece if the piece ends with it. */
export function closingHeading({
  facts,
  page,
  start,
  length,
}: GuidePiece): HeadingFact | undefined {
  const heading = facts.facts.findLast((fact) => fact.kind === "heading");
  if (heading?.kind !== "heading") return undefined;
  const rest = page.text.slice(start + heading.span.end, start + length);
  return rest.trim() === "" ? heading : undefined;
}

/** The first heading of a piece if nothing stands before it. */
export function openingHeading({ facts, page, start }: GuidePiece): HeadingFact | undefined {
  const heading = facts.facts.find((fact) => fact.kind === "heading");
  if (heading?.kind !== "heading") return undefined;
  const before = page.text.slice(start, start + heading.span.start);
  return before.trim() === "" ? heading : undefined;
}
