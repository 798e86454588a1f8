/** Cuts a stretch of a paragraph into its source lines, as micromark's tokens tell where they are. */
import type { Event, Point, Token, TokenizeContext } from "micromark-util-types";
import { MappedText, type SourceLine, shownText } from "./mappedText.ts";

/** A line of a bracket or of braces. */
export interface TokenLine {
  readonly start: Point;
  readonly end: Point;
}

/** The lines of a bracket, from their tokens. */
export interface Stretch {
  readonly lines: readonly TokenLine[];
  /** The line breaks between them, with the white space that opens the next line. */
  readonly breaks: readonly (readonly Event[])[];
}

/** The stretch between two points; `inner` are the events between them. */
export function stretchBetween(start: Point, end: Point, inner: readonly Event[]): Stretch {
  const lines: TokenLine[] = [];
  const breaks: Event[][] = [];
  let open = start;
  for (let i = 0; i < inner.length; i++) {
    if (inner[i]![1].type !== "lineEnding") continue;
    lines.push({ start: open, end: inner[i]![1].start });
    const gap = [inner[i]!, inner[++i]!];
    if (inner[i + 1]?.[1].type === "linePrefix") gap.push(inner[++i]!, inner[++i]!);
    breaks.push(gap);
    const last = gap.at(-1)![1];
    // Only what follows knows where the line begins behind the prefixes of quotes and lists.
    open = last.type === "linePrefix" ? last.end : (inner[i + 1]?.[1].start ?? end);
  }
  lines.push({ start: open, end });
  return { lines, breaks };
}

/** The text of a stretch, decoded and mapped, and as a plain renderer shows it. */
export function readStretch(
  context: TokenizeContext,
  { lines, breaks }: Stretch,
): { text: MappedText; shown: string } {
  const source = lines.map(({ start, end }, index): SourceLine => {
    const raw = start.offset < end.offset ? context.sliceSerialize({ start, end }) : "";
    const ending = breaks[index]?.[0]?.[1];
    return { raw, offset: start.offset, ending: ending ? context.sliceSerialize(ending) : "" };
  });
  return { text: MappedText.decode(source), shown: shownText(source) };
}

/** The events of a node that shows as plain text, keeping the line breaks that micromark needs. */
export function literalEvents(
  node: Token,
  { lines, breaks }: Stretch,
  context: TokenizeContext,
): Event[] {
  const events: Event[] = [["enter", node, context]];
  lines.forEach(({ start, end }, index) => {
    const text: Token = { type: "dialectText", start: { ...start }, end: { ...end } };
    if (start.offset < end.offset) events.push(["enter", text, context], ["exit", text, context]);
    events.push(...(breaks[index] ?? []));
  });
  events.push(["exit", node, context]);
  return events;
}
