/** The whole guide as one HTML file that needs nothing else. */

import { SCRIPT, SCRIPT_HASH, STYLE } from "virtual:page";
import type { GuideState } from "../../model/guideState.ts";
import type { PieceNode } from "../../model/pieceNode.ts";
import type { StageNode } from "../../model/stageNode.ts";
import { type Block, blocksOf } from "../blocks.ts";
import { documentHead } from "../documentHead.ts";
import { type FillContext, Filler, Footnotes, type PagePictures } from "../fill/filler.ts";
import { fingerprint, StepKeys } from "../fill/stepKeys.ts";
import { escapeHtml } from "../html.ts";
import type { Templates } from "../piece/templates.ts";
import { titleOf } from "../title.ts";
import { filled, pageWords } from "../words/words.ts";
import {
  contentsHtml,
  HeadingIds,
  headHtml,
  type SectionHead,
  sectionTitle,
  stageIntro,
} from "./frame.ts";
import { needsHtml } from "./needs.ts";
import { runningHead, titleInMargin } from "./runningHeads.ts";
import { testRecordHtml } from "./testRecord.ts";

export interface PageOptions {
  readonly pictures: PagePictures;
  /** Errors that the checks found, when the page is published all the same. */
  readonly errors: number;
}

export function guidePage(guide: GuideState, templates: Templates, options: PageOptions): string {
  return new GuidePage(guide, templates, options).write();
}

interface Section extends SectionHead {
  readonly body: string[];
}

class GuidePage {
  readonly #guide: GuideState;
  readonly #templates: Templates;
  readonly #options: PageOptions;
  readonly #context: FillContext;
  readonly #ids = new HeadingIds();
  readonly #opening: string[] = [];
  readonly #sections: Section[] = [];
  readonly #title: string | undefined;
  #lastId = 0;
  /** Whether no block has come yet: a heading of level 1 is the title then. */
  #isFirst = true;

  constructor(guide: GuideState, templates: Templates, options: PageOptions) {
    this.#guide = guide;
    this.#templates = templates;
    this.#options = options;
    this.#title = titleOf(guide);
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
    const stages = new Map<unknown, StageNode>(
      this.#guide.stages.map((stage) => [stage.heading?.fact, stage]),
    );
    for (const piece of this.#guide.pieces) this.#addPiece(piece, stages);
    const content = this.#sections.map((one) => this.#section(one)).join("\n");
    const notes = this.#footnotes();
    return this.#document(`${this.#header()}\n${content}\n${notes}`);
  }

  #addPiece(piece: PieceNode, stages: ReadonlyMap<unknown, StageNode>): void {
    const { words } = this.#context;
    const filler = new Filler(this.#context, piece);
    const blocks = blocksOf(piece, this.#templates.of(piece), filler, words);
    const headings = piece.facts.facts.filter((fact) => fact.kind === "heading");
    for (const block of blocks) {
      const fact = headings.find(({ span }) => span.start === block.start);
      if (block.kind === "heading" && block.level! <= 2 && fact) {
        const stage = block.level === 2 ? stages.get(fact) : undefined;
        const isTitle = this.#isFirst && block.level === 1;
        if (!isTitle) this.#open(block, fact.title, stage?.steps.length ? stage : undefined);
      } else this.#body.push(this.#blockHtml(block, fact?.title));
      this.#isFirst = false;
    }
  }

  get #body(): string[] {
    return this.#sections.at(-1)?.body ?? this.#opening;
  }

  #open(block: Block, title: string, stage: StageNode | undefined): void {
    const kind = block.level === 1 ? "part" : "stage";
    const id = this.#ids.of(title);
    this.#sections.push({ kind, id, title, heading: block.html, stage, body: [] });
  }

  #blockHtml({ kind, level, html }: Block, title: string | undefined): string {
    if (kind !== "heading") return html;
    const id = title ? ` id="${escapeHtml(this.#ids.of(title))}"` : "";
    return `<h${level}${id}>${html}</h${level}>`;
  }

  #section(section: Section): string {
    const { kind, id, title, stage, body } = section;
    const named = `aria-labelledby="${escapeHtml(id)}"`;
    const blocks = [sectionTitle(section)];
    if (!stage) {
      return `<section class="${kind}" ${named}>\n${[...blocks, ...body].join("\n")}\n</section>`;
    }
    blocks.unshift(runningHead(stage, escapeHtml(title)));
    blocks.push(stageIntro(stage, this.#guide, this.#context.words));
    return `<section class="stage steps" id="stage-${stage.number}" ${named}>\n${[...blocks, ...body].join("\n")}\n</section>`;
  }

  #header(): string {
    const { words } = this.#context;
    const { errors } = this.#options;
    const forced =
      errors > 0
        ? `<p class="forced" role="alert">${escapeHtml(filled(words.forced, errors))}</p>\n`
        : "";
    const head = headHtml(this.#guide, this.#title, forced, words);
    const contents = contentsHtml(this.#sections, words);
    return `${head}\n${this.#opening.join("\n")}\n${contents}\n${needsHtml(this.#guide, words)}`;
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
    const style = `${STYLE}${titleInMargin(title)}`;
    return `${documentHead({ language: tag, title, policy, style })}
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
