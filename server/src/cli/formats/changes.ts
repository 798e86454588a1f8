/** Changes of a parts list as text, as a change note in Markdown, and as JSON. */

import type { HardwareChange } from "../../model/compare/compareHardware.ts";
import type { ComparedPart, ListChanges, QualityChange } from "../../model/compare/compareLists.ts";
import { printable } from "../terminal.ts";

export interface Names {
  readonly before: string;
  readonly after: string;
}

export function formatChanges(
  changes: ListChanges,
  names: Names,
  format: "text" | "json" | "markdown",
): string {
  if (format === "json") return `${JSON.stringify(changesJson(changes, names), undefined, 2)}\n`;
  const isMarkdown = format === "markdown";
  const title = titleOf(names, isMarkdown);
  const head = isMarkdown ? `# Changes of the parts list\n\n${title}` : title;
  return `${head}${changesText(changes, isMarkdown)}`;
}

export function titleOf({ before, after }: Names, isMarkdown: boolean): string {
  const plain = isMarkdown ? escapeMarkdown : printable;
  return `${plain(before)} → ${plain(after)}\n`;
}

/** All that changed in the list, each kind of change below its heading. */
export function changesText(changes: ListChanges, isMarkdown: boolean): string {
  const body = sectionsOf(changes).map((section) => sectionText(section, isMarkdown));
  return `${body.length > 0 ? body.join("") : "\nNo part changed.\n"}${note(changes)}`;
}

/** A heading and its entries, a line each. */
export function sectionText({ heading, entries }: Section, isMarkdown: boolean): string {
  if (!isMarkdown) return `\n${heading}\n${entries.map((one) => `  ${printable(one)}\n`).join("")}`;
  return `\n## ${heading}\n\n${entries.map((one) => `- ${escapeMarkdown(one)}\n`).join("")}`;
}

export interface Section {
  readonly heading: string;
  readonly entries: readonly string[];
}

function sectionsOf({ added, removed, changed, renumbered, hardware }: ListChanges): Section[] {
  const changes = changed.map(({ part, changes }) => ({ part, text: qualitiesText(changes) }));
  const pairs = renumbered.map(({ from, to }) => `${nameOf(from)} → ${nameOf(to)} (${look(to)})`);
  return [
    { heading: "Removed", entries: grouped(removed.map((part) => ({ part, text: look(part) }))) },
    { heading: "Added", entries: grouped(added.map((part) => ({ part, text: look(part) }))) },
    { heading: "Changed", entries: grouped(changes) },
    { heading: "Perhaps renumbered (a guess: the same kind of part)", entries: pairs },
    { heading: "Hardware", entries: hardware.map(hardwareText) },
  ].filter(({ entries }) => entries.length > 0);
}

/** Parts of which the same is to be told, in one entry. */
function grouped(all: readonly { part: ComparedPart; text: string }[]): string[] {
  const groups = new Map<string, string[]>();
  for (const { part, text } of all) {
    const names = groups.get(text);
    if (names) names.push(nameOf(part));
    else groups.set(text, [nameOf(part)]);
  }
  return [...groups].map(([text, names]) =>
    text === "" ? names.join(", ") : `${names.join(", ")}: ${text}`,
  );
}

function nameOf({ name, board }: ComparedPart): string {
  return board === "" ? name : `${board}/${name}`;
}

function look({ qualities }: ComparedPart): string {
  const { value, package: housing } = qualities;
  return [value?.text, housing?.text].filter((text) => text !== undefined).join(", ");
}

function qualitiesText(changes: readonly QualityChange[]): string {
  return changes
    .map(({ quality, before, after }) => `${quality} ${before ?? "(none)"} → ${after ?? "(none)"}`)
    .join("; ");
}

function hardwareText({ name, before, after }: HardwareChange): string {
  if (before === undefined) return `${name}: new, ${after}`;
  return after === undefined ? `${name}: gone, was ${before}` : `${name}: ${before} → ${after}`;
}

function note({ uncompared }: ListChanges): string {
  if (uncompared.length === 0) return "";
  const verb = uncompared.length === 1 ? "is" : "are";
  return `\nOnly one of the lists tells of ${uncompared.join(", ")}, which ${verb} therefore not compared.\n`;
}

export function escapeMarkdown(text: string): string {
  return printable(text).replace(/[\\`*_[\]<>#|~&]/g, "\\$&");
}

/** Field names and their order are a contract with those who read it. */
export function changesJson(changes: ListChanges, { before, after }: Names) {
  const { added, removed, changed, renumbered, hardware, uncompared } = changes;
  return {
    before,
    after,
    added: added.map(partJson),
    removed: removed.map(partJson),
    changed: changed.map(({ part, changes }) => ({ ...partName(part), changes })),
    renumbered: renumbered.map(({ from, to }) => ({ from: partName(from), to: partName(to) })),
    hardware,
    uncompared,
  };
}

function partName({ name, board }: ComparedPart) {
  return { designator: name, ...(board !== "" && { board }) };
}

function partJson(part: ComparedPart) {
  const told = Object.entries(part.qualities).map(([quality, { text }]) => [quality, text]);
  return { ...partName(part), ...Object.fromEntries(told) };
}
