/** Changes of a parts list as text, as a change note in Markdown, and as JSON. */

import type { HardwareChange } from "../../model/compare/compareHardware.ts";
import type { ComparedPart, ListChanges, QualityChange } from "../../model/compare/compareLists.ts";
import { printable } from "../terminal.ts";

interface Names {
  readonly before: string;
  readonly after: string;
}

export function formatChanges(
  changes: ListChanges,
  names: Names,
  format: "text" | "json" | "markdown",
): string {
  if (format === "json") return asJson(changes, names);
  const sections = sectionsOf(changes);
  const plain = format === "markdown" ? escapeMarkdown : printable;
  const title = `${plain(names.before)} → ${plain(names.after)}`;
  const head = format === "markdown" ? `# Changes of the parts list\n\n${title}\n` : `${title}\n`;
  const mark = format === "markdown" ? "- " : "  ";
  const body = sections.map(({ heading, entries }) => {
    const lines = entries.map((entry) => `${mark}${plain(entry)}\n`).join("");
    return format === "markdown" ? `\n## ${heading}\n\n${lines}` : `\n${heading}\n${lines}`;
  });
  return `${head}${body.length > 0 ? body.join("") : "\nNo part changed.\n"}${note(changes)}`;
}

interface Section {
  readonly heading: string;
  readonly entries: readonly string[];
}

function sectionsOf({ added, removed, changed, renumbered, hardware }: ListChanges): Section[] {
  const changes = changed.map(({ part, changes }) => ({ part, text: changesText(changes) }));
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

function changesText(changes: readonly QualityChange[]): string {
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

function escapeMarkdown(text: string): string {
  return printable(text).replace(/[\\`*_[\]<>#|~&]/g, "\\$&");
}

/** Field names and their order are a contract with those who read it. */
function asJson(changes: ListChanges, { before, after }: Names): string {
  const { added, removed, changed, renumbered, hardware, uncompared } = changes;
  const json = {
    before,
    after,
    added: added.map(partJson),
    removed: removed.map(partJson),
    changed: changed.map(({ part, changes }) => ({ ...partName(part), changes })),
    renumbered: renumbered.map(({ from, to }) => ({ from: partName(from), to: partName(to) })),
    hardware,
    uncompared,
  };
  return `${JSON.stringify(json, undefined, 2)}\n`;
}

function partName({ name, board }: ComparedPart) {
  return { designator: name, ...(board !== "" && { board }) };
}

function partJson(part: ComparedPart) {
  const told = Object.entries(part.qualities).map(([quality, { text }]) => [quality, text]);
  return { ...partName(part), ...Object.fromEntries(told) };
}
