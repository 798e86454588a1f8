/** Which parts and how much hardware each stage puts in: each part in the stage that first places it. */
import type { Stage } from "../../model/guide.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { ListLine } from "../../model/list/partsList.ts";
import type { Hardware, Part } from "../../model/parts.ts";
import type { Role } from "../../syntax/dialect.ts";

/** Parts of one line of the list that a stage puts in. */
export interface PartRow {
  readonly line: ListLine;
  readonly parts: readonly Part[];
}

/** How much of a line without designators a stage takes. */
export interface HardwareRow {
  readonly hardware: Hardware;
  readonly count: number;
  readonly metres: number;
}

export interface StageParts {
  readonly parts: readonly PartRow[];
  readonly hardware: readonly HardwareRow[];
}

/** Roles that put a part where it belongs. */
const PUTTING: ReadonlySet<Role> = new Set<Role>(["fit", "place", "insert", "bridge"]);

const NOTHING: StageParts = { parts: [], hardware: [] };

export class PartsOfStages {
  readonly #byStage = new Map<Stage, StageParts>();

  constructor(guide: GuideState) {
    const homes = new Map<Stage, Part[]>();
    for (const part of guide.parts) {
      const first = guide.uses(part).find((use) => PUTTING.has(use.role));
      if (first) push(homes, first.step.stage, part);
    }
    const amounts = new Map<Stage, HardwareRow[]>();
    for (const hardware of guide.hardware) {
      for (const row of amountsOf(hardware, guide)) push(amounts, row.stage, row);
    }
    for (const stage of new Set([...homes.keys(), ...amounts.keys()])) {
      const parts = rowsOf(homes.get(stage) ?? []);
      this.#byStage.set(stage, { parts, hardware: amounts.get(stage) ?? [] });
    }
  }

  of(stage: Stage): StageParts {
    return this.#byStage.get(stage) ?? NOTHING;
  }
}

/** In the order in which the list has them. */
function rowsOf(parts: readonly Part[]): PartRow[] {
  const rows = new Map<ListLine, Part[]>();
  for (const part of parts) push(rows, part.line, part);
  return [...rows].map(([line, parts]) => ({ line, parts }));
}

function amountsOf(hardware: Hardware, guide: GuideState): (HardwareRow & { stage: Stage })[] {
  const rows = new Map<Stage, { count: number; metres: number }>();
  for (const { role, step, count, metres } of guide.uses(hardware)) {
    if (!PUTTING.has(role)) continue;
    const row = rows.get(step.stage) ?? { count: 0, metres: 0 };
    row.count += count ?? 0;
    row.metres += metres ?? 0;
    rows.set(step.stage, row);
  }
  return [...rows].map(([stage, row]) => ({ stage, hardware, ...row }));
}

function push<Key, Value>(map: Map<Key, Value[]>, key: Key, value: Value): void {
  const values = map.get(key);
  if (values) values.push(value);
  else map.set(key, [value]);
}
