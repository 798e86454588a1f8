/** The tools and consumables that a piece names: by marks, and by the words of its steps. */
import type { Item } from "../../syntax/dialect.ts";
import type { Language } from "../../text/language.ts";
import type { Span } from "../../text/span.ts";
import type { Word } from "../../text/stems.ts";
import { THING_WORDS } from "../../trade/tools/find.ts";
import type { Thing } from "../../trade/tools/tool.ts";
import type { GuidePiece, Step } from "../guide.ts";
import type { TextBlock } from "../prose.ts";
import { readWords } from "../wordReader.ts";

/** One naming of a tool or consumable; spans count in the piece. */
export interface Naming {
  readonly piece: GuidePiece;
  readonly step: Step | undefined;
  readonly span: Span;
  /** As written. */
  readonly text: string;
  /** `tool` and `own`: the role of the mark; `words`: in the text of a step. */
  readonly by: "tool" | "own" | "words";
  /** What it is, if the words for it are known. */
  readonly things: readonly Thing[];
}

const known = new WeakMap<GuidePiece, readonly Naming[]>();
const NONE: readonly Naming[] = [];

/** In the order marks, words; kept, since a piece never changes. */
export function namingsIn(piece: GuidePiece, language: Language | undefined): readonly Naming[] {
  const before = known.get(piece);
  if (before) return before;
  const namings = [...markedIn(piece, language), ...(language ? wordsIn(piece, language) : [])];
  const kept = namings.length > 0 ? namings : NONE;
  known.set(piece, kept);
  return kept;
}

/** What a text of a few words names: an entry of a list of tools, a cell of a parts list. */
export function thingsIn(text: string, language: Language): Thing[] {
  const words = readWords(text, 0);
  return [...THING_WORDS[language].find(words)].map(({ meaning }) => meaning);
}

function* markedIn(piece: GuidePiece, language: Language | undefined): Generator<Naming> {
  for (const { mark, step } of piece.marks) {
    const { role } = mark;
    if (role !== "tool" && role !== "own") continue;
    for (const { span, text } of joined(mark.items)) {
      const things = language ? thingsIn(text, language) : [];
      yield { piece, step, span, text, by: role, things };
    }
  }
}

/** Behind these no new thing begins: `dummy load 50 Ω, 10 W`, `drill shank, as a former`. */
const GOES_ON = /^(?:\d|(?:as|als|comme|como) )/;

/** The things of a mark; a comma parts them, but for what only describes the one before. */
function joined(items: readonly Item[]): { span: Span; text: string }[] {
  const things: { span: Span; text: string }[] = [];
  for (const item of items) {
    if (item.kind !== "text") continue;
    const last = things.at(-1);
    if (!last || !GOES_ON.test(item.text)) things.push({ span: item.span, text: item.text });
    else {
      last.text += `, ${item.text}`;
      last.span = { start: last.span.start, end: item.span.end };
    }
  }
  return things;
}

function* wordsIn(piece: GuidePiece, language: Language): Generator<Naming> {
  const stems = THING_WORDS[language];
  for (const block of piece.prose) {
    if (!block.instructs) continue;
    const { words } = block;
    for (const { from, to, meaning } of stems.find(words)) {
      if (isDenied(words, from, block, language)) continue;
      const span = { start: words[from]!.start, end: words[to - 1]!.end };
      const text = withoutArticle(block.at(span));
      yield { piece, step: block.step, span, text, by: "words", things: [meaning] };
    }
  }
}

/** Words that say that a thing is not used. */
const DENIALS: Readonly<Record<Language, ReadonlySet<string>>> = {
  en: new Set("not never no without don't instead than".split(" ")),
  de: new Set("nicht nie niemals ohne kein keine keinen keinem keiner statt".split(" ")),
  fr: new Set("pas jamais sans aucun aucune plutôt".split(" ")),
  nl: new Set("niet nooit zonder geen".split(" ")),
  es: new Set("no nunca jamás sin".split(" ")),
};

/** How many words before a thing may deny it. */
const REACH = 5;

function isDenied(
  words: readonly Word[],
  index: number,
  block: TextBlock,
  language: Language,
): boolean {
  for (let i = index - 1; i >= Math.max(0, index - REACH); i--) {
    const { end, lower } = words[i]!;
    if (/[.;:!?]/.test(block.at({ start: end, end: words[i + 1]!.start }))) return false;
    if (DENIALS[language].has(lower)) return true;
  }
  return false;
}

/** Articles in the patterns tell things from verbs and are no part of a name. */
function withoutArticle(text: string): string {
  return text.replace(
    /^(?:an?|the|with an?|with|of|some|une?|la|le|du|de|el|una?|een|de) (?=\p{L})/iu,
    "",
  );
}
