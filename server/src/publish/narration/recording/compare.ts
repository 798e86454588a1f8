/**
 * Holds the cues of a recording against the guide as it is now: steps and hazard notes that are not
 * said, or in another order, and other designators or figures in them. Of a recording that was spoken
 * from a published script also every passage whose words have changed, and cues that no passage has.
 */
import { listNames } from "../../../checks/words.ts";
import type { GuideState } from "../../../model/guideState.ts";
import { readDesignator } from "../../../syntax/designators.ts";
import type { Script } from "../script.ts";
import { narrationWords } from "../words/words.ts";
import { findElsewhere } from "./elsewhere.ts";
import { type Paired, pair, type Spoken } from "./passages.ts";
import type { ReadCues } from "./readCues.ts";
import type { Token } from "./spokenTokens.ts";

export interface Difference {
  readonly kind: "missing" | "order" | "parts" | "figures" | "reworded" | "gone";
  /** Seconds in the recording; undefined for what it does not say. */
  readonly at: number | undefined;
  /** `step 3.2`, `a hazard note of stage 3`; empty for what no passage says. */
  readonly place: string;
  /** A sentence about it, without the place. */
  readonly message: string;
}

/** In the order of the guide, what is gone at the end. */
export function compareRecording(
  script: Script,
  guide: GuideState,
  { cues, isScript }: ReadCues,
): Difference[] {
  const letters = new Set(guide.parts.flatMap(({ name }) => readDesignator(name)?.letters ?? []));
  const paired = pair(script, cues, { words: narrationWords(guide.language), letters });
  return new Comparison(paired, cues, isScript).differences();
}

class Comparison {
  readonly #paired: Paired;
  readonly #cues: ReadCues["cues"];
  readonly #isScript: boolean;
  /** Words of the recording that are said in their turn, or at another place. */
  readonly #known: Uint8Array;

  constructor(paired: Paired, cues: ReadCues["cues"], isScript: boolean) {
    this.#paired = paired;
    this.#cues = cues;
    this.#isScript = isScript;
    this.#known = Uint8Array.from(paired.owners, (owner) => (owner < 0 ? 0 : 1));
  }

  differences(): Difference[] {
    const found = this.#paired.spoken.flatMap((spoken, index) => {
      const { kind } = spoken.passage;
      const isTold = kind === "step" || kind === "note" || this.#isScript;
      if (!isTold || spoken.tokens.length === 0) return [];
      return spoken.region ? this.#inTurn(spoken, index) : [this.#outOfTurn(spoken)];
    });
    return this.#isScript ? [...found, ...this.#gone()] : found;
  }

  #outOfTurn(spoken: Spoken): Difference {
    const place = placeOf(spoken);
    const window = findElsewhere(spoken.tokens, this.#paired);
    if (!window) return { kind: "missing", at: undefined, place, message: "is not said." };
    this.#known.fill(1, window.start, window.end);
    const before = this.#paired.owners.subarray(0, window.start).findLast((owner) => owner >= 0);
    const moved = before === undefined ? "at the beginning" : `after ${this.#nameOf(before)}`;
    const message = `is said in another order: ${moved}.`;
    return { kind: "order", at: this.#timeOf(window.start), place, message };
  }

  #nameOf(index: number): string {
    return placeOf(this.#paired.spoken[index]!);
  }

  #inTurn(spoken: Spoken, index: number): Difference[] {
    const at = this.#timeOf(spoken.region!.start);
    const place = placeOf(spoken);
    const { own, around } = this.#heard(spoken, index);
    const near = [index - 1, index + 1].flatMap((one) => this.#paired.spoken[one]?.tokens ?? []);
    const parts = partsMessage(spoken.tokens, own, around, near);
    const figures = figuresMessage(spoken.tokens, around);
    const told: Difference[] = [];
    if (parts) told.push({ kind: "parts", at, place, message: parts });
    if (figures) told.push({ kind: "figures", at, place, message: figures });
    if (told.length === 0 && this.#isScript && isReworded(spoken)) {
      told.push({ kind: "reworded", at, place, message: "has other words now." });
    }
    return told;
  }

  /** Words from the passage's first to its last, and with those around that no other passage has. */
  #heard({ region, tokens }: Spoken, index: number) {
    const { said, owners } = this.#paired;
    const isFree = (at: number) => at >= 0 && at < said.length && owners[at] === -1;
    let { start, end } = region!;
    for (let left = tokens.length; left > 0 && isFree(start - 1); left--) start--;
    for (let left = tokens.length; left > 0 && isFree(end + 1); left--) end++;
    const mine = (_: Token, at: number) =>
      owners[start + at] === -1 || owners[start + at] === index;
    const around = said.slice(start, end + 1).filter(mine);
    return { own: said.slice(region!.start, region!.end + 1), around };
  }

  /** Cues of which hardly a word is the guide's. */
  #gone(): Difference[] {
    const totals = new Map<number, { words: number; known: number }>();
    for (const [at, { cue }] of this.#paired.said.entries()) {
      const total = totals.get(cue) ?? { words: 0, known: 0 };
      totals.set(cue, total);
      total.words++;
      total.known += this.#known[at]!;
    }
    return [...totals]
      .filter(([, { words, known }]) => known < words / 2)
      .map(([cue]) => {
        const { start, text } = this.#cues[cue]!;
        const message = `No step says this any more: "${text}"`;
        return { kind: "gone", at: start, place: "", message };
      });
  }

  #timeOf(at: number): number {
    return this.#cues[this.#paired.said[at]!.cue]!.start;
  }
}

