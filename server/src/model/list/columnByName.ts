/** Which column is meant by its name. */
import type { Candidates } from "./candidates.ts";
import type { Meaning } from "./partsList.ts";

export function chooseByName(columns: Candidates, meaning: Meaning, loosest = 2): void {
  let best: { column: number; rank: number; filled: number } | undefined;
  for (const [column, profile] of columns.free()) {
    const rank = columns.names[column]?.ranks.get(meaning);
    if (rank === undefined || rank > loosest || isRefuted(columns, meaning, column)) continue;
    const { filled } = profile;
    if (best && (rank > best.rank || (rank === best.rank && filled <= best.filled))) continue;
    best = { column, rank, filled };
  }
  if (!best) return;
  const why =
    best.rank === 0 ? "its name says so" : "its name may mean it, and no other column fits better";
  columns.take(meaning, best.column, why);
}

/** Cells that do not belong to the column's name: footprints `1` and `2`. */
function isRefuted(columns: Candidates, meaning: Meaning, column: number): boolean {
  if (meaning === "item") return columns.profiles[column]!.filled > 0 && !isItems(columns, column);
  if (meaning !== "package") return false;
  let small = 0;
  for (const row of columns.rows) if (/^\d{1,2}$/.test(row.text(column))) small++;
  const { filled } = columns.profiles[column]!;
  if (filled === 0 || small <= filled / 2) return false;
  columns.tell(column, "its name means package, but its cells are mere numbers");
  return true;
}

function isItems(columns: Candidates, column: number): boolean {
  const { whole } = columns.profiles[column]!;
  return whole >= 0.5 || columns.rows.every((row) => row.text(column).length <= 12);
}
