/** The whole guide as one HTML file that needs nothing else. */

import { SCRIPT, SCRIPT_HASH, STYLE } from "virtual:page";
import type { Stage } from "../../model/guide.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { PieceNode } from "../../model/pieceNode.ts";
import { type Block, blocksOf } from "../blocks.ts";
import { type FillContext, Filler, Footnotes, type PictureSource } from "../fill/filler.ts";
import { fingerprint, StepKeys } from "../fill/stepKeys.ts";
import { escapeHtml, titleId } from "../html.ts";
import { PartsOfStages } from "../parts/stageParts.ts";
import type { Templates } from "../piece/templates.ts";
import { counted, filled, pageWords } from "../words/words.ts";
import { needsHtml } from "./needs.ts";
import { runningHeads } from "./runningHeads.ts";
import { stageTable } from "./stageTable.ts";
import { testRecordHtml } from "./testRecord.ts";

/** Says that a file is ours, so that it may be replaced. */
export const HTML_MARK = '<meta name="generator" content="Kitquill">';

export interface PageOptions {
  readonly pictures: PictureSource;
  /** Errors that the checks found, when the page is published all the same. */
  readonly errors: number;
}

export function guidePage(guide: GuideState, templates: Templates, options: PageOptions): string {
  return new GuidePage(guide, templates, options).write();
}

/** A stretch of the guide below a heading of level 1 or 2. */
interface Section {
  readonly kind: "part" | "stage";
  readonly id: string;
  /** The heading's text, and as HTML. */
  readonly title: string;
  readonly heading: string;
  /** Undefined for one without steps. */
  readonly stage: Stage | undefined;
  readonly body: string[];
}

class GuidePage {
  readonly #guide: GuideState;
  readonly #templates: Templates;
  readonly #options: PageOptions;
  readonly #context: FillContext;
  readonly #parts: PartsOfStages;
  readonly #readings = new Map<Stage, number>();
  readonly #ids = new Set<string>();
  readonly #opening: string[] = [];
  readonly #sections: Section[] = [];
  #title: string | undefined;
  #lastId = 0;

