/** `kitquill list steps`: the steps of a guide, with what they fit. */

import type { GuidePiece, Stage, Step } from "../model/guide.ts";
import type { GuideState } from "../model/guideState.ts";
import type { Part } from "../model/parts.ts";
import type { Figure, PartMark, Role } from "../syntax/dialect.ts";
import { LineIndex } from "../text/lines.ts";
import { applyEdits, type Span, shift, type TextEdit } from "../text/span.ts";
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

const FITTING: ReadonlySet<Role> = new Set<Role>(["fit", "insert", "bridge"]);

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
        text: plainText(step),
        parts: parts.map((part) => nameOf(part, guide)),
        tallest: tallest(parts),
        file: shownPath(page.uri, cwd),
        line: lines.get(page.uri)!.positionAt(offset).line + 1,
      };
    }),
  );
  return formatTable(rows, COLUMNS, format, paint);
}

function fittedBySteps(guide: GuideState): ReadonlyMap<Step, readonly Part[]> {
  const fitted = new Map<Step, Part[]>();
  for (const part of guide.parts) {
    for (const { role, step } of guide.uses(part)) {
      if (!FITTING.has(role)) continue;
      const parts = fitted.get(step);
      if (!parts) fitted.set(step, [part]);
      else if (!parts.includes(part)) parts.push(part);
    }
  }
  return fitted;
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

const PARAGRAPH_END = /(?:\r\n|\n|\r)[ \t]*(?:[\r\n]|\d+[.)][ \t]|[-*+][ \t]|<!--|$)/;

/**
 * The step's first paragraph on one line: no list marker, no table bars, marks as their items and
 * figures as what they state. Enough to know the step by; publishing renders it in full.
 */
function plainText({ piece, fact: { span } }: Step): string {
  const source = piece.page.text.slice(piece.start + span.start, piece.start + span.end);
  const length = PARAGRAPH_END.exec(source)?.index ?? source.length;
  const shown = applyEdits(source.slice(0, length), undress(piece, span.start, length));
  return shown
    .replace(/^\s*(?:\d+[.)]|[-*+]|#{1,6}|\|)[ \t]+/, "")
    .replaceAll("|", " ")
    .replace(/\s+/g, " ")
    .trim();
}

/** Edits to the text from `start` on that leave of marks and figures what a reader is shown. */
function undress(piece: GuidePiece, start: number, length: number): TextEdit[] {
  const edits: TextEdit[] = [];
  for (const fact of piece.facts.facts) {
    if (fact.kind !== "mark" && fact.kind !== "figure") continue;
    const { span } = fact.kind === "mark" ? fact.mark : fact.figure;
    if (span.start < start || span.end > start + length) continue;
    const text =
      fact.kind === "mark" ? itemsText(fact.mark, piece) : figureText(fact.figure, piece);
    edits.push({ span: shift(span, -start), text });
  }
  return edits;
}

/** A label shows nothing. */
function itemsText({ role, items }: PartMark, piece: GuidePiece): string {
  const last = items.at(-1);
  if (role === "label" || !last) return "";
  return textOf(piece, { start: items[0]!.span.start, end: last.span.end });
}

function figureText(
  { span, name, expression, tolerance, stated, reading }: Figure,
  piece: GuidePiece,
) {
  if (reading) {
    return textOf(piece, { start: span.start + 1, end: span.end - 1 }).replace(/^\s*read\s+/, "");
  }
  const value = stated ?? expression ?? name;
  if (!value) return "";
  return tolerance && !stated ? `${value.text} ± ${tolerance.text}` : value.text;
}

function textOf({ page, start }: GuidePiece, span: Span): string {
  return page.text.slice(start + span.start, start + span.end);
}
