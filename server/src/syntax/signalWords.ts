/**
 * Signal words of hazard notes after ANSI Z535.6 and ISO 3864-2, and the words that manuals use for
 * them in German, French, Dutch and Spanish (common practice).
 */
import { LANGUAGES, type Language } from "../text/language.ts";

export type Signal = "DANGER" | "WARNING" | "CAUTION" | "NOTICE";

/** The first of each is the one that is written. */
const WORDS: Readonly<Record<Language, Readonly<Record<Signal, readonly string[]>>>> = {
  en: {
    DANGER: ["DANGER"],
    WARNING: ["WARNING"],
    CAUTION: ["CAUTION"],
    NOTICE: ["NOTICE"],
  },
  de: {
    DANGER: ["GEFAHR"],
    WARNING: ["WARNUNG"],
    CAUTION: ["VORSICHT"],
    NOTICE: ["HINWEIS"],
  },
  fr: {
    DANGER: ["DANGER"],
    WARNING: ["AVERTISSEMENT"],
    CAUTION: ["ATTENTION"],
    NOTICE: ["AVIS"],
  },
  nl: {
    DANGER: ["GEVAAR"],
    WARNING: ["WAARSCHUWING"],
    CAUTION: ["VOORZICHTIG"],
    NOTICE: ["LET OP"],
  },
  es: {
    DANGER: ["PELIGRO"],
    WARNING: ["ADVERTENCIA"],
    CAUTION: ["PRECAUCIÓN", "ATENCIÓN"],
    NOTICE: ["AVISO"],
  },
};

const SIGNALS: ReadonlyMap<string, Signal> = new Map(
  LANGUAGES.flatMap((language) =>
    (Object.entries(WORDS[language]) as [Signal, readonly string[]][]).flatMap(([signal, words]) =>
      words.map((word) => [word, signal] as const),
    ),
  ),
);

const ALERTS: Readonly<Record<string, Signal>> = { WARNING: "WARNING", CAUTION: "CAUTION" };

/** Capital words, before the sign that parts them from the hazard. */
const CAPITALS = /^[\p{Lu} ]+/u;
const SIGN = /^[:.!–—-]/;

/** What the bold opening of a hazard note says: `WARNING: electric shock.` */
export interface Opening {
  readonly signal: Signal;
  /** The signal word as written. */
  readonly word: string;
  readonly hazard: string;
}

/** Reads the bold opening of a hazard note; undefined when it is none. */
export function readSignal(opening: string): Opening | undefined {
  const text = opening.trim();
  const capitals = CAPITALS.exec(text)?.[0] ?? "";
  const word = capitals.trimEnd();
  const signal = SIGNALS.get(word.normalize("NFC"));
  const rest = text.slice(capitals.length).trimStart();
  if (!signal || (rest !== "" && !SIGN.test(rest))) return undefined;
  return { signal, word, hazard: withoutStops(rest.slice(1).trimStart()) };
}

/** By hand: an expression for this would take quadratic time on floods of stops. */
function withoutStops(text: string): string {
  let end = text.length;
  while (end > 0 && /[\s.:!]/.test(text[end - 1]!)) end--;
  return text.slice(0, end);
}

/** Reads the head of a GitHub alert, `[!WARNING]`; notes, tips and the like are no hazard notes. */
export function readAlert(source: string): Signal | undefined {
  const match = /^\[!([A-Za-z]+)\]/.exec(source);
  return match ? ALERTS[match[1]!.toUpperCase()] : undefined;
}

/** The word for a signal in a language. */
export function signalWord(signal: Signal, language: Language): string {
  return WORDS[language][signal][0]!;
}

/** The language that a signal word is of; `preferred` where it is a word of that one too. */
export function languageOfSignal(word: string, preferred: Language): Language {
  const has = (language: Language) =>
    Object.values(WORDS[language]).some((words) => words.includes(word.normalize("NFC")));
  return has(preferred) ? preferred : (LANGUAGES.find(has) ?? preferred);
}
