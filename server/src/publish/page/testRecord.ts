/** The test record: every reading with its limits, to be filled in and kept. On paper only. */
import type { GuideState } from "../../model/guideState.ts";
import { limitWords } from "../fill/readings.ts";
import { escapeHtml } from "../html.ts";
import { readingsOf } from "../record/readings.ts";
import type { PageWords } from "../words/form.ts";

export function testRecordHtml(guide: GuideState, words: PageWords): string {
  const rows = readingsOf(guide);
  if (rows.length === 0) return "";
  const { record } = words;
  const blanks = [record.serial, record.date, record.name].map(
    (label) => `<p><span>${escapeHtml(label)}</span><span class="blank"></span></p>`,
  );
  const titles = [stepWord(words), record.reading, record.limits, record.value];
  const head = titles.map((title) => `<th scope="col">${escapeHtml(title)}</th>`).join("");
  const body = rows.map(({ step, reading }) => {
    const cells = [step ?? "", reading.name, limitWords(reading, words)].map(escapeHtml);
    const [number, name, limits] = cells;
    return `<tr><td class="number">${number}</td><td class="ref">${name}</td><td>${limits}</td><td class="blank" data-record="${name}"></td></tr>`;
  });
  return `<section class="record" aria-labelledby="record"><h2 id="record">${escapeHtml(record.title)}</h2>\n<div class="blanks">${blanks.join("")}</div>\n<table><thead><tr>${head}</tr></thead>\n<tbody>\n${body.join("\n")}\n</tbody></table></section>`;
}

function stepWord({ step }: PageWords): string {
  return step.replace("#", "").trim();
}
