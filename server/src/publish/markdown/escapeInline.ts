/** Texts and tables of ours in Markdown that any renderer shows as they are. */

/** Signs that Markdown would take for its own within a line are escaped, and bars that part cells. */
export function escapeInline(text: string): string {
  return text.replace(/[\\`*_[\]|~]/g, "\\$&").replace(/<(?=[\p{L}/!?])|&(?=[#\p{L}])/gu, "\\$&");
}

export interface Column {
  readonly title: string;
  readonly isNumber?: boolean;
}

/** A table of GFM; cells are plain texts. Columns that hold nothing are left out. */
export function plainTable(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
): string {
  const used = columns.map((_, index) => rows.some((row) => row[index] !== ""));
  const pick = <Cell>(cells: readonly Cell[]) => cells.filter((_, index) => used[index]);
  const line = (cells: readonly string[]) => `| ${cells.join(" | ")} |\n`;
  const head = line(pick(columns).map(({ title }) => escapeInline(title)));
  const rule = line(pick(columns).map(({ isNumber }) => (isNumber ? "---:" : "---")));
  return head + rule + rows.map((row) => line(pick(row).map(escapeInline))).join("");
}
