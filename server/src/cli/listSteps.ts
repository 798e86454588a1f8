/** `kitquill list steps`: the steps of a guide, with what they fit. */

import { stepText } from "../features/stepText.ts";
import { fittedBySteps } from "../model/fittedBySteps.ts";
import type { Stage } from "../model/guide.ts";
import type { GuideState } from "../model/guideState.ts";
import type { Part } from "../model/parts.ts";
import { LineIndex } from "../text/lines.ts";
import { shownPath } from "./shownPath.ts";
import { type Column, formatTable, type TableFormat } from "./table.ts";
import type { Terminal } from "./terminal.ts";

type Row = Readonly<{
  number: string;
  stage: string | null;
  text: string;
  parts: readonly string[];
  tallest: number | null;
  file: string;
  line: number;
}>;

const COLUMNS: readonly Column<Row>[] = [
  { field: "number", title: "Step" },
  { field: "stage", title: "Stage" },
  { field: "text", title: "Text" },
  { field: "parts", title: "Parts" },
  { field: "tallest", title: "Tallest mm" },
  { field: "file", title: "File", hidden: true },
  { field: "line", title: "Line", hidden: true },
];

/** One row a step, sub-steps included; `tallest` is the greatest body height in mm. */
export function stepsOfGuide(
  guide: GuideState,
  format: TableFormat,
  cwd: string,
  { paint }: Terminal,
): string {
  const fitted = fittedBySteps(guide);
  const lines = new Map(guide.pages.map((page) => [page.uri, new LineIndex(page.text.toString())]));
  const rows = guide.stages.flatMap((stage) =>
    stage.steps.map((step): Row => {
      const parts = fitted.get(step) ?? [];
      const { page, start } = step.piece;
      const offset = start + step.fact.span.start;
      return {
        number: step.number,
        stage: titleOf(stage),
        text: stepText(step),
        parts: parts.map((part) => nameOf(part, guide)),
        tallest: tallest(parts),
        file: shownPath(page.uri, cwd),
        line: lines.get(page.uri)!.positionAt(offset).line + 1,
      };
    }),
  );
  return formatTable(rows, COLUMNS, format, paint);
}

function nameOf(part: Part, guide: GuideState): string {
  return guide.boards.length > 1 && part.board ? `${part.board}/${part.name}` : part.name;
}

function tallest(parts: readonly Part[]): number | null {
  const heights = parts.flatMap(({ height }) => (height ? [height.mm] : []));
  return heights.length > 0 ? Math.max(...heights) : null;
}

function titleOf(stage: Stage): string | null {
  return stage.heading?.fact.title ?? null;
}
