/** `kitquill list tools`: the tools and consumables of a guide, and the steps that need them. */
import type { GuideState } from "../model/guideState.ts";
import { type Naming, thingsIn } from "../model/tools/namedThings.ts";
import { isConsumable, type Thing } from "../trade/tools/tool.ts";
import { type Column, formatTable, type TableFormat } from "./table.ts";
import type { Terminal } from "./terminal.ts";

type Row = Readonly<{
  /** `own`: something that the kit does not contain, beside tools and known consumables. */
  kind: "tool" | "consumable" | "own";
  name: string;
  /** What lists it: the front matter, a mark, or nothing. */
  listed: "tools" | "mark" | null;
  steps: readonly string[];
}>;

const COLUMNS: readonly Column<Row>[] = [
  { field: "kind", title: "Kind" },
  { field: "name", title: "Name" },
  { field: "listed", title: "Listed in" },
  { field: "steps", title: "Steps" },
];

const ORDER: readonly Row["kind"][] = ["tool", "consumable", "own"];

/** A row being gathered. */
interface Entry {
  readonly kind: Row["kind"];
  readonly name: string;
  readonly listed: Row["listed"];
  readonly things: readonly Thing[];
  readonly steps: Set<string>;
}

/** One row a tool or consumable, in the order in which the guide first lists or names it. */
export function toolsOfGuide(guide: GuideState, format: TableFormat, { paint }: Terminal): string {
  const entries: Entry[] = listedEntries(guide);
  const all = guide.things.all();
  // Words count for what a mark lists, even for one that stands behind them.
  const places = new Map(all.filter(isMark).map((naming) => [naming, entryOf(naming, entries)]));
  for (const naming of all) {
    const entry = places.get(naming) ?? entryOf(naming, entries);
    if (naming.step) entry.steps.add(naming.step.number);
  }
  const rows = entries.map(
    ({ kind, name, listed, steps }): Row => ({ kind, name, listed, steps: [...steps] }),
  );
  rows.sort((a, b) => ORDER.indexOf(a.kind) - ORDER.indexOf(b.kind));
  return formatTable(rows, COLUMNS, format, paint);
}

function listedEntries({ frontMatter, language }: GuideState): Entry[] {
  return frontMatter.tools.map(({ value }): Entry => {
    const things = language ? thingsIn(value, language) : [];
    const kind = things[0] && isConsumable(things[0]) ? "consumable" : "tool";
    return { kind, name: value, listed: "tools", things, steps: new Set() };
  });
}

function isMark({ by }: Naming): boolean {
  return by !== "words";
}

/** Words count for what is listed of the same kind; marks for themselves. */
function entryOf(naming: Naming, entries: Entry[]): Entry {
  const [thing] = naming.things;
  const same = entries.find((entry) =>
    naming.by === "words"
      ? entry.things.includes(thing!)
      : entry.name.toLowerCase() === naming.text.toLowerCase(),
  );
  if (same) return same;
  const entry: Entry = {
    kind: kindOf(naming),
    name: naming.text,
    listed: naming.by === "words" ? null : "mark",
    things: naming.things,
    steps: new Set(),
  };
  entries.push(entry);
  return entry;
}

function kindOf({ by, things }: Naming): Row["kind"] {
  const [thing] = things;
  if (thing && isConsumable(thing)) return "consumable";
  return by === "own" ? "own" : "tool";
}
