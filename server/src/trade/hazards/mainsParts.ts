/** Which lines of a parts list are parts that carry mains voltage. Common practice. */
import { type PartClass, type PartHints, partClass } from "../partClass.ts";

/** Mains in the five languages, but for its hum and its frequency. */
const MAINS =
  /\bmains\b(?! (?:hum|frequency|noise))|\bIEC ?(?:60320|inlet|socket|mains)|\bC14\b(?= (?:inlet|socket|connector))|power inlet|\bnetz(?:buchse|stecker|schalter|trafo|transformator|kabel|eingang|spannung|sicherung)|kaltgeräte|\bsecteur\b|\bnet(?:spanning|transformator|schakelaar|snoer|entree)|\blichtnet|red eléctrica|\bde red\b/i;

/** Nominal mains voltages; a rating of 250 V is none. */
const MAINS_VOLTS = /(?<![\d.,])(?:100|110|115|120|127|220|230|240) ?V(?![A-Za-z]*\d)/i;
/** Power of a transformer that hangs on the mains is given in voltampere. */
const VOLTAMPERE = /(?<![\d.,])\d+(?:[.,]\d+)? ?k?VA\b/;

/** Classes of which a mains voltage tells where they are connected, and not what they stand. */
const CONNECTED: ReadonlySet<PartClass> = new Set<PartClass>(["transformer", "module"]);

/** Whether a part with these letters and words is connected to the mains. */
export function isMainsPart(letters: string, hints: PartHints): boolean {
  const words = [hints.value, hints.package, hints.description].filter(Boolean).join(" ");
  if (MAINS.test(words)) return true;
  const kind = partClass(letters, hints);
  if (CONNECTED.has(kind) && MAINS_VOLTS.test(words)) return true;
  return kind === "transformer" && VOLTAMPERE.test(words);
}

/** Whether it is a fuse or its holder, which in a kit with mains parts sits in the mains lead. */
export function isFuse(letters: string, hints: PartHints): boolean {
  const kind = partClass(letters, hints);
  return kind === "fuse" || kind === "fuse holder";
}
