/** Lists repeat the same texts thousands of times: results of pure functions are worth keeping. */

/** Longer texts are rare and not worth the memory. */
const MAX_KEY = 400;
const MAX_KEPT = 4096;

/** `compute`, with its results kept by their texts until there are too many. */
export function remembered<Texts extends readonly string[], Result>(
  compute: (...texts: Texts) => Result,
): (...texts: Texts) => Result {
  const kept = new Map<string, { readonly result: Result }>();
  return (...texts) => {
    let key = "";
    for (const text of texts) key += `${text.length} ${text}`;
    if (key.length > MAX_KEY) return compute(...texts);
    const known = kept.get(key);
    if (known) return known.result;
    if (kept.size >= MAX_KEPT) kept.clear();
    const result = compute(...texts);
    kept.set(key, { result });
    return result;
  };
}
