/** Changes of a parts list as text, as a change note in Markdown, and as JSON. */

import { builderLook, inBuilderWords } from "../../features/revision/builderWords.ts";
import type { HardwareChange } from "../../model/compare/compareHardware.ts";
import type { ComparedPart, ListChanges, QualityChange } from "../../model/compare/compareLists.ts";
import { printable } from "../terminal.ts";

export interface Names {
  readonly before: string;
  readonly after: string;
}

/** How parts and their changes are told. */
export interface Telling {
  nameOf(part: ComparedPart): string;
  lookOf(part: ComparedPart): string;
  changeOf(change: QualityChange): QualityChange;
}

/** To the author, by the names of the list. */
const EXACTLY: Telling = {
  nameOf: ({ name, board }) => (board === "" ? name : `${board}/${name}`),
  lookOf: ({ qualities: { value, package: housing } }) =>
    [value?.text, housing?.text].filter((text) => text !== undefined).join(", "),
  changeOf: (change) => change,
};

/** To a builder, by what he sees. */
export const TO_BUILDERS: Telling = {
  ...EXACTLY,
  lookOf: builderLook,
  changeOf: inBuilderWords,
};

export function formatChanges(
  changes: ListChanges,
  names: Names,
  format: "text" | "json" | "markdown",
): string {
  if (format === "json") return `${JSON.stringify(changesJson(changes, names), undefined, 2)}\n`;
  const isMarkdown = format === "markdown";
  const title = titleOf(names, isMarkdown);
  const head = isMarkdown ? `# Changes of the parts list\n\n${title}` : title;
  return `${head}${changesText(changes, isMarkdown, isMarkdown ? TO_BUILDERS : EXACTLY)}`;
}

export function titleOf({ before, after }: Names, isMarkdown: boolean): string {
  if (!isMarkdown) return `${printable(before)} → ${printable(after)}\n`;
  // Where the files lie concerns no one else.
  const [was, is] = [before, after].map((name) => escapeMarkdown(name.replace(/^[^(]*[\\/]/, "")));
  return `Parts list: ${was} → ${is}\n`;
}

/** All that changed in the list, each kind of change below its heading. */
export function changesText(
  changes: ListChanges,
  isMarkdown: boolean,
  telling: Telling = EXACTLY,
): string {
  const body = sectionsOf(changes, telling).map((section) => sectionText(section, isMarkdown));
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

function sectionsOf(
  { added, removed, changed, renumbered, hardware }: ListChanges,
  telling: Telling,
): Section[] {
  const { nameOf, lookOf } = telling;
  const looks = (parts: readonly ComparedPart[]) =>
    grouped(parts.map((part) => [nameOf(part), lookOf(part)]));
  const changes = changed.map(
    ({ part, changes }) => [nameOf(part), qualitiesText(changes, telling)] as const,
  );
  const pairs = renumbered.map(({ from, to }) => `${nameOf(from)} → ${nameOf(to)} (${lookOf(to)})`);
  return [
    { heading: "Removed", entries: looks(removed) },
    { heading: "Added", entries: looks(added) },
    { heading: "Changed", entries: grouped(changes) },
    { heading: "Perhaps renumbered (a guess: the same kind of part)", entries: pairs },
    { heading: "Hardware", entries: hardware.map(hardwareText) },
  ].filter(({ entries }) => entries.length > 0);
}

/** Parts of which the same is to be told, in one entry. */
function grouped(all: readonly (readonly [name: string, text: string])[]): string[] {
  const groups = new Map<string, string[]>();
  for (const [name, text] of all) {
    const names = groups.get(text);
    if (names) names.push(name);
    else groups.set(text, [name]);
  }
  return [...groups].map(([text, names]) =>
    text === "" ? names.join(", ") : `${names.join(", ")}: ${text}`,
  );
}

function qualitiesText(changes: readonly QualityChange[], { changeOf }: Telling): string {
  return changes
    .map(changeOf)
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