function placeOf({ passage: { step, kind }, chapter: { stage, title } }: Spoken): string {
  if (step) return `step ${step.number}`;
  const where = stage.steps.length > 0 ? `stage ${stage.number}` : `"${title}"`;
  if (kind === "title") return `the title of ${where}`;
  return kind === "note" ? `a hazard note of ${where}` : `the text of ${where}`;
}

/** A word changed, added or left out. */
function isReworded({ places, region }: Spoken): boolean {
  return places.includes(-1) || region!.end - region!.start + 1 !== places.length;
}

function partsMessage(
  tokens: readonly Token[],
  own: readonly Token[],
  around: readonly Token[],
  near: readonly Token[],
): string | undefined {
  const [wanted, heard, neighbours] = [tokens, around, near].map(partsOf) as [
    ReadonlySet<string>,
    ReadonlySet<string>,
    ReadonlySet<string>,
  ];
  const missing = [...wanted].filter((name) => !heard.has(name));
  const candidates = missing.length > 0 ? heard : partsOf(own);
  const others = [...candidates].filter((name) => !wanted.has(name) && !neighbours.has(name));
  return messageOf(named(missing), named(others));
}

function partsOf(tokens: readonly Token[]): ReadonlySet<string> {
  return new Set(tokens.flatMap(({ parts }) => parts));
}

function named(names: readonly string[]): string {
  return listNames(names.map((name) => ({ name })));
}

function figuresMessage(tokens: readonly Token[], around: readonly Token[]): string | undefined {
  const [wanted, heard] = [figuresOf(tokens), figuresOf(around)];
  const missing = [...wanted].filter(([key]) => !heard.has(key)).map(([, text]) => text);
  if (missing.length === 0) return undefined;
  const others = [...heard].filter(([key]) => !wanted.has(key)).map(([, text]) => text);
  return messageOf(missing.join(", "), others.join(", "));
}

function figuresOf(tokens: readonly Token[]): ReadonlyMap<string, string> {
  const figures = tokens.filter(({ kind }) => kind === "figure");
  return new Map(figures.map(({ key, text }) => [key, text]));
}

function messageOf(missing: string, others: string): string | undefined {
  if (missing && others) return `has ${missing}; the recording says ${others}.`;
  if (missing) return `has ${missing}, which the recording does not say.`;
  return others ? `does not have ${others}, which the recording says.` : undefined;
}
