/** How a quote opens: as a hazard note, as an alert, or as neither. */
import type { Paragraph, PhrasingContent } from "mdast";
import { plainText, startOf } from "../../syntax/nodes.ts";
import { readAlert, readSignal, type Signal } from "../../syntax/signalWords.ts";

export interface Opening {
  /** Undefined for an alert that warns of nothing. */
  readonly signal: Signal | undefined;
  readonly word: string | undefined;
  readonly hazard: string;
  readonly rest: PhrasingContent[];
}

/** What the first paragraph of a quote opens with, and what follows that; undefined where it is a quote as others. */
export function readOpening(paragraph: Paragraph, source: string): Opening | undefined {
  const [first, ...others] = paragraph.children;
  if (!first) return undefined;
  const head = source.slice(startOf(paragraph), startOf(paragraph) + 20);
  const alert = /^\[!(?:NOTE|TIP|IMPORTANT|WARNING|CAUTION)\]/i.exec(head);
  if (alert) {
    const rest = withoutStart(paragraph.children, alert[0]);
    return { signal: readAlert(head), word: undefined, hazard: "", rest };
  }
  const read = first.type === "strong" ? readSignal(plainText(first)) : undefined;
  if (!read) return undefined;
  return { ...read, rest: withoutStart(others, "") };
}

/** The nodes behind a text that the first of them begins with, and behind white space. */
function withoutStart(nodes: readonly PhrasingContent[], start: string): PhrasingContent[] {
  const [first, ...others] = nodes;
  if (!first) return [];
  if (start !== "" && plainText(first) === start) return withoutStart(others, "");
  if (first.type === "break") return withoutStart(others, "");
  if (first.type !== "text") return [...nodes];
  const value = first.value.slice(start.length).trimStart();
  return value === "" ? others : [{ ...first, value }, ...others];
}
