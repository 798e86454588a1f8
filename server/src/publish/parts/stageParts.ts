/** Which parts and how much hardware a stage puts in: each part in the stage that first places it. */
import type { GuideState } from "../../model/guideState.ts";
import type { ListLine } from "../../model/list/partsList.ts";
import type { Hardware, Part } from "../../model/parts.ts";
import type { StageNode } from "../../model/stageNode.ts";
import type { Role } from "../../syntax/dialect.ts";
import { partKind } from "./partKind.ts";

/** Parts of one kind that a stage puts in: of one line of the list, or of several that are equal. */
export interface PartRow {
  /** The first of their lines. */
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

/** In the order in which the lists have them. */
export function partsOfStage(stage: StageNode, guide: GuideState): StageParts {
  const parts = new Set<Part>();
  const amounts = new Map<Hardware, { count: number; metres: number }>();
  for (const { supply, role, count, metres } of stage.uses()) {
    if (!PUTTING.has(role)) continue;
    if (supply.kind === "part") {
      if (homeOf(supply, guide) === stage) parts.add(supply);
    } else {
      const amount = amounts.get(supply) ?? { count: 0, metres: 0 };
      amount.count += count ?? 0;
      amount.metres += metres ?? 0;
      amounts.set(supply, amount);
    }
  }
  const hardware = [...amounts].map(([hardware, amount]) => ({ hardware, ...amount }));
  return {
    parts: rowsOf([...parts].sort((a, b) => a.id - b.id)),
    hardware: hardware.sort((a, b) => a.hardware.id - b.hardware.id),
  };
}

/** The stage that first puts the part in. */
function homeOf(part: Part, guide: GuideState): unknown {
  return guide.uses(part).find(({ role }) => PUTTING.has(role))?.step.stage;
}

function rowsOf(parts: readonly Part[]): PartRow[] {
  const kinds = new Map<ListLine, string>();
  const rows = new Map<string, Part[]>();
  for (const part of parts) {
    const kind = kinds.get(part.line) ?? `${part.board} ${partKind(part.line)}`;
    kinds.set(part.line, kind);
    const row = rows.get(kind);
    if (row) row.push(part);
    else rows.set(kind, [part]);
  }
  return [...rows.values()].map((parts) => ({ line: parts[0]!.line, parts }));
}
