/**
 * Commas that YAML takes for separators although the author meant them otherwise:
 * the decimal comma of `{ VBAT: 4,5 V }` and the comma inside `torque(Q1, Q2)`.
 */

import type { Span } from "../../text/span.ts";
import type { FrontMatterProblem } from "../frontMatter.ts";
import type { YamlEntry, YamlNode, YamlText } from "./tree.ts";
import { quoteYaml } from "./tree.ts";

type Report = (problem: FrontMatterProblem) => void;

/** The entries of a mapping in braces, those that a comma has cut apart put together again. */
export function joinEntries(
  entries: readonly YamlEntry[],
  source: string,
  report: Report,
): YamlEntry[] {
  const out: YamlEntry[] = [];
  let i = 0;
  while (i < entries.length) {
    let entry = entries[i++]!;
    let joined: Cut | undefined;
    while (i < entries.length) {
      const cut = cutBetween(entry, entries[i]!, source);
      if (!cut) break;
      joined ??= cut;
      entry = join(entry, entries[i++]!, cut, source);
    }
    if (joined) reportJoin(entry, joined, report);
    out.push(entry);
  }
  return out;
}

/** The items of a list in brackets, decimal numbers that a comma has cut apart put together again. */
export function joinDecimals(
  items: readonly YamlNode[],
  source: string,
  report: Report,
): YamlNode[] {
  const out: YamlNode[] = [];
  let i = 0;
  while (i < items.length) {
    const first = items[i++]!;
    let item = first;
    while (i < items.length && isDecimalCut(item, items[i]!, source)) {
      item = textAt({ start: item.span.start, end: items[i++]!.span.end }, source);
    }
    if (item !== first) reportDecimal(item, report);
    out.push(item);
  }
  return out;
}

function textAt(span: Span, source: string): YamlText {
  return { kind: "text", text: source.slice(span.start, span.end), span, plain: true };
}

type Cut = "decimal" | "name" | "value";

function cutBetween(a: YamlEntry, b: YamlEntry, source: string): Cut | undefined {
  if (!a.plain || !b.plain) return undefined;
  if (a.value.kind === "nothing") return isOpen(a.name) ? "name" : undefined;
  if (a.value.kind !== "text" || !a.value.plain || b.value.kind !== "nothing") return undefined;
  const between = source.slice(a.value.span.end, b.nameSpan.start);
  if (between === "," && /\d$/.test(a.value.text) && /^\d/.test(b.name)) return "decimal";
  return isOpen(a.value.text) ? "value" : undefined;
}

/** Whether a parenthesis is opened and not closed. */
function isOpen(text: string): boolean {
  let depth = 0;
  for (const char of text) {
    if (char === "(") depth++;
    else if (char === ")") depth--;
  }
  return depth > 0;
}

function join(a: YamlEntry, b: YamlEntry, cut: Cut, source: string): YamlEntry {
  if (cut === "name") {
    const nameSpan = { start: a.nameSpan.start, end: b.nameSpan.end };
    return { ...b, name: source.slice(nameSpan.start, nameSpan.end), nameSpan };
  }
  return { ...a, value: textAt({ start: a.value.span.start, end: b.nameSpan.end }, source) };
}

function reportJoin(entry: YamlEntry, cut: Cut, report: Report): void {
  if (cut === "decimal") {
    reportDecimal(entry.value, report);
    return;
  }
  const text = cut === "name" ? entry.name : entry.value.kind === "text" ? entry.value.text : "";
  const span = cut === "name" ? entry.nameSpan : entry.value.span;
  report({
    span,
    message: `YAML separates entries at a comma, so it cuts \`${text}\` in two. Put it in quotes.`,
    suggestion: { title: `Put ${text} in quotes`, span, text: quoteYaml(text), safe: true },
  });
}

function isDecimalCut(a: YamlNode, b: YamlNode, source: string): boolean {
  return (
    a.kind === "text" &&
    b.kind === "text" &&
    a.plain &&
    b.plain &&
    source.slice(a.span.end, b.span.start) === "," &&
    /\d$/.test(a.text) &&
    /^\d/.test(b.text)
  );
}

function reportDecimal(node: YamlNode, report: Report): void {
  if (node.kind !== "text") return;
  const point = node.text.replace(/(\d),(?=\d)/g, "$1.");
  report({
    span: node.span,
    message: `YAML takes the comma in \`${node.text}\` for the end of the entry. Put the value in quotes, or write \`${point}\`.`,
    suggestion: {
      title: `Put ${node.text} in quotes`,
      span: node.span,
      text: quoteYaml(node.text),
      safe: true,
    },
  });
}
