/** Goes through the events of one stage and notes what brings a hazard and what covers it. */
import type { Guide, Stage, Step } from "../../model/guide.ts";
import type { Part } from "../../model/parts.ts";
import type { Figure } from "../../syntax/dialect.ts";
import type { Span } from "../../text/span.ts";
import type { Hazard } from "../../trade/hazards/hazards.ts";
import type { Before } from "./before.ts";
import type { Covered, PowerUp, StageCoverage, Timed } from "./coverage.ts";
import { eventsIn, type PieceEvent } from "./events.ts";
import type { Ground } from "./ground.ts";
import type { NoteReading } from "./note.ts";
import { guideNoteCovers, hazardsOf, isOwedOnce, type Trigger } from "./triggers.ts";

/** A list that is copied when it is first added to. */
class Growing<T> {
  #list: readonly T[];
  #own = false;

  constructor(list: readonly T[]) {
    this.#list = list;
  }

  get list(): readonly T[] {
    return this.#list;
  }

  add(one: T): void {
    if (this.#list.includes(one)) return;
    this.#list = this.#own ? this.#list : [...this.#list];
    this.#own = true;
    (this.#list as T[]).push(one);
  }
}

export class StageReader {
  readonly coverage: StageCoverage;
  readonly after: Before;
  readonly #stage: Stage;
  readonly #before: Before;
  readonly #ground: Ground;
  readonly #events: readonly PieceEvent[];

  /** Notes that cover what comes next in the stage. */
  readonly #notes: NoteReading[];
  readonly #guideNotes: Growing<NoteReading>;
  #nextNotes = new Growing<NoteReading>([]);
  readonly #met: Growing<string>;
  readonly #metHere = new Map<string, Step>();
  readonly #inPlace: Growing<Part>;
  readonly #powered: Growing<Part>;
  readonly #found: { trigger: Trigger; hazard: Hazard; note: NoteReading | undefined }[] = [];
  /** A step of the stage has begun. */
  #begun = false;
  /** A heading of level 1 stands behind the steps: what follows belongs to the next stage. */
  #ended = false;
  #powerNext: Span | undefined;
  #power: { readonly step: Step; readonly span: Span } | undefined;
  #limit: Timed = { when: "never" };
  #inspection: Timed;
  #reading = false;

  constructor(stage: Stage, before: Before, ground: Ground, guide: Guide) {
    this.#stage = stage;
    this.#before = before;
    this.#ground = ground;
    this.#events = stage.stretches.flatMap((stretch) => [...eventsIn(stretch, guide)]);
    this.#notes = [...before.nextNotes];
    this.#guideNotes = new Growing(before.guideNotes);
    this.#met = new Growing(before.met);
    this.#inPlace = new Growing(before.inPlace);
    this.#powered = new Growing(before.powered);
    this.#inspection = { when: before.inspected ? "before" : "never" };
    const strong = this.#events.some((event) => isStrongPower(event));
    for (const event of this.#events) this.#take(event, strong);
    this.coverage = { stage, covered: this.#covered(), powerUp: this.#powerUp() };
    this.after = this.#leave();
  }

  #take(event: PieceEvent, strong: boolean): void {
    switch (event.kind) {
      case "title":
        this.#ended = this.#begun;
        return;
      case "note":
        this.#takeNote(event.note);
        return;
      case "step":
        this.#takeStep(event.step);
        return;
      case "trigger":
        this.#bring(event.trigger);
        return;
      case "fit":
        this.#takeParts(event.parts, event.step, event.span);
        return;
      case "power comment":
        this.#powerNext = event.span;
        return;
      case "power":
        if (!event.weak || !strong) this.#applyPower(event.step, event.span);
        return;
      case "limit":
        this.#limitCurrent(event.step);
        return;
      case "inspection":
        this.#inspect(event.step, event.conditional);
        return;
      case "figure":
        this.#takeFigure(event.figure, event.step);
        return;
    }
  }

  /** Between stages a note covers the next one, and before all of them the guide. */
  #takeNote(note: NoteReading): void {
    const isStage = this.#stage.steps.length > 0;
    const isFirst = !this.#before.started && (!isStage || this.#isHeadless);
    if (isFirst || this.#ended) this.#guideNotes.add(note);
    if (isFirst) return;
    if (!isStage || this.#ended) this.#nextNotes.add(note);
    else this.#notes.push(note);
  }

  /** Steps before any stage: what stands before them stands before the first stage. */
  get #isHeadless(): boolean {
    return this.#stage.heading === undefined && !this.#begun;
  }

  #takeStep(step: Step): void {
    this.#begun = true;
    if (this.#ended) this.#goOn();
    if (!this.#powerNext) return;
    this.#powerNext = undefined;
    this.#applyPower(step, headOf(step));
  }

  /** Steps behind a heading of level 1, without one of level 2: the stage has not ended after all. */
  #goOn(): void {
    this.#ended = false;
    this.#notes.push(...this.#nextNotes.list);
    this.#nextNotes = new Growing([]);
  }

  #bring(trigger: Trigger): void {
    // In a kit of one board words and marks tell of the same.
    const key = trigger.of ? `${trigger.kind} ${trigger.of}` : trigger.kind;
    if (this.#metHere.has(key)) return;
    if (this.#metHere.get(trigger.kind) === trigger.step) {
      // The words of the step have told of it; its mark says on which board.
      if (isOwedOnce(trigger.kind)) this.#met.add(key);
      this.#metHere.set(key, trigger.step);
      return;
    }
    if (isOwedOnce(trigger.kind)) {
      // Words tell of no board: they are owed a note only where nothing of the kind has been.
      const kinds = this.#met.list.some((one) => one === key || one.startsWith(`${key} `));
      if (kinds) return;
      this.#met.add(key);
    }
    this.#metHere.set(key, trigger.step);
    for (const hazard of hazardsOf(trigger.kind)) {
      this.#found.push({ trigger, hazard, note: this.#noteOn(hazard, trigger) });
    }
  }

  /** The nearest note of that name, else the nearest that speaks of the hazard. */
  #noteOn(hazard: Hazard, { kind }: Trigger): NoteReading | undefined {
    const here = this.#notes.filter((note) => note.hazards.has(hazard));
    const before = guideNoteCovers(kind)
      ? this.#guideNotes.list.filter((note) => note.hazards.has(hazard))
      : [];
    const all = [...before, ...here];
    return all.findLast((note) => note.named === hazard) ?? all.at(-1);
  }

  #takeParts(parts: readonly Part[], step: Step, span: Span): void {
    const { mains, charged, hot } = this.#ground;
    for (const part of parts) {
      if (mains.has(part)) {
        const evidence = `fits ${part.name}, which carries mains voltage`;
        this.#bring({ kind: "voltage", step, span, evidence });
      }
      if (mains.has(part) || charged.has(part) || hot.has(part)) this.#inPlace.add(part);
    }
  }

  #applyPower(step: Step, span: Span): void {
    if (this.#power) return;
    this.#power = { step, span };
    const bring = (kind: Trigger["kind"], why: string) =>
      this.#bring({ kind, step, span, evidence: `applies power (${why})` });
    const { voltage, mains, charged, hot } = this.#ground;
    const wired = this.#inPlace.list.find((part) => mains.has(part));
    if (wired) bring("voltage", `${wired.name} carries mains voltage`);
    else if (voltage) bring("voltage", voltage);
    const full = this.#inPlace.list.find((part) => charged.has(part));
    if (full) bring("stored charge", charged.get(full)!);
    const news = this.#inPlace.list.filter((part) => !this.#powered.list.includes(part));
    const burning = news.find((part) => hot.has(part));
    if (burning) {
      const evidence = `applies power (${hot.get(burning)!})`;
      this.#bring({ kind: "hot part", step, span, evidence, of: burning.name });
    }
    for (const part of news) this.#powered.add(part);
  }

  #limitCurrent(step: Step | undefined): void {
    if (!this.#power || step === this.#power.step) this.#limit = { when: "before" };
    else if (this.#limit.when === "never" && step) this.#limit = { when: "after", step };
  }

  /** Under power, to look for a fault if a reading is off is a remedy and comes in its time. */
  #inspect(step: Step, conditional = false): void {
    if (!this.#power) this.#inspection = { when: "before" };
    else if (conditional) return;
    else if (this.#inspection.when === "never" && step !== this.#power.step) {
      this.#inspection = { when: "after", step };
    }
  }

  #takeFigure(figure: Figure, step: Step): void {
    if (figure.reading) {
      if (this.#power) this.#reading = true;
      else if (isResistance(figure)) this.#inspect(step);
    }
    const why = this.#ground.high.get(figure);
    if (!why) return;
    const evidence = `deals with a high voltage (${why})`;
    this.#bring({ kind: "voltage", step, span: figure.span, evidence });
  }

  #covered(): readonly Covered[] {
    return this.#found.map(({ trigger, hazard, note }) => {
      const late = note ? undefined : this.#lateNote(hazard, trigger);
      return { trigger, hazard, note, late };
    });
  }

  /** A note that stands in time for something else is not late: the one for this is missing. */
  #lateNote(hazard: Hazard, trigger: Trigger): NoteReading | undefined {
    const serves = (note: NoteReading) =>
      this.#found.some((one) => one.note === note && one.hazard === hazard);
    return this.#notes.find(
      (note) => note.hazards.has(hazard) && this.#isBehind(note, trigger) && !serves(note),
    );
  }

  #isBehind({ piece, fact }: NoteReading, { step, span }: Trigger): boolean {
    return piece.order > step.piece.order || (piece === step.piece && fact.span.start > span.start);
  }

  #powerUp(): PowerUp | undefined {
    if (!this.#power) return undefined;
    return {
      ...this.#power,
      first: !this.#before.powerApplied,
      limit: this.#limit,
      inspection: this.#inspection,
      reading: this.#reading,
    };
  }

  #leave(): Before {
    const hasSteps = this.#stage.steps.length > 0;
    const nextNotes = hasSteps
      ? this.#nextNotes.list
      : [...this.#before.nextNotes, ...this.#nextNotes.list];
    return {
      started: this.#before.started || hasSteps,
      guideNotes: this.#guideNotes.list,
      nextNotes,
      met: this.#met.list,
      inPlace: this.#inPlace.list,
      powered: this.#powered.list,
      powerApplied: this.#before.powerApplied || this.#power !== undefined,
      inspected: this.#inspection.when === "before",
    };
  }
}

/** A reading of ohms, such as `{read R(J1) > 1 kΩ}`, looks for a short. */
export function isResistance({ name, reading }: Figure): boolean {
  return /^r/i.test(name?.symbol ?? "") || /(?:Ω|ohm)\s*$/i.test(reading?.value.text ?? "");
}

function isStrongPower(event: PieceEvent): boolean {
  return event.kind === "power comment" || (event.kind === "power" && !event.weak);
}

/** The first sentence of a step, or its first sign. */
function headOf(step: Step): Span {
  const { start } = step.fact.span;
  const sentence = step.prose.find((block) => !block.fact.quoted)?.sentences[0];
  return sentence ? { start: sentence.start, end: sentence.end } : { start, end: start + 1 };
}
