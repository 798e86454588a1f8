/** `kitquill list figures`: the figures of a guide with their values and limits. */

import { placeOf } from "../checks/verdict.ts";
import type { GuideFigure } from "../model/figures/figure.ts";
import type { GuideState } from "../model/guideState.ts";
import { coherentValue } from "../quantity/coherent.ts";
import type { FigureValue } from "../quantity/evaluation/value.ts";
import { printLimits, printValue } from "../quantity/printRange.ts";
import { LineIndex } from "../text/lines.ts";
import { shownPath } from "./shownPath.ts";
import { type Column, formatTable, type TableFormat } from "./table.ts";
import type { Terminal } from "./terminal.ts";

/** Numbers in coherent SI units; `value` and `range` as a reader would write them. */
type Row = Readonly<{
  name: string | null;
  line: number;
  nominal: number | null;
  min: number | null;
  max: number | null;
  unit: string | null;
  stated: number | null;
  text: string;
  file: string;
  value: string;
  range: string;
}>;

/** Of CSV and JSON. */
const DATA: readonly Column<Row>[] = [
  { field: "name", title: "Name" },
  { field: "line", title: "Line" },
  { field: "nominal", title: "Nominal" },
  { field: "min", title: "Min" },
  { field: "max", title: "Max" },
  { field: "unit", title: "Unit" },
  { field: "stated", title: "Stated" },
  { field: "text", title: "Text" },
  { field: "file", title: "File" },
];

const SHOWN: readonly Column<Row>[] = [
  { field: "name", title: "Name" },
  { field: "value", title: "Value" },
  { field: "range", title: "Worst case" },
  { field: "line", title: "Line" },
  { field: "text", title: "Figure" },
];

/** One row a figure, those of the front matter first; a reading has its limits as min and max. */
export function figuresOfGuide(
  guide: GuideState,
  format: TableFormat,
  cwd: string,
  { paint }: Terminal,
): string {
  const pages = new Map(guide.pages.map((page) => [page.uri, page.text.toString()]));
  const lines = new Map([...pages].map(([uri, text]) => [uri, new LineIndex(text)]));
  const rows = guide.figures.all().map((figure): Row => {
    const { uri, span } = placeOf(figure.at());
    const value = figure.evaluation?.value;
    const stated = figure.stated?.value;
    return {
      name: figure.figure.name?.text ?? null,
      line: lines.get(uri)!.positionAt(span.start).line + 1,
      ...numbersOf(figure, value),
      stated: stated ? coherentValue(stated).nominal : null,
      text: textOf(figure, pages.get(uri)!.slice(span.start, span.end)),
      file: shownPath(uri, cwd),
      value: value ? limitSign(figure) + plain(printValue(value)) : "no value",
      range: value && value.min < value.max ? plain(printLimits(value)) : "",
    };
  });
  return formatTable(rows, format === "text" ? SHOWN : DATA, format, paint);
}

function numbersOf({ figure }: GuideFigure, value: FigureValue | undefined) {
  if (!value) return { nominal: null, min: null, max: null, unit: null };
  const { nominal, min, max, unit } = coherentValue(value);
  switch (figure.reading?.limit) {
    case "below":
      return { nominal: null, min: null, max, unit };
    case "above":
      return { nominal: null, min, max: null, unit };
    default:
      return { nominal, min, max, unit };
  }
}

function limitSign({ figure }: GuideFigure): string {
  const { limit } = figure.reading ?? {};
  return limit === "below" ? "< " : limit === "above" ? "> " : "";
}

/** What stands between the braces; of the front matter, name and value. */
function textOf({ figure, piece }: GuideFigure, source: string): string {
  const inside = piece ? source.slice(1, -1) : `${figure.name?.text ?? ""} = ${source}`;
  return inside.replace(/\s+/g, " ").trim();
}

function plain(text: string): string {
  return text.replaceAll("\u00a0", " ");
}
