/** Fills the holes of a piece with HTML: the one place where they get their content. */
import type { GuideState } from "../../model/guideState.ts";
import type { PieceNode, StepNode } from "../../model/pieceNode.ts";
import type { Figure, PartMark } from "../../syntax/dialect.ts";
import type { Language } from "../../text/language.ts";
import type { Content } from "../content.ts";
import { shownFigure, shownReading } from "../figures.ts";
import { escapeHtml, keepUnits, numberId } from "../html.ts";
import type { Hole, Picture, Template } from "../piece/holes.ts";
import type { PageWords } from "../words/form.ts";
import { filled } from "../words/words.ts";
import { shownMark } from "./marks.ts";
import { noteHead } from "./notes.ts";
import { readingField } from "./readings.ts";
import type { StepKeys } from "./stepKeys.ts";
import { worksheet } from "./worksheet.ts";

/** Where the pictures of the page come from. */
export interface PictureSource {
  /** The address to show, or undefined where there is no such picture. */
  source(pageUri: string, url: string): string | undefined;
}

/** Pictures of a page that becomes a file. */
export interface PagePictures extends PictureSource {
  /** The page put together, with its pictures in it. */
  content(page: string): Content;
}

export interface FillContext {
  readonly guide: GuideState;
  readonly words: PageWords;
  readonly language: Language;
  readonly pictures: PictureSource;
  readonly keys: Pick<StepKeys, "of">;
  /** Footnotes in the order in which they are first named. */
  readonly footnotes: Footnotes;
  /** An id that nothing else on the page has. */
  freshId(): string;
}

/** Numbers footnotes as they come. */
export class Footnotes {
  readonly order: { readonly pageUri: string; readonly identifier: string }[] = [];

  number(pageUri: string, identifier: string): number {
    const same = (one: (typeof this.order)[number]) =>
      one.pageUri === pageUri && one.identifier === identifier;
    const index = this.order.findIndex(same);
    return index >= 0 ? index + 1 : this.order.push({ pageUri, identifier });
  }
}

/**
 * Signs that must not begin a line. Behind a button browsers let a line begin with any of them, and heed
 * no word joiner there (seen in Chromium), so that both stand in an element that is not broken.
 */
const CLOSING = /^[.,;:!?)\]”“»%…]+/;

/** What of the text behind a figure must stay with it. */
function signsBehind(html: string, next: Template[number] | undefined): string {
  if (!html.startsWith("<button") || typeof next !== "string") return "";
  return CLOSING.exec(next)?.[0] ?? "";
}

/** Longer items are wrapped on a phone; shorter ones stay in one piece. */
const LONGEST_UNBROKEN = 22;

function itemHtml(item: string): string {
  const long = item.length > LONGEST_UNBROKEN ? " long" : "";
  return `<span class="ref${long}">${escapeHtml(item)}</span>`;
}

export class Filler {
  readonly #context: FillContext;
  readonly #piece: PieceNode;

  constructor(context: FillContext, piece: PieceNode) {
    this.#context = context;
    this.#piece = piece;
  }

  fill(template: Template): string {
    let page = "";
    let signs = "";
    for (const [index, part] of template.entries()) {
      if (typeof part === "string") {
        page += part.slice(signs.length);
        signs = "";
        continue;
      }
      const html = this.#hole(part);
      signs = signsBehind(html, template[index + 1]);
      page += signs ? `<span class="kept">${html}${signs}</span>` : html;
    }
    return page;
  }

