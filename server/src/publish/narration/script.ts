/**
 * The script of a video: what is said in which order, and how long saying and doing it takes. Said are
 * the titles of stages, their hazard notes, their steps and the prose among them; tables and what
 * stands before the first stage are for readers. Of sections without steps only hazard notes are said.
 */
import type { Stage, Step } from "../../model/guide.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { PieceNode } from "../../model/pieceNode.ts";
import type { TextBlock } from "../../model/prose.ts";
import { readSentences } from "../../model/sentences.ts";
import { readWords } from "../../model/wordReader.ts";
import type { NoteFact } from "../../syntax/facts.ts";
import { signalWord } from "../../syntax/signalWords.ts";
import { titleOf } from "../title.ts";
import { pageWords } from "../words/words.ts";
import { BlockReader } from "./blockText.ts";
import { timesToDo, type WorkTime } from "./doing.ts";
import { spoken } from "./speech.ts";
import { PAUSE, secondsToSpeak } from "./time.ts";
import { narrationWords } from "./words/words.ts";

/** One sentence, from when to when it is spoken, in seconds from the beginning. */
export interface Line {
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

/** What is said in one go: a title, a note, a step, or prose among them. */
export interface Passage {
  readonly kind: "title" | "note" | "step" | "prose";
  readonly step: Step | undefined;
  readonly lines: readonly Line[];
  /** Tools and supplies that the step needs and its words do not name. */
  readonly things: readonly string[];
  /** Of a step. */
  readonly work: WorkTime | undefined;
}

export interface Chapter {
  readonly stage: Stage;
  readonly title: string;
  readonly start: number;
  readonly end: number;
  readonly passages: readonly Passage[];
}

export interface Script {
  readonly title: string;
  /** Words a minute. */
  readonly rate: number;
  readonly chapters: readonly Chapter[];
  /** Seconds. */
  readonly toSpeak: number;
  readonly toDo: number;
}

/** `rate` in words a minute; without one the usual of the guide's language. */
export function scriptOf(guide: GuideState, rate: number | undefined): Script {
  return new Writer(guide, rate ?? narrationWords(guide.language).wordsPerMinute).write();
}

interface Said {
  readonly text: string;
  readonly things: readonly string[];
}

class Writer {
  readonly #guide: GuideState;
  readonly #rate: number;
  readonly #work: ReadonlyMap<Step, WorkTime>;
  readonly #readers = new Map<PieceNode, BlockReader>();
  #now = 0;

  constructor(guide: GuideState, rate: number) {
    this.#guide = guide;
    this.#rate = rate;
    this.#work = timesToDo(guide);
  }

  write(): Script {
    const { stages } = this.#guide;
    const chapters = stages.flatMap((stage) => this.#chapter(stage) ?? []);
    let toDo = 0;
    for (const { seconds } of this.#work.values()) toDo += seconds;
    return {
      title: titleOf(this.#guide) ?? chapters[0]?.title ?? "",
      rate: this.#rate,
      chapters,
      toSpeak: this.#now,
      toDo,
    };
  }

  /** Undefined for a section where nothing is said. */
  #chapter(stage: Stage): Chapter | undefined {
    const heading = stage.heading?.fact.title;
    const isSaid = stage.steps.length > 0 || stage.remarks.some(({ fact }) => fact.kind === "note");
    if (!isSaid) return undefined;
    const start = this.#now;
    const passages = heading ? [this.#passage("title", [{ text: heading, things: [] }])] : [];
    let next = 0;
    for (const { piece, fact, stepsBefore } of stage.remarks) {
      for (; next < stepsBefore; next++) passages.push(this.#step(stage.steps[next]!));
      const block = (one: TextBlock) => (fact.kind === "note" ? one.note : one.fact) === fact;
      const blocks = piece.prose.filter(block);
      if (fact.kind === "note") passages.push(this.#passage("note", this.#note(fact, blocks)));
      else if (stage.steps.length > 0) {
        const prose = blocks.filter((one) => !one.note && isProse(one, stage));
        if (prose.length > 0) passages.push(this.#passage("prose", prose.map(this.#said)));
      }
    }
    for (; next < stage.steps.length; next++) passages.push(this.#step(stage.steps[next]!));
    const title = heading || (this.#guide.frontMatter.title?.value ?? "");
    return { stage, title, start, end: this.#now, passages };
  }

  #step(step: Step): Passage {
    // The cells of a row that is a step are said as one sentence; other tables are for readers.
    const isRow = step.prose[0]?.fact.block === "cell";
    const isSaid = ({ note, fact }: TextBlock) => !note && (isRow || fact.block !== "cell");
    const said = step.prose.filter(isSaid).map(this.#said);
    const row = { text: said.map(({ text }) => text).join(", "), things: thingsOf(said) };
    return this.#passage("step", isRow ? [row] : said, step);
  }

  /** An alert has its signal word in the guide's language. */
  #note(note: NoteFact, blocks: readonly TextBlock[]): readonly Said[] {
    const said = blocks.map(this.#said);
    if (!note.alert || !said[0]) return said;
    const word = signalWord(note.signal, this.#guide.language ?? "en");
    const text = said[0].text.replace(/^\[![A-Za-z]+\]/, `${word}:`);
    return [{ ...said[0], text }, ...said.slice(1)];
  }

  readonly #said = (block: TextBlock): Said => {
    const piece = block.piece as PieceNode;
    let reader = this.#readers.get(piece);
    if (!reader) {
      reader = new BlockReader(piece, this.#guide, pageWords(this.#guide.language));
      this.#readers.set(piece, reader);
    }
    const { text, things } = reader.read(block.fact);
    return { text: spoken(text, narrationWords(this.#guide.language)), things };
  };

  #passage(kind: Passage["kind"], said: readonly Said[], step?: Step): Passage {
    const lines: Line[] = [];
    for (const text of said.flatMap((one) => sentencesOf(one.text))) {
      const start = this.#now;
      this.#now += Math.max(PAUSE, secondsToSpeak(text, this.#rate));
      lines.push({ text, start, end: this.#now });
    }
    if (lines.length > 0) this.#now += PAUSE;
    const work = step && this.#work.get(step);
    return { kind, step, lines, things: thingsOf(said), work };
  }
}

/** Tables are for readers; the stage's own heading has been said. */
function isProse({ fact }: TextBlock, stage: Stage): boolean {
  return fact.block !== "cell" && fact.span.start !== stage.heading?.fact.span.start;
}

function thingsOf(said: readonly Said[]): readonly string[] {
  return [...new Set(said.flatMap(({ things }) => things))];
}

function sentencesOf(text: string): string[] {
  return readSentences(text, readWords(text, 0), 0).map(({ start, end }, index) =>
    // Signs before the first word belong to the sentence.
    text.slice(index === 0 ? 0 : start, end).trim(),
  );
}
