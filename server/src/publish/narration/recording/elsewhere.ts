/** Looks for a passage among those words of a recording that belong to no other. */
import type { Paired } from "./passages.ts";
import type { Token } from "./spokenTokens.ts";

/** So much of the passage's weight must stand in the window. */
const MOSTLY = 0.7;
/** Shorter passages are found anywhere. */
const FEWEST = 4;

/** The stretch that holds most of it; undefined where none holds enough. */
export function findElsewhere(
  tokens: readonly Token[],
  { said, owners, weightOf }: Paired,
): { readonly start: number; readonly end: number } | undefined {
  if (tokens.length < FEWEST) return undefined;
  const wanted = new Map<string, { count: number; weight: number }>();
  let total = 0;
  for (const token of tokens) {
    const weight = weightOf(token);
    wanted.set(token.key, { count: (wanted.get(token.key)?.count ?? 0) + 1, weight });
    total += weight;
  }
  const length = Math.ceil(tokens.length * 1.3);
  const held = new Map<string, number>();
  let weight = 0;
  let best: { start: number; end: number; weight: number } | undefined;
  // A word counts as often as the passage has it.
  const change = (at: number, by: 1 | -1) => {
    const { key } = said[at]!;
    const sought = owners[at] === -1 ? wanted.get(key) : undefined;
    if (!sought) return;
    const before = held.get(key) ?? 0;
    held.set(key, before + by);
    if (by > 0 ? before < sought.count : before <= sought.count) weight += by * sought.weight;
  };
  for (let end = 0; end < said.length; end++) {
    change(end, 1);
    if (end >= length) change(end - length, -1);
    if (weight >= MOSTLY * total && weight > (best?.weight ?? 0)) {
      best = { start: Math.max(0, end - length + 1), end: end + 1, weight };
    }
  }
  return best && trimmed(best, wanted, said);
}

/** Without what stands before its first and behind its last word. */
function trimmed(
  { start, end }: { start: number; end: number },
  wanted: ReadonlyMap<string, unknown>,
  said: Paired["said"],
) {
  let [first, last] = [start, end];
  while (first < last && !wanted.has(said[first]!.key)) first++;
  while (last > first && !wanted.has(said[last - 1]!.key)) last--;
  return { start: first, end: last };
}
