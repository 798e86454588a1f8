/** Finds what names parts by their kind: "all resistors except R5", "the remaining capacitors". */
import type { GuideState } from "../../model/guideState.ts";
import type { Part } from "../../model/parts.ts";
import type { Sentence, TextBlock } from "../../model/prose.ts";
import { findRuns, type Run } from "./runs.ts";
import type { AdoptLexicon } from "./words.ts";

export interface NamedSet {
  readonly which: "all" | "rest";
  /** Class letters: `R`. */
  readonly letters: string;
  readonly except: Run | undefined;
  /** Offset in the piece behind which the mark goes. */
  readonly end: number;
  readonly parts: readonly Part[];
}

export function findSet(
  sentence: Sentence,
  block: TextBlock,
  guide: GuideState,
  lexicon: AdoptLexicon,
): NamedSet | undefined {
  const { words } = sentence;
  for (const quantifier of lexicon.quantifiers.find(words)) {
    const kind = lexicon.kinds.at(words, Math.min(quantifier.to, words.length - 1));
    if (!kind || kind.from !== quantifier.to) continue;
    const letters = kind.meaning;
    const except = exceptions(sentence, block, guide, lexicon, kind.to);
    const left = new Set(except?.items.flatMap((item) => item.parts));
    const parts = guide.kit.partsOfSet(letters).filter((part) => part.fitted && !left.has(part));
    if (parts.length === 0) continue;
    const end = except?.span.end ?? words[kind.to - 1]!.end;
    return { which: quantifier.meaning, letters, except, end, parts };
  }
  return undefined;
}

/** The run right behind a word such as "except". */
function exceptions(
  { words }: Sentence,
  block: TextBlock,
  { kit }: GuideState,
  lexicon: AdoptLexicon,
  from: number,
): Run | undefined {
  if (from >= words.length) return undefined;
  const hit = lexicon.except.at(words, from);
  if (!hit) return undefined;
  const start = words[hit.to - 1]!.end;
  const rest = block.at({ start, end: block.fact.span.end });
  const [run] = findRuns(rest, start, kit);
  return run && /^[\s:(]*$/.test(rest.slice(0, run.span.start - start)) ? run : undefined;
}
