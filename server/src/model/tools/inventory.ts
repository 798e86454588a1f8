/** The tools and consumables of a guide, each once, with what lists it and the steps that need it. */
import { isConsumable, type Thing } from "../../trade/tools/tool.ts";
import type { Guide } from "../guide.ts";
import { type Naming, thingsIn } from "./namedThings.ts";
import { suppliedThings } from "./suppliedThings.ts";

export interface InventoryEntry {
  /** `own`: something that the kit does not contain, beside tools and known consumables. */
  readonly kind: "tool" | "consumable" | "own";
  readonly name: string;
  /** What lists it: the front matter, a mark, or nothing. */
  readonly listed: "tools" | "mark" | null;
  readonly things: readonly Thing[];
  /** Numbers of the steps that need it, in order. */
  readonly steps: ReadonlySet<string>;
  /** Those of them that a mark tells of; the words of a step name only some of what it takes. */
  readonly marked: ReadonlySet<string>;
}

interface Gathered extends InventoryEntry {
  readonly steps: Set<string>;
  readonly marked: Set<string>;
}

const ORDER: readonly InventoryEntry["kind"][] = ["tool", "consumable", "own"];

/** Tools first; within a kind in the order in which the guide first lists or names them. */
export function inventory(guide: Guide): readonly InventoryEntry[] {
  const entries: Gathered[] = listedEntries(guide);
  const all = guide.things.all();
  // Words count for what a mark lists, even for one that stands behind them.
  const places = new Map(all.filter(isMark).map((naming) => [naming, entryOf(naming, entries)]));
  for (const naming of all) {
    const entry = places.get(naming) ?? wordEntry(naming, entries, guide);
    if (!entry || !naming.step) continue;
    entry.steps.add(naming.step.number);
    if (isMark(naming)) entry.marked.add(naming.step.number);
  }
  return entries.sort((a, b) => ORDER.indexOf(a.kind) - ORDER.indexOf(b.kind));
}

/** The steps that a reader is told of: of what is listed for the whole guide, those with a mark. */
export function stepsToTell({ listed, steps, marked }: InventoryEntry): readonly string[] {
  return [...(listed === "tools" ? marked : steps)];
}

function listedEntries({ frontMatter, language }: Guide): Gathered[] {
  return frontMatter.tools.map(({ value }): Gathered => {
    const things = language ? thingsIn(value, language) : [];
    const kind = things[0] && isConsumable(things[0]) ? "consumable" : "tool";
    return { kind, name: value, listed: "tools", things, steps: new Set(), marked: new Set() };
  });
}

function isMark({ by }: Naming): boolean {
  return by !== "words";
}

/** Words count for what is listed of the same kind; what the kit brings along is no want. */
function wordEntry(naming: Naming, entries: Gathered[], guide: Guide): Gathered | undefined {
  const thing = naming.things[0]!;
  const same = entries.find((entry) => entry.things.includes(thing));
  if (same) return same;
  const { lists, language } = guide;
  const isSupplied = language && lists.some((list) => suppliedThings(list, language).has(thing));
  return isSupplied ? undefined : newEntry(naming, entries);
}

/** Marks count for themselves. */
function entryOf(naming: Naming, entries: Gathered[]): Gathered {
  const name = naming.text.toLowerCase();
  return entries.find((entry) => entry.name.toLowerCase() === name) ?? newEntry(naming, entries);
}

function newEntry(naming: Naming, entries: Gathered[]): Gathered {
  const entry: Gathered = {
    kind: kindOf(naming),
    name: naming.text,
    listed: naming.by === "words" ? null : "mark",
    things: naming.things,
    steps: new Set(),
    marked: new Set(),
  };
  entries.push(entry);
  return entry;
}

function kindOf({ by, things }: Naming): InventoryEntry["kind"] {
  const [thing] = things;
  if (thing && isConsumable(thing)) return "consumable";
  return by === "own" ? "own" : "tool";
}
