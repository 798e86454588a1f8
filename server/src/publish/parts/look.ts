/** What the builder sees on a part: its bands, the code printed on it, which way round it goes. */
import { markingOf } from "../../features/part/markings.ts";
import type { Part } from "../../model/parts.ts";
import type { Language } from "../../text/language.ts";
import { wordOfColour } from "../../trade/marking/colourWords.ts";
import { escapeHtml } from "../html.ts";
import type { PageWords } from "../words/form.ts";
import { filled } from "../words/words.ts";
import { drawBands } from "./bandDrawing.ts";
import { polarMark } from "./polarity.ts";

/** In plain text: `bands yellow violet red gold`, `printed 104`. */
export function lookText(part: Part, words: PageWords, language: Language): string[] {
  return [...bandText(part, words, language), ...otherText(part, words)];
}

/** As HTML; empty where nothing is known. */
export function lookHtml(part: Part, words: PageWords, language: Language): string {
  const { bands, percent } = markingOf(part);
  const drawn = bands.slice(0, 1).map((way) => {
    const colours = way.map((colour) => wordOfColour(colour, language)).join(" ");
    return drawBands(way, percent !== undefined, escapeHtml(filled(words.bands, colours)));
  });
  return [...drawn, ...otherText(part, words).map(escapeHtml)].join(" · ");
}

function bandText(part: Part, words: PageWords, language: Language): string[] {
  return markingOf(part)
    .bands.slice(0, 1)
    .map((way) => filled(words.bands, way.map((one) => wordOfColour(one, language)).join(" ")));
}

function otherText(part: Part, words: PageWords): string[] {
  const { bands, printed } = markingOf(part);
  const polarity = polarMark(part);
  const texts: string[] = [];
  // Of several codes the first is the usual one; banded resistors carry none.
  if (bands.length === 0 && printed[0]) texts.push(filled(words.printed, printed[0]));
  if (polarity) texts.push(words.polarity[polarity]);
  return texts;
}
