/** What the words before a run of designators name: its kind of part, a place on the board, or a socket. */
import { kindOf } from "../../model/partKind.ts";
import type { Part } from "../../model/parts.ts";
import type { Sentence, TextBlock } from "../../model/prose.ts";
import type { Word } from "../../text/stems.ts";
import { classesNamed, type PartClass } from "../../trade/partWords.ts";
import type { Run } from "./runs.ts";
import type { AdoptLexicon } from "./words.ts";

/** Kinds that guides also call by the name of the wider one. */
const WIDER: { readonly [kind in PartClass]?: PartClass } = {
  electrolytic: "capacitor",
  led: "diode",
  potentiometer: "resistor",
};

/** The beginning of a sentence, up to the first word that relates it to something, or to the run. */
export class ObjectWords {
  /** The words before the run, the related ones too. */
  readonly #words: readonly Word[];
  readonly #lexicon: AdoptLexicon;
  readonly #object: readonly Word[];
  readonly #text: string;
  readonly #parts: readonly Part[];

  constructor(run: Run, sentence: Sentence, block: TextBlock, lexicon: AdoptLexicon) {
    this.#lexicon = lexicon;
    this.#words = sentence.words.filter((word) => word.end <= run.span.start);
    const related = this.#words.findIndex(({ lower }) => lexicon.relations.has(lower));
    this.#object = related < 0 ? this.#words : this.#words.slice(0, related);
    const end = this.#object.at(-1)?.end ?? sentence.start;
    this.#text = block.at({ start: sentence.start, end });
    this.#parts = run.items.flatMap(({ parts }) => parts);
  }

  /** "Add the diode D1": the object is of the parts' own kind. */
  get namesKind(): boolean {
    const named = classesNamed(this.#text);
    return this.#parts.every((part) => {
      const kind = kindOf(part);
      const wider = WIDER[kind];
      return named.includes(kind) || (wider !== undefined && named.includes(wider));
    });
  }

  /** "Solder a 1k resistor to R2": the run is the place of what is fitted, and of its kind. */
  get leadsToPlace(): boolean {
    const last = this.#words.at(-1);
    const isPlace = last !== undefined && this.#lexicon.places.has(last.lower);
    return isPlace && this.#words.length === this.#object.length + 1 && this.namesKind;
  }

  /** "Solder the 8-pin socket (U1)": a socket is fitted where the chips come later. */
  get isSocketOfOthers(): boolean {
    const [hit] = this.#lexicon.sockets.find(this.#object);
    return hit !== undefined && this.#parts.some((part) => kindOf(part) === "ic");
  }
}
