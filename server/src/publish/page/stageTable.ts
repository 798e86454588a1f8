/** The table of a stage: its parts, and what the builder sees on them. */
import { lengthText, markItems } from "../../checks/words.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { ListLine } from "../../model/list/partsList.ts";
import type { Part } from "../../model/parts.ts";
import { escapeHtml } from "../html.ts";
import { localNumbers } from "../localNumbers.ts";
import { shortName, tellingPackage, valueText } from "../parts/lineText.ts";
import { lookHtml } from "../parts/look.ts";
import type { HardwareRow, PartRow, StageParts } from "../parts/stageParts.ts";
import type { PageWords } from "../words/form.ts";

/** The cells of a row, by column; each is HTML. */
interface Row {
  readonly parts: string;
  readonly value: string;
  readonly look: string;
  readonly height: string;
  readonly bag: string;
}

const COLUMNS = ["parts", "value", "look", "height", "bag"] as const;

/** How columns are set. */
const CLASSES: { readonly [column in keyof Row]?: string } = {
  value: "value",
  look: "look",
  height: "right",
};

export function stageTable(
  { parts, hardware }: StageParts,
  guide: GuideState,
  words: PageWords,
): string {
  const rows = [
    ...parts.map((row) => partRow(row, guide, words)),
    ...hardware.map((row) => hardwareRow(row, guide)),
  ];
  if (rows.length === 0) return "";
  const columns = COLUMNS.filter((column) => rows.some((row) => row[column] !== ""));
  const side = (column: keyof Row) => {
    const name = CLASSES[column];
    return name ? ` class="${name}"` : "";
  };
  const head = columns.map(
    (column) => `<th scope="col"${side(column)}>${escapeHtml(words.table[column])}</th>`,
  );
  const body = rows.map((row) => {
    const cells = columns.map((column) => `<td${side(column)}>${row[column]}</td>`);
    return `<tr>${cells.join("")}</tr>`;
  });
  return `<table class="parts"><caption>${escapeHtml(words.table.caption)}</caption>\n<thead><tr>${head.join("")}</tr></thead>\n<tbody>\n${body.join("\n")}\n</tbody></table>`;
}

function partRow({ line, parts }: PartRow, guide: GuideState, words: PageWords): Row {
  const names = markItems(parts.map((part) => shortName(part, guide)));
  return {
    parts: names.map((name) => `<span class="ref">${escapeHtml(name)}</span>`).join(", "),
    value: escapeHtml(valueText(line, guide.language)),
    look: lookCell(lookHtml(parts[0]!, guide, words), line),
    height: localNumbers(heightText(parts), guide.language),
    bag: escapeHtml(line.cells.bag?.text ?? ""),
  };
}

function hardwareRow({ hardware, count, metres }: HardwareRow, guide: GuideState): Row {
  const { line, name } = hardware;
  const amount = escapeHtml(
    metres > 0 ? localNumbers(lengthText(metres), guide.language) : String(count),
  );
  const value = line.cells.value?.text ?? "";
  return {
    parts: `${amount} × <span class="ref">${escapeHtml(name)}</span>`,
    value: escapeHtml(value === name ? "" : value),
    look: escapeHtml(line.cells.description?.text ?? ""),
    height: "",
    bag: escapeHtml(line.cells.bag?.text ?? ""),
  };
}

/** Of a part without marks the list's description says what to look for. */
function lookCell(look: string, line: ListLine): string {
  const seen = look || escapeHtml(line.cells.description?.text ?? "");
  return joined([seen, escapeHtml(tellingPackage(line))]);
}

function joined(texts: readonly string[]): string {
  return texts.filter((text) => text !== "").join(" · ");
}

function heightText(parts: readonly Part[]): string {
  const heights = parts
    .filter(({ offBoard }) => !offBoard)
    .flatMap(({ height }) => height?.mm ?? []);
  if (heights.length === 0) return "";
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  return low === high ? `${low}\u00a0mm` : `${low}–${high}\u00a0mm`;
}
