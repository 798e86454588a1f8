/** Finds rows of colour words in a text: `yellow violet red gold`, `gelb-violett-rot`. */

import type { Language } from "../../text/language.ts";
import type { Span } from "../../text/span.ts";
import { StemList, type Word } from "../../text/stems.ts";
import { type Colour, readBands } from "../../trade/marking/colours.ts";
import { AND, BAND_WORDS, colourOfWord } from "../../trade/marking/colourWords.ts";
import { isPreferred } from "../../trade/resistors/preferred.ts";
import type { Worded } from "./worded.ts";

export interface BandRun extends Span {
  readonly colours: readonly Colour[];
  /** Where each colour stands. */
  readonly words: readonly Span[];
}

const LEAST = 3;
const MOST = 6;
const BETWEEN = /^[\s,;:/()\-–—]{1,4}$/;
const TOLD = new StemList<true>(BAND_WORDS.map((pattern) => [pattern, true]));

/**
 * The runs of three to six colours that are bands, as far as the text alone can tell; all of them
 * where it is known to speak of bands.
 */
export function bandRuns(worded: Worded, language: Language, known = false): readonly BandRun[] {
  const runs = colourRuns(worded, language);
  if (runs.length === 0) return runs;
  const told = known || TOLD.has(worded.words);
  return runs.filter((run) => told || areLikely(run.colours));
}

function colourRuns(worded: Worded, language: Language): readonly BandRun[] {
  const runs: BandRun[] = [];
  let colours: Colour[] = [];
  let words: Word[] = [];
  const close = () => {
    if (colours.length === 0) return;
    if (colours.length >= LEAST && colours.length <= MOST) {
      runs.push({ start: words[0]!.start, end: words.at(-1)!.end, colours, words });
    }
    [colours, words] = [[], []];
  };
  let before: Word | undefined;
  for (const word of worded.words) {
    const colour = colourOfWord(word.lower, language);
    const joins = before === undefined || BETWEEN.test(between(worded, before, word));
    if (!colour && joins && colours.length > 0 && AND.has(word.lower)) {
      before = word;
      continue;
    }
    if (!colour || !joins) close();
    if (colour) {
      colours.push(colour);
      words.push(word);
    }
    before = colour ? word : undefined;
  }
  close();
  return runs;
}

function between({ text, start }: Worded, before: Word, word: Word): string {
  return text.slice(before.end - start, word.start - start);
}

/** Values of resistors that kits hold, in Ω. */
const USUAL = { least: 0.1, most: 100e6 };
const USUAL_TOLERANCES = [1, 2, 5, 10, 0.5, 0.1];
/** No band of a figure has these: a row that begins with one begins at the wrong end. */
const NO_FIGURE: ReadonlySet<Colour> = new Set<Colour>(["gold", "silver"]);

/** Red, black and white may also be wires: a row of colours counts if it could be on a resistor. */
function areLikely(colours: readonly Colour[]): boolean {
  const reading = readBands(NO_FIGURE.has(colours[0]!) ? colours.toReversed() : colours);
  if (!reading || reading.ohms < USUAL.least || reading.ohms > USUAL.most) return false;
  if (colours.length > LEAST) {
    return reading.tolerances.some((one) => USUAL_TOLERANCES.includes(one));
  }
  return isPreferred(reading.ohms, "E24");
}
