/** `kitquill list columns`: what each column of a parts list was taken for, and why. */
import type { PartsList } from "../model/list/partsList.ts";
import { type Column, formatTable, type TableFormat } from "./table.ts";
import type { Terminal } from "./terminal.ts";

type Row = Readonly<{ column: number; header: string; meaning: string | null; why: string }>;

const COLUMNS: readonly Column<Row>[] = [
  { field: "column", title: "Column" },
  { field: "header", title: "Header" },
  { field: "meaning", title: "Taken for" },
  { field: "why", title: "Why" },
];

/** Columns count from 1. */
export function columnsOfList(list: PartsList, format: TableFormat, { paint }: Terminal): string {
  const rows = list.columns.map(
    ({ column, header, meaning, why }): Row => ({
      column: column + 1,
      header,
      meaning: meaning ?? null,
      why,
    }),
  );
  return formatTable(rows, COLUMNS, format, paint);
}
