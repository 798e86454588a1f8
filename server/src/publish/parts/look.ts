/** What the builder sees on a part: its bands, the code printed on it, which way round it goes. */
import { markingOf, UNMARKED } from "../../features/part/markings.ts";
import type { Guide } from "../../model/guide.ts";
import type { Part } from "../../model/parts.ts";
import type { Language } from "../../text/language.ts";
import type { Colour } from "../../trade/marking/colours.ts";
import { wordOfColour } from "../../trade/marking/colourWords.ts";
import { escapeHtml } from "../html.ts";
import type { PageWords } from "../words/form.ts";
import { filled } from "../words/words.ts";
import { drawBands } from "./bandDrawing.ts";
import { polarMark } from "./polarity.ts";

/** As HTML; empty where nothing is known. */
export function lookHtml(part: Part, guide: Guide, words: PageWords): string {
  const { bands, percent } = marksOn(part, guide);
  const drawn = bands
    .slice(0, 1)
    .map((way) =>
      drawBands(way, percent !== undefined, escapeHtml(bandWords(way, words, guide.language))),
    );
  return [...drawn, ...otherText(part, guide, words).map(escapeHtml)].join(" · ");
}

/** A part that the builder makes carries no mark. */
function marksOn(part: Part, guide: Guide) {
  const isMade = guide.uses(part).some(({ role }) => role === "make");
  return isMade ? UNMARKED : markingOf(part);
}

/** The same in words: bands and codes, and which way round it goes. */
export function lookWords(part: Part, guide: Guide, words: PageWords): readonly string[] {
  const { bands } = marksOn(part, guide);
  const drawn = bands.slice(0, 1).map((way) => bandWords(way, words, guide.language));
  return [...drawn, ...otherText(part, guide, words)];
}

function bandWords(way: readonly Colour[], words: PageWords, language: Language = "en"): string {
  return filled(words.bands, way.map((one) => wordOfColour(one, language)).join(" "));
}

function otherText(part: Part, guide: Guide, words: PageWords): string[] {
  const { bands, printed, usual } = marksOn(part, guide);
  const polarity = polarMark(part);
  const texts: string[] = [];
  // Where there are bands there is no print.
  if (bands.length === 0 && printed[0]) {
    texts.push(filled(words.printed, printed.slice(0, usual).join(" / ")));
  }
  if (polarity) texts.push(words.polarity[polarity]);
  return texts;
}
