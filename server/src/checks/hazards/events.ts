/**
 * What a piece holds that bears on hazards, in the order of its text. Read once for each piece: a
 * change elsewhere leaves it as it is.
 */
import type { Guide, GuidePiece, ResolvedMark, Step, Use } from "../../model/guide.ts";
import type { Part, Supply } from "../../model/parts.ts";
import type { Sentence, TextBlock } from "../../model/prose.ts";
import { readWords } from "../../model/wordReader.ts";
import type { Figure, PartMark, Role } from "../../syntax/dialect.ts";
import type { TextFact } from "../../syntax/facts.ts";
import type { Language } from "../../text/language.ts";
import type { Span } from "../../text/span.ts";
import type { Act } from "../../trade/acts/form.ts";
import { type ActLexicon, actLexicon } from "../../trade/acts/lexicon.ts";
import { textAt } from "../places.ts";
import { opensWithCondition } from "../wording/actions.ts";
import { type NoteReading, readNote } from "./note.ts";
import { isHeavy, isSoldered, isStaticPart } from "./partDangers.ts";
import { BlockSentence } from "./told.ts";
import { ACT_KINDS, type Trigger } from "./triggers.ts";

export type PieceEvent = { readonly at: number } & (
  | { readonly kind: "step"; readonly step: Step }
  /** A heading of level 1: a new part of the guide, be it on a page of its own or not. */
  | { readonly kind: "title" }
  | { readonly kind: "note"; readonly note: NoteReading }
  | { readonly kind: "trigger"; readonly trigger: Trigger }
  /** Parts that are in place from here on. */
  | {
      readonly kind: "fit";
      readonly step: Step;
      readonly span: Span;
      readonly parts: readonly Part[];
    }
  /** Words or a comment that apply power; `weak`: unless others do so later in the stage. */
  | { readonly kind: "power"; readonly step: Step; readonly span: Span; readonly weak: boolean }
  /** A comment that says so of the next step. */
  | { readonly kind: "power comment"; readonly span: Span }
  /** The text speaks of a limited current. */
  | { readonly kind: "limit"; readonly step: Step | undefined }
  /** The step looks for faults; `conditional`: only if something is wrong, as a remedy. */
  | { readonly kind: "inspection"; readonly step: Step; readonly conditional: boolean }
  | { readonly kind: "figure"; readonly step: Step; readonly figure: Figure }
);

interface Known {
  readonly uses: readonly Use[];
  readonly events: readonly PieceEvent[];
}

const KNOWN = new WeakMap<GuidePiece, Known>();

/** The events of a piece; its guide's lists, settings and language must stay for its lifetime. */
export function eventsOf(piece: GuidePiece, language: Language): readonly PieceEvent[] {
  const known = KNOWN.get(piece);
  if (known && known.uses === piece.uses) return known.events;
  const events = new EventReader(piece, language).read();
  KNOWN.set(piece, { uses: piece.uses, events });
  return events;
}

/** Roles with which a builder has the part in hand. */
const HANDLING: ReadonlySet<Role> = new Set<Role>(["fit", "place", "insert", "try", "match"]);
const FITTING: ReadonlySet<Role> = new Set<Role>(["fit", "place", "insert"]);

class EventReader {
  readonly #piece: GuidePiece;
  readonly #language: Language;
  readonly #acts: ActLexicon;
  readonly #events: PieceEvent[] = [];
  /** Text between a stage's heading and its first step or subheading. */
  readonly #intro = new Set<TextFact>();

  constructor(piece: GuidePiece, language: Language) {
    this.#piece = piece;
    this.#language = language;
    this.#acts = actLexicon(language);
  }

  read(): readonly PieceEvent[] {
    this.#readFacts();
    for (const block of this.#piece.prose) this.#readBlock(block);
    for (const mark of this.#piece.marks) this.#readMark(mark);
    return this.#events.sort((a, b) => a.at - b.at);
  }

  #readFacts(): void {
    let next = 0;
    let isIntro = false;
    const { steps } = this.#piece;
    for (const fact of this.#piece.facts.facts) {
      if (fact.kind === "heading") isIntro = fact.level === 2;
      else if (fact.kind === "step") isIntro = false;
      else if (fact.kind === "text" && isIntro) this.#intro.add(fact);
      if (fact.kind === "heading" && fact.level === 1) {
        this.#events.push({ kind: "title", at: fact.span.start });
      } else if (fact.kind === "step" && steps[next]?.fact === fact) {
        this.#events.push({ kind: "step", at: fact.span.start, step: steps[next++]! });
      } else if (fact.kind === "note") {
        const note = readNote(this.#piece, fact, this.#language);
        this.#events.push({ kind: "note", at: fact.span.end - 1, note });
      } else if (fact.kind === "comment" && fact.comment.kind === "power on") {
        this.#readPowerComment(fact.span, fact.inline ? steps[next - 1] : undefined);
      } else if (fact.kind === "figure" && next > 0) {
        const { figure } = fact;
        this.#events.push({
          kind: "figure",
          at: figure.span.start,
          step: steps[next - 1]!,
          figure,
        });
      }
    }
  }

