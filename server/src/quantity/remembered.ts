/** Lists repeat the same texts thousands of times: results of pure functions are worth keeping. */

/** Longer texts are rare and not worth the memory. */
const MAX_LENGTH = 400;
const MAX_KEPT = 4096;

/** `compute`, with its results kept by the text until there are too many. */
export function remembered<Result>(compute: (text: string) => Result): (text: string) => Result {
  const kept = new Map<string, { readonly result: Result }>();
  return (text) => {
    if (text.length > MAX_LENGTH) return compute(text);
    const known = kept.get(text);
    if (known) return known.result;
    if (kept.size >= MAX_KEPT) kept.clear();
    const result = compute(text);
    kept.set(text, { result });
    return result;
  };
}

/** The same for a text that is read in one of a few ways. */
export function rememberedBy<Way, Result>(
  compute: (way: Way, text: string) => Result,
): (way: Way, text: string) => Result {
  const byWay = new Map<Way, (text: string) => Result>();
  return (way, text) => {
    let known = byWay.get(way);
    if (!known) {
      known = remembered((one) => compute(way, one));
      byWay.set(way, known);
    }
    return known(text);
  };
}

/** The same for several texts. */
export function rememberedOfAll<Texts extends readonly string[], Result>(
  compute: (...texts: Texts) => Result,
): (...texts: Texts) => Result {
  const kept = new Map<string, { readonly result: Result }>();
  return (...texts) => {
    const key = texts.map((text) => `${text.length} ${text}`).join("");
    if (key.length > MAX_LENGTH) return compute(...texts);
    const known = kept.get(key);
    if (known) return known.result;
    if (kept.size >= MAX_KEPT) kept.clear();
    const result = compute(...texts);
    kept.set(key, { result });
    return result;
  };
}
