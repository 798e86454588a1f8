/** The passages of a script and the words of a recording, paired with one another. */
import type { Chapter, Passage, Script } from "../script.ts";
import { align } from "./align.ts";
import type { Cue } from "./readCues.ts";
import { type Speech, spokenTokens, type Token } from "./spokenTokens.ts";

/** A word of the recording, with the cue that says it. */
export interface SaidToken extends Token {
  readonly cue: number;
}

/** A passage of the guide and where the recording says it. */
export interface Spoken {
  readonly chapter: Chapter;
  readonly passage: Passage;
  readonly tokens: readonly Token[];
  /** For each token its place in the recording, or -1. */
  readonly places: readonly number[];
  /** From its first to its last word in the recording; undefined where it is not said in its turn. */
  readonly region: { readonly start: number; readonly end: number } | undefined;
}

export interface Paired {
  readonly spoken: readonly Spoken[];
  readonly said: readonly SaidToken[];
  /** For each word of the recording the passage that it belongs to, as an index, or -1. */
  readonly owners: Int32Array;
  weightOf(token: Token): number;
}

/** A passage counts as said when so much of its weight is. */
const ENOUGH = 0.5;
/** Designators and figures weigh so much more than words, of which the rare ones tell most. */
const TELLING = 3;

export function pair(script: Script, cues: readonly Cue[], speech: Speech): Paired {
  const said = saidTokens(cues, speech);
  const passages = script.chapters.flatMap((chapter) =>
    chapter.passages.map((passage) => {
      const text = passage.lines.map((line) => line.text).join(" ");
      return { chapter, passage, tokens: spokenTokens(text, speech) };
    }),
  );
  const all = passages.flatMap(({ tokens }) => tokens);
  const counts = new Map<string, number>();
  for (const { key } of all) counts.set(key, (counts.get(key) ?? 0) + 1);
  const weightOf = ({ key, kind }: Token) =>
    kind === "word" ? 1 / Math.sqrt(counts.get(key) ?? 1) : TELLING;
  const pairs = align(
    all.map(({ key }) => key),
    said.map(({ key }) => key),
  );
  const owners = new Int32Array(said.length).fill(-1);
  let from = 0;
  const spoken = passages.map((passage, index) => {
    const places = Array.from(pairs.subarray(from, from + passage.tokens.length));
    from += passage.tokens.length;
    const cluster = largestCluster(passage.tokens, places, weightOf);
    if (!cluster) return { ...passage, places: places.fill(-1), region: undefined };
    const kept = places.map((at) => (at >= cluster.start && at <= cluster.end ? at : -1));
    for (const at of kept) if (at >= 0) owners[at] = index;
    return { ...passage, places: kept, region: cluster };
  });
  return { spoken, said, owners, weightOf };
}

/** The cues are read as one text: a range may begin in one and end in the next. */
function saidTokens(cues: readonly Cue[], speech: Speech): SaidToken[] {
  let length = 0;
  const ends = cues.map(({ text }) => {
    length += text.length + 1;
    return length;
  });
  let cue = 0;
  return spokenTokens(cues.map(({ text }) => text).join("\n"), speech).map((token) => {
    while (token.at >= ends[cue]!) cue++;
    return { ...token, cue };
  });
}

/** Where most of a passage stands together; stray words far from it belong to others. */
function largestCluster(
  tokens: readonly Token[],
  places: readonly number[],
  weightOf: (token: Token) => number,
): { start: number; end: number } | undefined {
  const total = tokens.reduce((sum, token) => sum + weightOf(token), 0);
  let best: { start: number; end: number; weight: number } | undefined;
  let current: typeof best;
  for (const [index, at] of places.entries()) {
    if (at < 0) continue;
    const weight = weightOf(tokens[index]!);
    if (current && at - current.end <= tokens.length + 5) {
      current = { start: current.start, end: at, weight: current.weight + weight };
    } else current = { start: at, end: at, weight };
    if (!best || current.weight > best.weight) best = current;
  }
  return best && best.weight >= ENOUGH * total ? { start: best.start, end: best.end } : undefined;
}
