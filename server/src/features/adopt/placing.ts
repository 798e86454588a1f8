/**
 * Sentences that have parts put in and not soldered yet: "Insert LED1–LED7, but do not solder them yet."
 * The usual ways to say so in build guides, by language (common practice).
 */
import type { Sentence, TextBlock } from "../../model/prose.ts";
import type { Language } from "../../text/language.ts";
import type { Span } from "../../text/span.ts";

/** "do not solder", "without soldering"; what stands between is short, so that little is read twice. */
const NOT_SOLDERED: Readonly<Record<Language, RegExp>> = {
  en: /(?:(?<!\p{L})(?:not|never|without)|n['’]t)\s(?:yet\s)?solder/iu,
  de: /(?<!\p{L})(?:nicht\s(?:an|ein|fest|ver)?(?:ge)?löt|ohne\s(?:\p{L}{1,12}\s){0,2}(?:an|ein|fest|ver)?(?:zu\s?)?löten|löte[nt]?\s(?:\p{L}{1,12}\s){0,4}nicht(?!\p{L}))/iu,
  fr: /(?<!\p{L})(?:ne\s(?:les?\s|la\s)?soude\p{L}{0,3}\spas|ne\spas\s(?:encore\s)?(?:les?\s|la\s)?souder|sans\s(?:les?\s|la\s)?souder)/iu,
  nl: /(?<!\p{L})(?:niet\s(?:vast\s?)?solde?er|zonder\s(?:\p{L}{1,12}\s)?(?:vast\s?)?te\ssolderen|soldeer\s(?:\p{L}{1,12}\s){0,4}niet(?!\p{L}))/iu,
  es: /(?<!\p{L})(?:no|sin)\s(?:l[oa]s?\s)?(?:sueld|sold)/iu,
};

/** Whether a run of designators in the sentence is put in and not soldered, or not meant at all. */
export type Soldering = "as told" | "not yet" | "not meant";

export class PlacingReader {
  readonly #block: TextBlock;
  readonly #pattern: RegExp | undefined;

  constructor(block: TextBlock, language: Language | undefined) {
    this.#block = block;
    this.#pattern = language && NOT_SOLDERED[language];
  }

  /**
   * `runs` are all that the block names. Words that name parts of their own ("but do not solder R5 yet")
   * say nothing of those before them; words that name none speak of what came before, also in the sentence
   * before.
   */
  of(run: Span, sentence: Sentence, runs: readonly Span[]): Soldering {
    const own = this.#deniedAt(sentence);
    if (own !== undefined) {
      if (run.start > own) return "not meant";
      return namesOne(runs, own, sentence.end) ? "as told" : "not yet";
    }
    const next = this.#block.sentences[this.#block.sentences.indexOf(sentence) + 1];
    const isDenied = next && this.#deniedAt(next) !== undefined;
    return isDenied && !namesOne(runs, next.start, next.end) ? "not yet" : "as told";
  }

  /** Where in the sentence soldering is denied. */
  #deniedAt(sentence: Sentence): number | undefined {
    const at = this.#pattern ? this.#block.at(sentence).search(this.#pattern) : -1;
    return at < 0 ? undefined : sentence.start + at;
  }
}

function namesOne(runs: readonly Span[], from: number, to: number): boolean {
  return runs.some(({ start }) => start >= from && start < to);
}
