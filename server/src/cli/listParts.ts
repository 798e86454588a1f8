/** `kitquill list parts`: the parts of a guide, or the lines of a bare parts list. */

import { lengthText } from "../checks/words.ts";
import { accountsFor } from "../model/accounting.ts";
import type { GuideState } from "../model/guideState.ts";
import { hardwareNames } from "../model/hardwareKeys.ts";
import { heightOfLine } from "../model/heightNotes.ts";
import type { PartsList } from "../model/list/partsList.ts";
import { shownValue } from "../model/list/shownValue.ts";
import type { Hardware, Part } from "../model/parts.ts";
import { shownPath } from "./shownPath.ts";
import { type Column, formatTable, type TableFormat } from "./table.ts";
import type { Terminal } from "./terminal.ts";

/** What is told of a line and of a part alike; heights in mm. */
type Listed = Readonly<{
  quantity: number | null;
  /** Length of what is supplied by length. */
  metres: number | null;
  value: string | null;
  package: string | null;
  height: number | null;
  heightFrom: string | null;
  fitted: boolean;
}>;

const LISTED_COLUMNS: readonly Column<Listed>[] = [
  {
    field: "quantity",
    title: "Qty",
    shown: ({ quantity, metres }) => (metres === null ? quantity : lengthText(metres)),
  },
  { field: "metres", title: "Length", hidden: true },
  { field: "value", title: "Value" },
  { field: "package", title: "Package" },
  { field: "height", title: "Height mm" },
  { field: "heightFrom", title: "Height from" },
  { field: "fitted", title: "Fitted" },
];

type LineRow = Listed & Readonly<{ designators: readonly string[]; line: number }>;

const LINE_COLUMNS: readonly Column<LineRow>[] = [
  { field: "designators", title: "Designators" },
  ...LISTED_COLUMNS,
  { field: "line", title: "Line" },
];

/** Each line of the list, hardware by its name; heights in mm, `quantity` as stated or else the number of designators. */
export function partsOfList(list: PartsList, format: TableFormat, { paint }: Terminal): string {
  const hardware = list.lines.filter((line) => line.designators.length === 0);
  const names = new Map(hardwareNames(hardware).map((name, i) => [hardware[i], name]));
  const rows = list.lines.map((line): LineRow => {
    const height = heightOfLine(line);
    return {
      designators: line.designators.map(({ name }) => name),
      quantity: line.quantity ?? (line.designators.length || null),
      metres: line.metres ?? null,
      value: (shownValue(line) || names.get(line)) ?? null,
      package: line.cells.package?.text ?? null,
      height: height?.mm ?? null,
      heightFrom: height?.from ?? null,
      fitted: line.fitted,
      line: line.row,
    };
  });
  return formatTable(rows, LINE_COLUMNS, format, paint);
}

type PartRow = Listed &
  Readonly<{
    designator: string | null;
    board: string | null;
    step: string | null;
    file: string;
    line: number;
  }>;

const PART_COLUMNS: readonly Column<PartRow>[] = [
  { field: "designator", title: "Part" },
  { field: "board", title: "Board" },
  ...LISTED_COLUMNS,
  { field: "step", title: "Step" },
  { field: "file", title: "File", hidden: true },
  { field: "line", title: "Line", hidden: true },
];

/** Each part of the kit and each line of hardware, with the step that fits it. */
export function partsOfGuide(
  guide: GuideState,
  format: TableFormat,
  cwd: string,
  { paint }: Terminal,
): string {
  const columns =
    guide.boards.length > 1 ? PART_COLUMNS : PART_COLUMNS.filter(({ field }) => field !== "board");
  const shown = format === "text" ? columns : PART_COLUMNS;
  const rows = [
    ...guide.parts.map((part) => partRow(part, guide, cwd)),
    ...guide.hardware.map((hardware) => hardwareRow(hardware, guide, cwd)),
  ];
  return formatTable(rows, shown, format, paint);
}

function partRow(part: Part, guide: GuideState, cwd: string): PartRow {
  const use = guide.uses(part).find((one) => accountsFor(one) && one.role !== "empty");
  return {
    designator: part.name,
    board: part.board || null,
    quantity: 1,
    metres: null,
    value: shownValue(part.line) || null,
    package: part.line.cells.package?.text ?? null,
    height: part.height?.mm ?? null,
    heightFrom: part.height?.from ?? null,
    fitted: part.fitted,
    step: use?.step.number ?? null,
    file: shownPath(part.list.uri, cwd),
    line: part.line.row,
  };
}

/** Hardware has no designator: its name stands where a part's value does. */
function hardwareRow(hardware: Hardware, guide: GuideState, cwd: string): PartRow {
  const { name, supplied, line, list } = hardware;
  return {
    designator: null,
    board: line.board ?? null,
    quantity: supplied ?? null,
    metres: hardware.metres ?? null,
    value: line.cells.value?.text || name,
    package: line.cells.package?.text ?? null,
    height: null,
    heightFrom: null,
    fitted: line.fitted,
    step: guide.uses(hardware)[0]?.step.number ?? null,
    file: shownPath(list.uri, cwd),
    line: line.row,
  };
}