  constructor(guide: GuideState, templates: Templates, options: PageOptions) {
    this.#guide = guide;
    this.#templates = templates;
    this.#options = options;
    this.#parts = new PartsOfStages(guide);
    for (const { figure, step } of guide.figures.all()) {
      if (figure.reading && step) {
        this.#readings.set(step.stage, (this.#readings.get(step.stage) ?? 0) + 1);
      }
    }
    this.#title = guide.frontMatter.title?.value;
    this.#context = {
      guide,
      words: pageWords(guide.language),
      language: guide.language ?? "en",
      pictures: options.pictures,
      keys: new StepKeys(),
      footnotes: new Footnotes(),
      freshId: () => `k${++this.#lastId}`,
    };
  }

  write(): string {
    const stages = new Map<unknown, Stage>(
      this.#guide.stages.map((stage) => [stage.heading?.fact, stage]),
    );
    for (const [index, piece] of this.#guide.pieces.entries()) {
      this.#addPiece(piece, stages, index === 0);
    }
    const content = this.#sections.map((one, index) => this.#section(one, index)).join("\n");
    const notes = this.#footnotes();
    return this.#document(`${this.#header()}\n${content}\n${notes}`);
  }

  #addPiece(piece: PieceNode, stages: ReadonlyMap<unknown, Stage>, isFirst: boolean): void {
    const { words } = this.#context;
    const filler = new Filler(this.#context, piece);
    const blocks = blocksOf(piece, this.#templates.of(piece), filler, words);
    const headings = piece.facts.facts.filter((fact) => fact.kind === "heading");
    for (const block of blocks) {
      const fact = headings.find(({ span }) => span.start === block.start);
      if (block.kind === "heading" && block.level! <= 2 && fact) {
        const stage = block.level === 2 ? stages.get(fact) : undefined;
        const isTitle = isFirst && block === blocks[0] && block.level === 1;
        if (isTitle) this.#title ??= fact.title;
        else this.#open(block, fact.title, stage?.steps.length ? stage : undefined);
      } else this.#body.push(this.#blockHtml(block, fact?.title));
    }
  }

  get #body(): string[] {
    return this.#sections.at(-1)?.body ?? this.#opening;
  }

  #open(block: Block, title: string, stage: Stage | undefined): void {
    const kind = block.level === 1 ? "part" : "stage";
    const id = this.#uniqueId(`h-${titleId(title)}`);
    this.#sections.push({ kind, id, title, heading: block.html, stage, body: [] });
  }

  #blockHtml({ kind, level, html }: Block, title: string | undefined): string {
    if (kind !== "heading") return html;
    const id = title ? ` id="${escapeHtml(this.#uniqueId(`h-${titleId(title)}`))}"` : "";
    return `<h${level}${id}>${html}</h${level}>`;
  }

  #uniqueId(wanted: string): string {
    let id = wanted;
    for (let count = 1; this.#ids.has(id); count++) id = `${wanted}-${count}`;
    this.#ids.add(id);
    return id;
  }

  #section({ kind, id, heading, stage, body }: Section, index: number): string {
    const { words } = this.#context;
    const named = `aria-labelledby="${escapeHtml(id)}"`;
    if (!stage) {
      // On paper the heading of several stages shares the page of the first.
      const next = kind === "part" ? this.#sections[index + 1]?.stage : undefined;
      const page = next ? ` stage-${next.number}` : "";
      return `<section class="${kind}${page}" ${named}>\n<h2 id="${escapeHtml(id)}">${heading}</h2>\n${body.join("\n")}\n</section>`;
    }
    const { number } = stage;
    const table = stageTable(this.#parts.of(stage), this.#guide, words);
    const title = `<h2 id="${escapeHtml(id)}"><span class="number">${number}</span> <span>${heading}</span></h2>`;
    return `<section class="stage stage-${number}" id="stage-${number}" ${named}>\n${title}\n<p class="stagebar">${escapeHtml(this.#summary(stage))}</p>\n${table}\n${body.join("\n")}\n</section>`;
  }

  /** `6 steps · 12 parts · up to 2.5 mm high · 2 readings` */
  #summary(stage: Stage): string {
    const { words } = this.#context;
    const rows = this.#parts.of(stage).parts;
    const parts = rows.flatMap((row) => row.parts);
    const heights = parts.flatMap((part) => (part.offBoard ? [] : (part.height?.mm ?? [])));
    const readings = this.#readings.get(stage) ?? 0;
    const told = [counted(words.steps, stage.steps.length)];
    if (parts.length > 0) told.push(counted(words.parts, parts.length));
    if (heights.length > 0) told.push(filled(words.upTo, Math.max(...heights)));
    if (readings > 0) told.push(counted(words.readings, readings));
    return told.join(" · ");
  }

  #header(): string {
    const { words } = this.#context;
    const { errors } = this.#options;
    const steps = this.#guide.stages.reduce((sum, stage) => sum + stage.steps.length, 0);
    const sub = [counted(words.steps, steps), counted(words.parts, this.#guide.parts.length)];
    const title = escapeHtml(this.#title ?? words.contents);
    const forced =
      errors > 0
        ? `<p class="forced" role="alert">${escapeHtml(filled(words.forced, errors))}</p>\n`
        : "";
    return `<div class="head"><h1>${title}</h1>\n<p class="sub">${sub.join(" · ")}</p>\n${forced}<p class="rules">${escapeHtml(words.rules)}</p>\n</div>\n${this.#opening.join("\n")}\n${this.#contents()}\n${needsHtml(this.#guide, words)}`;
  }

  #contents(): string {
    const { words } = this.#context;
    const entries = this.#sections.map(({ kind, id, title, stage }) => {
      const number = stage ? `<span class="number">${stage.number}</span> ` : "";
      return `<li class="${kind}"><a href="#${escapeHtml(id)}">${number}${escapeHtml(title)}</a></li>`;
    });
    if (entries.length === 0) return "";
    return `<nav class="contents" aria-labelledby="contents"><h2 id="contents">${escapeHtml(words.contents)}</h2>\n<ul>\n${entries.join("\n")}\n</ul></nav>`;
  }

  #footnotes(): string {
    const { footnotes, words } = this.#context;
    const items: string[] = [];
    // A footnote may name another, which then comes behind it.
    for (let index = 0; index < footnotes.order.length; index++) {
      const { pageUri, identifier } = footnotes.order[index]!;
      items.push(`<li id="note-${index + 1}">${this.#footnote(pageUri, identifier)}</li>`);
    }
    if (items.length === 0) return "";
    return `<section class="footnotes" aria-labelledby="notes"><h2 id="notes">${escapeHtml(words.footnotes)}</h2>\n<ol>\n${items.join("\n")}\n</ol></section>`;
  }

  #footnote(pageUri: string, identifier: string): string {
    for (const piece of this.#guide.pieces) {
      if (piece.page.uri !== pageUri) continue;
      const { footnotes } = this.#templates.of(piece);
      const found = footnotes.find((one) => one.identifier === identifier);
      if (found) return new Filler(this.#context, piece).fill(found.html);
    }
    return "";
  }

  #document(main: string): string {
    const { words, language } = this.#context;
    const tag = this.#guide.frontMatter.language?.value ?? language;
    const title = this.#title ?? words.contents;
    const steps = this.#guide.stages.flatMap((stage) => stage.steps);
    // Nothing is fetched, whatever an author's text may hold.
    const policy = `default-src 'none'; img-src data: file: 'self'; style-src 'unsafe-inline'; script-src '${SCRIPT_HASH}'`;
    const said = { inside: words.reading.inside, outside: words.reading.outside };
    const spoken = { ...said, noNumber: words.reading.noNumber, ...words.matching };
    return `<!DOCTYPE html>
<html lang="${escapeHtml(tag)}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
${HTML_MARK}
<meta http-equiv="Content-Security-Policy" content="${policy}">
<title>${escapeHtml(title)}</title>
<style>
${STYLE}${runningHeads(title, this.#guide.stages)}</style>
</head>
<body data-guide="${fingerprint(title)}" data-words="${escapeHtml(JSON.stringify(spoken))}">
<header class="bar"><div class="progress" role="progressbar" aria-label="${escapeHtml(words.progress)}" aria-valuemin="0" aria-valuemax="${steps.length}" aria-valuenow="0"><i></i></div></header>
<main>
${main}
${testRecordHtml(this.#guide, words)}
</main>
<script>${SCRIPT}</script>
</body>
</html>
`;
  }
}
