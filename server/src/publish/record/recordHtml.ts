/** The test record as a sheet of its own, for a bench that tests built kits. */
import type { Stage } from "../../model/guide.ts";
import type { GuideState } from "../../model/guideState.ts";
import { limitWords } from "../fill/readings.ts";
import { escapeHtml } from "../html.ts";
import { blanks, sheetDocument, sheetTable } from "../paper/document.ts";
import { titleOf } from "../title.ts";
import type { PageWords } from "../words/form.ts";
import { counted, filled, pageWords } from "../words/words.ts";
import type { RecordRow } from "./readings.ts";

export function recordHtml(rows: readonly RecordRow[], guide: GuideState, errors: number): string {
  const words = pageWords(guide.language);
  const { record } = words;
  const kit = titleOf(guide);
  const body = [
    `<h1>${escapeHtml(kit ? `${kit}: ${record.title}` : record.title)}</h1>`,
    `<p class="sub">${escapeHtml(counted(words.readings, rows.length))}</p>`,
    errors > 0 ? `<p class="forced">${escapeHtml(filled(words.forced, errors))}</p>` : "",
    blanks([record.serial, record.date, record.name, record.instruments]),
    ...byStage(rows).map(([stage, own]) => stageHtml(stage, own, words)),
    `<h2>${escapeHtml(record.remarks)}</h2>\n${'<p class="wide"></p>\n'.repeat(3)}`,
    blanks([record.signature]),
    `<p class="sub">${escapeHtml(words.rules)}</p>`,
  ];
  const title = kit ? `${record.title}: ${kit}` : record.title;
  return sheetDocument(guide, title, body.filter((part) => part !== "").join("\n"));
}

function byStage(rows: readonly RecordRow[]): [Stage | undefined, RecordRow[]][] {
  const groups = new Map<Stage | undefined, RecordRow[]>();
  for (const row of rows) groups.set(row.stage, [...(groups.get(row.stage) ?? []), row]);
  return [...groups];
}

function stageHtml(stage: Stage | undefined, rows: readonly RecordRow[], words: PageWords): string {
  const { record } = words;
  const title = stage
    ? `${stage.number} ${stage.heading?.fact.title ?? ""}`.trim()
    : record.reading;
  const columns = [
    { title: words.step.replace("#", "").trim(), class: "number" },
    { title: record.reading },
    { title: record.limits, class: "limits" },
    { title: record.value, class: "entry" },
    { title: record.inside, class: "tickbox" },
  ];
  const cells = rows.map(({ step, reading }) => {
    const said = [step ?? "", reading.name, limitWords(reading, words)].map(escapeHtml);
    const [number, name, limits] = said;
    const label = escapeHtml(`${reading.name} ${record.inside}`);
    const box = `<input type="checkbox" aria-label="${label}">`;
    const unit = `<span class="unit">${escapeHtml(reading.unit)}</span>`;
    return [number!, `<span class="ref">${name}</span>`, limits!, unit, box];
  });
  return `<h2>${escapeHtml(title)}</h2>\n${sheetTable(columns, cells, "")}`;
}
