/** A reading as a field that the builder fills in; the page's script tells whether it is inside. */
import type { ShownReading } from "../figures.ts";
import { escapeHtml } from "../html.ts";
import type { PageWords } from "../words/form.ts";
import { filled } from "../words/words.ts";

/** The limits in words: `from 11.4 V to 12.6 V`; or that nobody can judge by them. */
export function limitWords({ limit, ends }: ShownReading, words: PageWords): string {
  return filled(words.reading[limit], ...ends);
}

export function readingField(reading: ShownReading, words: PageWords, id: string): string {
  const { name, unit, low, high, limit } = reading;
  const limits = [
    low === undefined ? "" : ` data-low="${low}"`,
    high === undefined ? "" : ` data-high="${high}"`,
  ].join("");
  const label = filled(words.reading.label, unit ? `${name} (${unit})` : name);
  return `<div class="reading" data-reading="${escapeHtml(name)}"${limits}><label for="${id}" class="ref">${escapeHtml(name)}</label><input id="${id}" type="text" inputmode="decimal" autocomplete="off" aria-label="${escapeHtml(label)}" aria-describedby="${id}-l"><span class="unit">${escapeHtml(unit)}</span><span class="${limit === "unknown" ? "limits unknown" : "limits"}" id="${id}-l">${escapeHtml(limitWords(reading, words))}</span><output for="${id}" class="verdict"></output></div>`;
}
