/** What the author sees on pointing at a part: its line, its height, and the steps that use it. */

import { lengthText, listNames } from "../checks/words.ts";
import type { GuideState } from "../model/guideState.ts";
import type { ListLine, PartsList } from "../model/list/partsList.ts";
import { shownValue } from "../model/list/shownValue.ts";
import type { Part, Supply } from "../model/parts.ts";
import type { UseNode } from "../model/pieceNode.ts";
import type { Role } from "../syntax/dialect.ts";
import type { Span } from "../text/span.ts";
import { escapeMarkdown } from "./escape.ts";
import { hoverOfFigure } from "./figure/figureHover.ts";
import { hoverOfNote } from "./noteHover.ts";
import { loads } from "./part/loads.ts";
import { markings } from "./part/markings.ts";
import { matchNotes } from "./part/matchHover.ts";
import { stands } from "./part/stands.ts";
import { hoverOfReference } from "./referenceHover.ts";
import { isPart, type Subject, subjectInGuide, subjectInList } from "./subject.ts";

/** Markdown for the editor, and the stretch of text it speaks of. */
export interface Hover {
  readonly span: Span;
  readonly markdown: string;
}

/** How many lines of the list one hover tells of. */
const MOST_LINES = 8;

const DONE: Readonly<Record<Role, string>> = {
  fit: "Fitted",
  later: "Put aside",
  place: "Placed, not soldered",
  insert: "Inserted",
  empty: "Left empty",
  bridge: "Bridged",
  make: "Made",
  match: "Matched",
  try: "Tried",
  remove: "Taken out",
  tool: "Used",
  own: "Used",
  see: "Named",
  label: "Named",
};

export function hoverInGuide(guide: GuideState, uri: string, offset: number): Hover | undefined {
  return (
    hoverOfFigure(guide, uri, offset) ??
    hoverOfParts(guide, uri, offset) ??
    hoverOfNote(guide, uri, offset) ??
    hoverOfReference(guide, uri, offset)
  );
}

/** Of parts that are picked for likeness the picking stands first: it is what the mark is about. */
function hoverOfParts(guide: GuideState, uri: string, offset: number): Hover | undefined {
  const found = describe(subjectInGuide(guide, uri, offset), guide);
  const picking = found && matchNotes(guide, uri, offset);
  if (!picking) return found;
  return { ...found, markdown: `${escapeMarkdown(picking)}\n\n${found.markdown}` };
}

export function hoverInList(guide: GuideState, list: PartsList, offset: number): Hover | undefined {
  return describe(subjectInList(guide, list, offset), guide);
}

function describe(subject: Subject | undefined, guide: GuideState): Hover | undefined {
  if (!subject || subject.supplies.length === 0) return undefined;
  return { span: subject.span, markdown: describeSupplies(subject.supplies, guide) };
}

/** What is known of parts and hardware, in Markdown, a block for each line of the list. */
export function describeSupplies(supplies: readonly Supply[], guide: GuideState): string {
  const groups = byLine(supplies);
  const shown = [...groups].slice(0, MOST_LINES);
  const blocks = shown.map(([line, supplies]) => describeLine(line, supplies, guide));
  const more = groups.size - shown.length;
  if (more > 0)
    blocks.push(`… and ${more} more ${more === 1 ? "line" : "lines"} of the parts list.`);
  return blocks.join("\n\n---\n\n");
}

function byLine(supplies: readonly Supply[]): ReadonlyMap<ListLine, Supply[]> {
  const groups = new Map<ListLine, Supply[]>();
  for (const supply of supplies) {
    const group = groups.get(supply.line);
    if (group) group.push(supply);
    else groups.set(supply.line, [supply]);
  }
  return groups;
}

function describeLine(line: ListLine, supplies: readonly Supply[], guide: GuideState): string {
  const parts = supplies.filter(isPart);
  const paragraphs = [heading(line, supplies, parts)];
  const details = [line.cells.package?.text, line.cells.description?.text, supplied(line, parts)];
  const known = details.filter((text) => text !== undefined && text !== "");
  if (known.length > 0) paragraphs.push(known.map((text) => escapeMarkdown(text!)).join(" · "));
  const first = parts[0];
  if (first) {
    const ratings = [stands(first), loads(first, guide), markings(first)].map(escapeMarkdown);
    paragraphs.push(...ratings, heightOf(first), standing(first));
  }
  paragraphs.push(whatSteps(supplies, guide));
  return paragraphs.filter((text) => text !== "").join("\n\n");
}

function heading(line: ListLine, supplies: readonly Supply[], parts: readonly Part[]): string {
  const name = parts.length > 0 ? listNames(parts) : supplies[0]!.name;
  const value = shownValue(line);
  const shown = value && value !== name ? ` ${escapeMarkdown(value)}` : "";
  const board = parts[0]?.board ? ` on board ${escapeMarkdown(parts[0].board)}` : "";
  return `**${escapeMarkdown(name)}**${shown}${board}`;
}

function supplied(line: ListLine, parts: readonly Part[]): string | undefined {
  if (parts.length > 0) return undefined;
  if (line.metres !== undefined) return `${lengthText(line.metres)} in the kit`;
  return line.quantity === undefined ? undefined : `${line.quantity} in the kit`;
}

function heightOf(part: Part): string {
  if (part.offBoard) return "Off the board: no place in the height order.";
  if (!part.height) return "Body height not known.";
  return `Body height ${part.height.mm} mm: ${escapeMarkdown(part.height.from)}.`;
}

function standing(part: Part): string {
  if (!part.fitted) return "Not to be fitted, says the parts list.";
  return part.optional ? "Optional." : "";
}

function whatSteps(supplies: readonly Supply[], guide: GuideState): string {
  const uses = supplies.flatMap((supply) => [...guide.uses(supply)]) as UseNode[];
  if (uses.length === 0) return "No step uses it yet.";
  const steps = new Map<Role, Set<string>>();
  for (const use of uses) {
    const numbers = steps.get(use.role) ?? new Set();
    numbers.add(use.step.number);
    steps.set(use.role, numbers);
  }
  const told = [...steps].map(([role, numbers]) => {
    const word = numbers.size === 1 ? "step" : "steps";
    return `${DONE[role]} in ${word} ${[...numbers].join(", ")}.`;
  });
  return told.join(" ");
}