  #readPowerComment(span: Span, step: Step | undefined): void {
    if (step) this.#events.push({ kind: "power", at: span.start, step, span, weak: false });
    else this.#events.push({ kind: "power comment", at: span.start, span });
  }

  #readBlock(block: TextBlock): void {
    const { step, fact } = block;
    const counts = step ?? block.note ?? this.#intro.has(fact);
    if (counts && this.#acts.limits.has(block.words)) {
      this.#events.push({ kind: "limit", at: fact.span.start, step });
    }
    if (!step || fact.quoted) return;
    for (const sentence of block.sentences) {
      for (const { act, start, end } of this.#acts.actsIn(new BlockSentence(block, sentence))) {
        if (act === "inspect") this.#readInspection(start, sentence, step);
        else this.#readAct(act, { start, end }, { start, end: sentence.end }, step);
      }
    }
  }

  #readAct(act: Act, span: Span, told: Span, step: Step): void {
    const at = span.start;
    if (act === "switch on") this.#events.push({ kind: "power", at, step, span, weak: false });
    else if (act === "connect the supply") {
      this.#events.push({ kind: "power", at, step, span, weak: true });
    } else {
      const { kind, does } = ACT_KINDS[act]!;
      this.#trigger({ kind, step, span, evidence: `${does} ("${this.#quote(told)}")` });
    }
  }

  #readInspection(at: number, { words }: Sentence, step: Step): void {
    const conditional = opensWithCondition(words, this.#language);
    this.#events.push({ kind: "inspection", at, step, conditional });
  }

  #readMark(resolved: ResolvedMark): void {
    const { mark, step } = resolved;
    if (mark.role === "tool" || mark.role === "own") this.#readText(mark, step);
    if (!step || !HANDLING.has(mark.role)) return;
    const parts = resolved.items.flatMap(({ supplies }) => supplies);
    const span = mark.span;
    const found = (test: (one: Supply) => boolean) => parts.find(test);
    const soldered = mark.role === "fit" && found((one) => one.kind === "part" && isSoldered(one));
    if (soldered && soldered.kind === "part" && !this.#acts.solderless.has(wordsOf(step))) {
      const evidence = `has ${soldered.name} soldered`;
      this.#trigger({ kind: "soldering", step, span, evidence, of: soldered.board });
    }
    const tender = found((one) => one.kind === "part" && isStaticPart(one, mark.role));
    if (tender) {
      const evidence = `handles ${tender.name}, which a static discharge can destroy`;
      this.#trigger({ kind: "static", step, span, evidence });
    }
    const heavy = found(isHeavy);
    if (heavy) {
      this.#trigger({
        kind: "lifting",
        step,
        span,
        evidence: `handles ${heavy.name}, a heavy part`,
      });
    }
    const fitted = parts.filter((one): one is Part => one.kind === "part");
    if (FITTING.has(mark.role) && fitted.length > 0) {
      this.#events.push({ kind: "fit", at: span.start, step, span, parts: fitted });
    }
  }

  /** Tools and consumables. */
  #readText({ role, items, span }: PartMark, step: Step | undefined): void {
    for (const item of items) {
      if (item.kind !== "text") continue;
      const words = readWords(item.text.toLowerCase(), 0);
      if (this.#acts.limits.has(words)) {
        this.#events.push({ kind: "limit", at: span.start, step });
      }
      if (!step) continue;
      const own = role === "own" && this.#acts.isSolvent(words) ? "use a solvent" : undefined;
      const act = own ?? (role === "tool" ? this.#acts.actOfTool(words, wordsOf(step)) : undefined);
      const known = act && ACT_KINDS[act];
      if (!known) continue;
      const evidence = `${known.does} ("${item.text}")`;
      this.#trigger({ kind: known.kind, step, span: item.span, evidence });
    }
  }

  #trigger(trigger: Trigger): void {
    this.#events.push({ kind: "trigger", at: trigger.span.start, trigger });
  }

  /** The words from the verb on, in short. */
  #quote(span: Span): string {
    const words: string[] = [];
    // Only so far as it is quoted: sentences are long, and there are many.
    for (const [word] of textAt(this.#piece, span).matchAll(/[^\s*_]+/g)) {
      if (words.length === QUOTED) return `${words.join(" ")} …`;
      words.push(word);
    }
    return words.join(" ").replace(/[.:;,]+$/, "");
  }
}

/** So many words are quoted. */
const QUOTED = 8;

function wordsOf(step: Step) {
  return step.prose.flatMap((block) => [...block.words]);
}

/** The events of a stretch of a guide. */
export function* eventsIn(
  { piece, start, end }: { piece: GuidePiece } & Span,
  guide: Guide,
): Generator<PieceEvent, void, void> {
  if (!guide.language) return;
  for (const event of eventsOf(piece, guide.language)) {
    if (event.at >= start && event.at < end) yield event;
  }
}
