/** The table of a stage: its parts, and what the builder sees on them. */
import { lengthText, markItems } from "../../checks/words.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { ListLine } from "../../model/list/partsList.ts";
import type { Part } from "../../model/parts.ts";
import { formatQuantity } from "../../quantity/formatQuantity.ts";
import { escapeHtml } from "../html.ts";
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

export function stageTable(
  { parts, hardware }: StageParts,
  guide: GuideState,
  words: PageWords,
): string {
  const rows = [
    ...parts.map((row) => partRow(row, guide, words)),
    ...hardware.map((row) => hardwareRow(row)),
  ];
  if (rows.length === 0) return "";
  const columns = COLUMNS.filter((column) => rows.some((row) => row[column] !== ""));
  const side = (column: keyof Row) => (column === "height" ? ' class="right"' : "");
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
    value: escapeHtml(valueText(line)),
    look: joined([lookHtml(parts[0]!, guide, words), escapeHtml(packageName(line))]),
    height: heightText(parts),
    bag: escapeHtml(line.cells.bag?.text ?? ""),
  };
}

/** With its board only where another board has the same designator. */
export function shortName({ name, board }: Part, guide: GuideState) {
  return { name, ...(guide.kit.find(name).doubtful && { board }) };
}

function hardwareRow({ hardware, count, metres }: HardwareRow): Row {
  const { line, name } = hardware;
  const amount = escapeHtml(metres > 0 ? lengthText(metres) : String(count));
  const value = line.cells.value?.text ?? "";
  return {
    parts: `${amount} × <span class="ref">${escapeHtml(name)}</span>`,
    value: escapeHtml(value === name ? "" : value),
    look: escapeHtml(line.cells.description?.text ?? ""),
    height: "",
    bag: escapeHtml(line.cells.bag?.text ?? ""),
  };
}

function joined(texts: readonly string[]): string {
  return texts.filter((text) => text !== "").join(" · ");
}

/** The value as read, with its tolerance; else as the list has it. */
export function valueText({ value, tolerance, cells }: ListLine): string {
  const shown = value ? formatQuantity(value) : (cells.value?.text ?? "");
  const written = cells.value?.text ?? "";
  // A value cell with more than the value says what the part is: `10k log`, `100n X2`.
  const text = value && /^[\d.,]+\s*[\p{L}µΩ%]*\d*$/u.test(written) ? shown : written;
  return tolerance && !text.includes("%") ? `${text} ${tolerance}` : text;
}

/** The footprint's name as far as a builder can use it: `TO-92` of `TO-92_Inline`, not a whole path. */
function packageName({ cells }: ListLine): string {
  const name = cells.package?.text.replace(/^[^:]*:/, "").split("_")[0] ?? "";
  return /^(?:R|C|CP|L|D|LED|PinHeader|Resistor|Capacitor)$/.test(name) ? "" : name;
}

function heightText(parts: readonly Part[]): string {
  const heights = parts
    .filter(({ offBoard }) => !offBoard)
    .flatMap(({ height }) => height?.mm ?? []);
  if (heights.length === 0) return "";
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  return low === high ? `${low}\u00a0mm` : `${low}–${high}\u00a0mm`;
}
