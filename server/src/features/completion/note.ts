/** Completion of hazard notes: the signal word in the guide's language, then the hazard. */
import type { GuideState } from "../../model/guideState.ts";
import { readSignal, type Signal, signalWord } from "../../syntax/signalWords.ts";
import type { Language } from "../../text/language.ts";
import { HAZARDS, type Hazard, harmOf, signalsFor } from "../../trade/hazards/hazards.ts";
import { hazardName } from "../../trade/hazards/lexicon.ts";
import { noteTemplate } from "../../trade/hazards/templates.ts";
import type { Completion, Completions } from "./completion.ts";
import type { Writing } from "./writing.ts";

/** What each signal word is for, after ANSI Z535.6 and ISO 3864-2. */
const SIGNALS: readonly (readonly [signal: Signal, meaning: string])[] = [
  ["DANGER", "Kills or maims if it is not avoided."],
  ["WARNING", "Can kill or maim if it is not avoided."],
  ["CAUTION", "Can hurt a little or moderately if it is not avoided."],
  ["NOTICE", "Damages parts or the board, hurts nobody."],
];

/** What is left of a signal word behind the cursor, with its colon. */
const SIGNAL_TAIL = /^\p{L}*(?:: ?)?/u;

const OPENING = /^(\*\*|__)([^*_]*)$/;

/** Undefined where the cursor is not in the bold opening of a quoted block. */
export function completeNote(guide: GuideState, writing: Writing): Completions | undefined {
  const { block, before, isWhole, offset } = writing;
  const opening = block.quoted && isWhole ? OPENING.exec(before) : undefined;
  if (!opening) return undefined;
  const [, bold, typed] = opening;
  const language = guide.language ?? "en";
  const colon = typed!.indexOf(":");
  if (colon < 0) {
    const end = offset + SIGNAL_TAIL.exec(writing.after)![0].length;
    const span = { start: offset - typed!.length, end };
    const whole = wholeNotes(writing, language, (word) => `${word}: `);
    return { span, items: [...signalItems(language), ...whole], complete: true };
  }
  const signal = readSignal(typed!.slice(0, colon))?.signal;
  if (!signal) return undefined;
  const rest = typed!.slice(colon + 1).trimStart();
  const tail = /^[^*_]*(?=\*\*|__)/.exec(writing.after);
  const span = { start: offset - rest.length, end: offset + (tail?.[0].length ?? 0) };
  const hazards = hazardItems(signal, language, tail ? "" : `${bold} `);
  const whole = bold === "**" ? wholeNotes(writing, language, () => "") : [];
  return { span, items: [...hazards, ...whole], complete: true };
}

function signalItems(language: Language): Completion[] {
  return SIGNALS.map(([signal, meaning]) => {
    const label = signalWord(signal, language);
    return { label, kind: "note", text: `${label}: `, leadsOn: true, documentation: () => meaning };
  });
}

/** Hazards that the signal word fits come first. */
function hazardItems(signal: Signal, language: Language, end: string): Completion[] {
  const fits = (hazard: Hazard) => signalsFor(harmOf(hazard)).includes(signal);
  const sorted = [...HAZARDS.filter(fits), ...HAZARDS.filter((hazard) => !fits(hazard))];
  return sorted.map((hazard) => {
    const label = hazardName(hazard, language);
    return { label, kind: "note", text: `${label}.${end}` };
  });
}

/** `> **WARNING: electric shock.** It kills. …` as the templates have it. */
const TEMPLATE = /^> \*\*([^:]+): (.*)$/s;

/** Notes to begin with, where nothing is written behind the cursor yet. */
function wholeNotes(
  { piece, block, after }: Writing,
  language: Language,
  head: (word: string) => string,
): Completion[] {
  const quote = quoteBefore(piece.page.text.slice(piece.start, piece.start + block.span.start));
  if (after.trim() !== "" || quote === undefined) return [];
  return HAZARDS.flatMap((hazard): Completion[] => {
    const lines = noteTemplate(hazard, language);
    const [, word, body] = TEMPLATE.exec(lines?.[0] ?? "") ?? [];
    if (!lines || !word || !body) return [];
    const rest = lines.slice(1).map((line) => line.replace(/^> ?/, quote));
    const text = [head(word) + body, ...rest].join("\n");
    const name = hazardName(hazard, language);
    const label = `${word}: ${name} …`;
    const filter = head(word) + name;
    return [{ label, kind: "note", text, filter, documentation: () => lines.join("\n") }];
  });
}

/** What a line of the quote begins with. */
function quoteBefore(before: string): string | undefined {
  const line = before.slice(Math.max(before.lastIndexOf("\n"), before.lastIndexOf("\r")) + 1);
  return /^[ \t>]*>[ \t]?$/.test(line) ? line : undefined;
}
