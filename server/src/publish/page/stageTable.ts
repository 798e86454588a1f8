/** The table of a stage: its parts, and what the builder sees on them. */
import { lengthText, markItems } from "../../checks/words.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { ListLine } from "../../model/list/partsList.ts";
import type { Part } from "../../model/parts.ts";
import { formatQuantity } from "../../quantity/formatQuantity.ts";
import type { Language } from "../../text/language.ts";
import { escapeHtml } from "../html.ts";
import { lookHtml } from "../parts/look.ts";
import type { HardwareRow, PartRow, StageParts } from "../parts/stageParts.ts";
import type { PageWords } from "../words/form.ts";

export function stageTable(
  { parts, hardware }: StageParts,
  guide: GuideState,
  words: PageWords,
  language: Language,
): string {
  if (parts.length + hardware.length === 0) return "";
  const lines = [...parts, ...hardware.map((row) => ({ ...row, line: row.hardware.line }))];
  const hasBag = lines.some(({ line }) => line.cells.bag);
  const { table } = words;
  const titles = [table.parts, table.value, table.look, table.height];
  if (hasBag) titles.push(table.bag);
  const head = titles.map((title) => `<th scope="col">${escapeHtml(title)}</th>`).join("");
  const rows = [
    ...parts.map((row) => partRow(row, guide, words, language, hasBag)),
    ...hardware.map((row) => hardwareRow(row, hasBag)),
  ];
  return `<table class="parts"><caption>${escapeHtml(table.caption)}</caption>\n<thead><tr>${head}</tr></thead>\n<tbody>\n${rows.join("\n")}\n</tbody></table>`;
}

function partRow(
  { line, parts }: PartRow,
  guide: GuideState,
  words: PageWords,
  language: Language,
  hasBag: boolean,
): string {
  const severalBoards = guide.boards.length > 1;
  const names = markItems(
    parts.map(({ name, board }) => ({ name, ...(severalBoards && { board }) })),
  );
  const refs = names.map((name) => `<span class="ref">${escapeHtml(name)}</span>`).join(", ");
  const look = [lookHtml(parts[0]!, words, language), escapeHtml(packageName(line))];
  return rowOf(refs, escapeHtml(valueText(line)), look, heightText(parts), line, hasBag);
}

function hardwareRow({ hardware, count, metres }: HardwareRow, hasBag: boolean): string {
  const { line, name } = hardware;
  const amount = metres > 0 ? lengthText(metres) : String(count);
  const look = [escapeHtml(line.cells.description?.text ?? "")];
  const shown = `${escapeHtml(amount)} × <span class="ref">${escapeHtml(name)}</span>`;
  const value = line.cells.value?.text ?? "";
  return rowOf(shown, escapeHtml(value === name ? "" : value), look, "", line, hasBag);
}

function rowOf(
  names: string,
  value: string,
  look: readonly string[],
  height: string,
  line: ListLine,
  hasBag: boolean,
): string {
  const seen = look.filter((text) => text !== "").join(" · ");
  const bag = hasBag ? `<td>${escapeHtml(line.cells.bag?.text ?? "")}</td>` : "";
  return `<tr><td>${names}</td><td>${value}</td><td>${seen}</td><td class="right">${height}</td>${bag}</tr>`;
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
