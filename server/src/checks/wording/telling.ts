/**
 * English sentences that tell of an act instead of asking for it: "the resistor should be soldered
 * now", "you must cut the leads", "we now fit the socket". What a builder sees, reads or may do is
 * no act.
 */
import type { Word } from "../../text/stems.ts";

const list = (words: string): ReadonlySet<string> => new Set(words.split(" "));

const OBLIGATIONS = list("should must shall");
/** "has to be soldered", "is to be soldered". */
const OBLIGING = list("has have need needs ought is are");
const SMALL = list("now then also first next always not never only carefully all both each");
const BASE = list(
  "solder desolder fit insert mount install place put bend cut trim drill screw tighten fasten wind glue stick clean wipe adjust connect disconnect remove measure turn switch push press mark strip tin attach route plug set check",
);
const PARTICIPLES = list(
  "soldered desoldered fitted inserted mounted installed placed put bent cut trimmed drilled screwed tightened fastened wound glued stuck cleaned wiped adjusted connected disconnected removed measured turned switched pushed pressed marked stripped tinned attached routed plugged set checked",
);

/** The words that tell, `words[from]` up to `words[to]`, or undefined. */
export function tellingIn(
  words: readonly Word[],
): { readonly from: number; readonly to: number } | undefined {
  for (let i = 0; i < words.length; i++) {
    const to = passive(words, i) ?? person(words, i) ?? present(words, i);
    if (to !== undefined) return { from: i, to };
  }
  return undefined;
}

/** "should be soldered", "has to be cut"; gives where it ends. */
function passive(words: readonly Word[], index: number): number | undefined {
  const word = words[index]!.lower;
  let i: number;
  if (OBLIGATIONS.has(word)) i = index + 1;
  else if (OBLIGING.has(word) && words[index + 1]?.lower === "to") i = index + 2;
  else return undefined;
  i = behindSmall(words, i);
  if (words[i]?.lower !== "be") return undefined;
  i = behindSmall(words, i + 1);
  return PARTICIPLES.has(words[i]?.lower ?? "") ? i + 1 : undefined;
}

/** "you should solder", "we now fit". */
function person(words: readonly Word[], index: number): number | undefined {
  const word = words[index]!.lower;
  if (word !== "you" && word !== "we") return undefined;
  // "before you solder" and "as we fit" tell when, not what.
  const before = words[index - 1]?.lower;
  if (before !== undefined && !["now", "here", "next", "then", "first"].includes(before)) {
    return undefined;
  }
  let i = behindSmall(words, index + 1);
  const modal = words[i]?.lower ?? "";
  if (OBLIGATIONS.has(modal) || modal === "will") i++;
  else if (OBLIGING.has(modal) && words[i + 1]?.lower === "to") i += 2;
  i = behindSmall(words, i);
  return BASE.has(words[i]?.lower ?? "") ? i + 1 : undefined;
}

/** "is now soldered", "are soldered next". */
function present(words: readonly Word[], index: number): number | undefined {
  const word = words[index]!.lower;
  if (word !== "is" && word !== "are") return undefined;
  const i = behindSmall(words, index + 1);
  if (!PARTICIPLES.has(words[i]?.lower ?? "")) return undefined;
  const isNow = ["now", "next"].some(
    (small) =>
      words[i + 1]?.lower === small || words.slice(index + 1, i).some((w) => w.lower === small),
  );
  return isNow ? i + 1 : undefined;
}

function behindSmall(words: readonly Word[], index: number): number {
  let i = index;
  while (SMALL.has(words[i]?.lower ?? "")) i++;
  return i;
}
