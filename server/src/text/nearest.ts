/** Which known words a mistyped one is near to, for "did you mean" in messages. */

/**
 * Fewest single-letter slips (insert, drop, change, swap of neighbours) that turn `a` into `b`:
 * the optimal string alignment distance.
 */
export function slips(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let cost = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + (same ? 0 : 1));
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) cost = Math.min(cost, beforeLast[j - 2]! + 1);
      row.push(cost);
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length]!;
}

/**
 * The known word that `word` most likely stands for, or undefined when none is near.
 * Case does not count; one slip in three letters is near, the first of equals wins.
 */
export function nearestWord(word: string, known: Iterable<string>): string | undefined {
  const lower = word.toLowerCase();
  let best: string | undefined;
  let fewest = Number.POSITIVE_INFINITY;
  for (const candidate of known) {
    const limit = Math.max(1, Math.floor(candidate.length / 3));
    if (Math.abs(candidate.length - lower.length) > limit) continue;
    const cost = slips(lower, candidate.toLowerCase());
    if (cost <= limit && cost < fewest) {
      fewest = cost;
      best = candidate;
    }
  }
  return best;
}