  #hole(hole: Hole): string {
    const { language } = this.#context;
    switch (hole.kind) {
      case "tick":
        return this.#tick(hole.start, hole.as);
      case "mark":
        return this.#mark(hole.mark, hole.alone);
      case "mention":
        return this.#mention(hole.name);
      case "figure":
        return this.#figure(hole.figure);
      case "reading":
        return this.#reading(hole.figure);
      case "worksheet":
        return worksheet(hole.mark, this.#piece, this.#context);
      case "noteHead":
        return noteHead(hole, this.#piece, language);
      case "picture":
        return this.#picture(hole);
      case "footnote":
        return this.#footnote(hole.identifier);
    }
  }

  #tick(start: number, as: "inline" | "cell"): string {
    const step = this.#piece.steps.find((one) => one.fact.span.start === start);
    if (as === "cell") return `<td class="stepcell">${step ? this.#label(step, true) : ""}</td>`;
    return step ? this.#label(step, true) : "";
  }

  /** Number and box of a step. */
  label(step: StepNode): string {
    return this.#label(step, false);
  }

  /** Steps with a margin of their own have their id there. */
  #label(step: StepNode, hasId: boolean): string {
    const { words, keys } = this.#context;
    const { number } = step;
    const id = hasId ? ` id="step-${numberId(number)}"` : "";
    const done = escapeHtml(filled(words.stepDone, number));
    return `<label class="tick"${id}><span class="number">${number}</span><input type="checkbox" data-step="${keys.of(step)}" aria-label="${done}"></label>`;
  }

  #mark(mark: PartMark, alone: boolean): string {
    const { guide, words } = this.#context;
    const shown = shownMark(mark, this.#piece, guide, words);
    const apart = (html: string) => (alone ? `(${html})` : html);
    switch (shown.kind) {
      case "nothing":
        return "";
      case "text":
        return escapeHtml(shown.text);
      case "thing":
        return apart(`<span class="thing">${escapeHtml(keepUnits(shown.text))}</span>`);
      case "see": {
        const text = escapeHtml(shown.text);
        return shown.step ? `<a href="#step-${numberId(shown.step)}">${text}</a>` : text;
      }
      case "items": {
        const items = shown.items.map(itemHtml);
        // An amount stays with its unit.
        const value = shown.stated?.replace(/(?<=\d) /g, "\u00a0");
        const stated = value ? ` = ${escapeHtml(value)}` : "";
        return apart(items.join(", ") + stated);
      }
    }
  }

  #mention(name: string): string {
    const known = this.#context.guide.find(name) !== undefined;
    return known ? `<span class="ref">${escapeHtml(name)}</span>` : escapeHtml(name);
  }

  /** The value; its range opens on demand, without a script. */
  #figure(figure: Figure): string {
    const { text, details } = shownFigure(figure, this.#piece, this.#context.guide);
    if (details.length === 0) return `<span class="figure">${escapeHtml(text)}</span>`;
    const id = this.#context.freshId();
    const lines = details.map(escapeHtml).join("<br>");
    return `<button type="button" class="figure" popovertarget="${id}">${escapeHtml(text)}</button><span class="details" id="${id}" popover>${lines}</span>`;
  }

  #reading(figure: Figure): string {
    const reading = shownReading(figure, this.#piece, this.#context.guide);
    return readingField(reading, this.#context.words, this.#context.freshId());
  }

  #picture({ url, alt, title, width }: Picture): string {
    const { pictures, words } = this.#context;
    const shown = escapeHtml(alt || url);
    if (/^https?:/i.test(url)) {
      return `<a href="${escapeHtml(url)}" rel="noreferrer">${escapeHtml(words.pictureElsewhere).replace("#", () => shown)}</a>`;
    }
    const source = pictures.source(this.#piece.page.uri, url);
    if (source === undefined) {
      return `<span class="missing">${escapeHtml(words.pictureMissing).replace("#", () => shown)}</span>`;
    }
    const hint = title ? ` title="${escapeHtml(title)}"` : "";
    const size = width ? ` width="${width}"` : "";
    return `<img src="${escapeHtml(source)}" alt="${escapeHtml(alt)}"${hint}${size}>`;
  }

  #footnote(identifier: string): string {
    const number = this.#context.footnotes.number(this.#piece.page.uri, identifier);
    return `<sup><a href="#note-${number}">${number}</a></sup>`;
  }
}
