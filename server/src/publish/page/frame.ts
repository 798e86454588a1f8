/** What stands around the blocks of a guide: its head, its contents, the head of each section. */
import type { GuideState } from "../../model/guideState.ts";
import type { StageNode } from "../../model/stageNode.ts";
import { escapeHtml, titleId } from "../html.ts";
import { localNumbers } from "../localNumbers.ts";
import { partsOfStage } from "../parts/stageParts.ts";
import type { PageWords } from "../words/form.ts";
import { counted, filled } from "../words/words.ts";
import { stageTable } from "./stageTable.ts";

/** A stretch of the guide below a heading of level 1 or 2. */
export interface SectionHead {
  readonly kind: "part" | "stage";
  readonly id: string;
  /** The heading's text, and as HTML. */
  readonly title: string;
  readonly heading: string;
  /** Undefined for one without steps. */
  readonly stage: StageNode | undefined;
}

/** Ids for headings, each given once. */
export class HeadingIds {
  readonly #given = new Set<string>();
  /** How often each id was wanted. */
  readonly #wanted = new Map<string, number>();

  of(title: string): string {
    const wanted = `h-${titleId(title)}`;
    let id = wanted;
    let count = this.#wanted.get(wanted) ?? 0;
    while (this.#given.has(id)) id = `${wanted}-${++count}`;
    this.#wanted.set(wanted, count);
    this.#given.add(id);
    return id;
  }
}

/** Title and size of the guide; `forced` says that it was published in spite of errors. */
export function headHtml(
  guide: GuideState,
  title: string | undefined,
  forced: string,
  words: PageWords,
): string {
  const steps = guide.stages.reduce((sum, stage) => sum + stage.steps.length, 0);
  const sub = [counted(words.steps, steps), counted(words.parts, guide.parts.length)];
  return `<div class="head"><h1>${escapeHtml(title ?? words.contents)}</h1>\n<p class="sub">${sub.join(" · ")}</p>\n${forced}<p class="rules">${escapeHtml(words.rules)}</p>\n</div>`;
}

/** Empty for a guide without sections. */
export function contentsHtml(sections: readonly SectionHead[], words: PageWords): string {
  const entries = sections.map(({ kind, id, title, stage }) => {
    const number = stage ? `<span class="number">${stage.number}</span> ` : "";
    return `<li class="${kind}"><a href="#${escapeHtml(id)}">${number}${escapeHtml(title)}</a></li>`;
  });
  if (entries.length === 0) return "";
  return `<nav class="contents" aria-labelledby="contents"><h2 id="contents">${escapeHtml(words.contents)}</h2>\n<ul>\n${entries.join("\n")}\n</ul></nav>`;
}

export function sectionTitle({ id, heading, stage }: SectionHead): string {
  const title = stage
    ? `<span class="number">${stage.number}</span> <span>${heading}</span>`
    : heading;
  return `<h2 id="${escapeHtml(id)}">${title}</h2>`;
}

/** What a stage takes, in a line and as a table. */
export function stageIntro(stage: StageNode, guide: GuideState, words: PageWords): string {
  const parts = partsOfStage(stage, guide);
  const placed = parts.parts.flatMap((row) => row.parts);
  const heights = placed.flatMap((part) => (part.offBoard ? [] : (part.height?.mm ?? [])));
  const highest = heights.reduce((a, b) => Math.max(a, b), 0);
  const readings = readingsOf(stage);
  // `6 steps · 12 parts · up to 2.5 mm high · 2 readings`
  const told = [counted(words.steps, stage.steps.length)];
  if (placed.length > 0) told.push(counted(words.parts, placed.length));
  if (heights.length > 0) told.push(localNumbers(filled(words.upTo, highest), guide.language));
  if (readings > 0) told.push(counted(words.readings, readings));
  const bar = `<p class="stagebar">${escapeHtml(told.join(" · "))}</p>`;
  return `${bar}\n${stageTable(parts, guide, words)}`;
}

function readingsOf(stage: StageNode): number {
  const figures = stage.slices.flatMap(({ piece }) => piece.figures);
  return figures.filter(({ figure, step }) => figure.reading && step?.stage === stage).length;
}
