/** Words by which a list says that a coil comes as the core or former it is wound on: en, de, fr, nl, es. */

const CORE =
  /(?<!\p{L})(?:cores?|toroids?|(?:coil )?formers?|bobbins?|ferrite (?:beads?|rods?|rings?)|(?:ring|spulen|ferrit|schalen)?kerne?n?|spulenkörper|ferritstab|noyaux?|tores?|mandrins?|carcasses?|n[úu]cleos?|toroides?|carretes?|spoel(?:koker|vorm)s?|ferrietstaaf)(?!\p{L})/iu;

/** Whether the text, of a line for a part that the builder makes, speaks of a core or former. */
export function namesCore(text: string): boolean {
  return CORE.test(text.slice(0, 300).replaceAll("_", " "));
}
