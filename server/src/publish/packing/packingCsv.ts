/** The packing list as rows for a spreadsheet or a program: every line of the parts list. */
import type { GuideState } from "../../model/guideState.ts";
import type { ListLine } from "../../model/list/partsList.ts";
import { type CsvCell, csvFile } from "../../text/csvText.ts";
import { pageWords } from "../words/words.ts";
import { type PackedLine, packKind } from "./packedLines.ts";
import type { PackingList, PackRow } from "./packingList.ts";
import { groupTitle, notesOf, partNames, whatText } from "./packingRows.ts";

/** The header is the mark of a file of ours: CSV has no place for another. */
export const PACKING_HEADER = [
  "group",
  "status",
  "pieces",
  "spare",
  "lengthMm",
  "name",
  "details",
  "parts",
  "kind",
  "board",
  "partNumber",
  "notes",
  "listLine",
] as const;

/** One row for each row of the packing list, then those of which nothing lies in the box. */
export function packingCsv(packing: PackingList, guide: GuideState): string {
  const words = pageWords(guide.language);
  const numbers = new Map(packing.lines.map((one) => [one, runsOf(one.lines)]));
  const rows = packing.groups.flatMap((group) => {
    const title = groupTitle(group, packing, words);
    return group.rows.map((row) => {
      const notes = notesOf(row, packing, guide, words).join("; ");
      return csvRow(title, row, notes);
    });
  });
  const apart = [...packing.made, ...packing.unfitted].map((packed) => {
    const { parts, metres } = packed;
    return csvRow("", { packed, parts, pieces: 0, spare: 0, metres: metres && 0 }, "");
  });
  return csvFile([PACKING_HEADER, ...rows, ...apart]);

  function csvRow(title: string, row: PackRow, notes: string): CsvCell[] {
    const { packed, pieces, spare, metres } = row;
    const { line, status } = packed;
    const { name, more } = whatText(packed, guide.language);
    return [
      title,
      status,
      pieces ?? "",
      spare,
      metres === undefined ? "" : millimetres(metres),
      name,
      more,
      names(row),
      packKind(packed),
      boardOf(packed),
      line.cells["part number"]?.text ?? "",
      notes,
      numbers.get(packed)!,
    ];
  }

  function names({ packed, parts }: PackRow): string {
    const own = parts.length > 0 ? partNames(parts, guide) : [];
    return (own.length > 0 ? own : namesOf(packed)).join(", ");
  }
}

function namesOf({ lines }: PackedLine): readonly string[] {
  return lines.flatMap(({ designators }) => designators.map(({ name }) => name));
}

/** Numbers of the lines in order: `2, 5–9, 12`. A hyphen would make a date of two of them. */
function runsOf(lines: readonly ListLine[]): string {
  const runs: { first: number; last: number }[] = [];
  for (const { row } of lines) {
    const run = runs.at(-1);
    if (run && row === run.last + 1) run.last = row;
    else runs.push({ first: row, last: row });
  }
  const written = runs.map(({ first, last }) => {
    if (first === last) return `${first}`;
    return last === first + 1 ? `${first}, ${last}` : `${first}–${last}`;
  });
  return written.join(", ");
}

function boardOf({ line, parts }: PackedLine): string {
  return line.board ?? parts[0]?.board ?? "";
}

function millimetres(metres: number): number {
  return Number((metres * 1000).toPrecision(9));
}
