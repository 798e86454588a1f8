/** `kitquill list tools`: the tools and consumables of a guide, and the steps that need them. */
import type { GuideState } from "../model/guideState.ts";
import { type InventoryEntry, inventory } from "../model/tools/inventory.ts";
import { type Column, formatTable, type TableFormat } from "./table.ts";
import type { Terminal } from "./terminal.ts";

type Row = Readonly<
  Pick<InventoryEntry, "kind" | "name" | "listed"> & { steps: readonly string[] }
>;

const COLUMNS: readonly Column<Row>[] = [
  { field: "kind", title: "Kind" },
  { field: "name", title: "Name" },
  { field: "listed", title: "Listed in" },
  { field: "steps", title: "Steps" },
];

/** One row a tool or consumable, tools first. */
export function toolsOfGuide(guide: GuideState, format: TableFormat, { paint }: Terminal): string {
  const rows = inventory(guide).map(
    ({ kind, name, listed, steps }): Row => ({ kind, name, listed, steps: [...steps] }),
  );
  return formatTable(rows, COLUMNS, format, paint);
}
