/** The tools and consumables of a guide, each once, with what lists it and the steps that need it. */
import { isConsumable, type Thing } from "../../trade/tools/tool.ts";
import type { Guide } from "../guide.ts";
import { type Naming, thingsIn } from "./namedThings.ts";

export interface InventoryEntry {
  /** `own`: something that the kit does not contain, beside tools and known consumables. */
  readonly kind: "tool" | "consumable" | "own";
  readonly name: string;
  /** What lists it: the front matter, a mark, or nothing. */
  readonly listed: "tools" | "mark" | null;
  readonly things: readonly Thing[];
  /** Numbers of the steps that need it, in order. */
  readonly steps: ReadonlySet<string>;
}

interface Gathered extends InventoryEntry {
  readonly steps: Set<string>;
}

const ORDER: readonly InventoryEntry["kind"][] = ["tool", "consumable", "own"];

/** Tools first; within a kind in the order in which the guide first lists or names them. */
export function inventory(guide: Guide): readonly InventoryEntry[] {
  const entries: Gathered[] = listedEntries(guide);
  const all = guide.things.all();
  // Words count for what a mark lists, even for one that stands behind them.
  const places = new Map(all.filter(isMark).map((naming) => [naming, entryOf(naming, entries)]));
  for (const naming of all) {
    const entry = places.get(naming) ?? entryOf(naming, entries);
    if (naming.step) entry.steps.add(naming.step.number);
  }
  return entries.sort((a, b) => ORDER.indexOf(a.kind) - ORDER.indexOf(b.kind));
}

function listedEntries({ frontMatter, language }: Guide): Gathered[] {
  return frontMatter.tools.map(({ value }): Gathered => {
    const things = language ? thingsIn(value, language) : [];
    const kind = things[0] && isConsumable(things[0]) ? "consumable" : "tool";
    return { kind, name: value, listed: "tools", things, steps: new Set() };
  });
}

function isMark({ by }: Naming): boolean {
  return by !== "words";
}

/** Words count for what is listed of the same kind; marks for themselves. */
function entryOf(naming: Naming, entries: Gathered[]): Gathered {
  const [thing] = naming.things;
  const same = entries.find((entry) =>
    naming.by === "words"
      ? entry.things.includes(thing!)
      : entry.name.toLowerCase() === naming.text.toLowerCase(),
  );
  if (same) return same;
  const entry: Gathered = {
    kind: kindOf(naming),
    name: naming.text,
    listed: naming.by === "words" ? null : "mark",
    things: naming.things,
    steps: new Set(),
  };
  entries.push(entry);
  return entry;
}

function kindOf({ by, things }: Naming): InventoryEntry["kind"] {
  const [thing] = things;
  if (thing && isConsumable(thing)) return "consumable";
  return by === "own" ? "own" : "tool";
}
