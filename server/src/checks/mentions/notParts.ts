/**
 * Words of the prose that have the form of a designator and name something else: a standard, a cell,
 * a screw, a package, or what the words around them call a pin, a version or a tool.
 */

const NAMES: readonly RegExp[] = [
  // Interfaces: TIA-232 and its kin, USB; jacks and D-subminiature connectors.
  /^(?:RS|EIA|TIA)(?:232|422|423|485)[A-Z]?$/,
  /^USB[1-4]$/,
  /^RJ(?:9|1[0124]|25|45|48|50)[A-Z]?$/,
  /^D[A-E](?:9|15|19|25|26|37|44|50)$/,
  // Cells after IEC 60086, and the names of the trade.
  /^(?:CR|BR)\d{4}[A-Z]?$/,
  /^(?:LR|SR|PR|AG)\d{1,4}[A-Z]?$/,
  /^PP[369]$/,
  // Screws with metric threads (ISO 261).
  /^M(?:[1-68]|1[0246])$/,
  // Packages.
  /^(?:TO|DO|SOT|SOD|SOIC?|[ST]?SSOP|P?DI[LP]|SI[LP]|T?QF[PN]|PLCC|DPAK|SC|HC)\d+[A-Z]?$/,
  // Driver bits: hexalobular (ISO 10664) and cross recesses (ISO 4757).
  /^TX\d{1,2}$/,
  /^P[HZ][0-4]$/,
];

const WORDS_BEFORE =
  "pins?|pads?|ports?|gpio|i/o|inputs?|outputs?|headers?|versions?|revisions?|rev|ver|issue|type|" +
  "class|size|iec|iso|din|torx|bits?|keys?|screws?|threads?|cells?|batter(?:y|ies)|page|figure|fig|" +
  "table|step|chapter|grid|cell";

/** Such a word, and names in a row behind it: `pins D2, D3 and `. */
const CALLED = new RegExp(
  String.raw`(?<![\p{L}\p{N}])(?:${WORDS_BEFORE})[.:]?\s+(?:[\p{L}\p{N}]+\s*(?:,|;|/|–|-|\bto\b|\band\b|\bor\b)\s*)*$`,
  "iu",
);

const WORDS_BEHIND =
  /^\s+(?:pins?|pads?|ports?|drivers?|bits?|keys?|screwdrivers?|screws?|nuts?|bolts?|washers?|threads?|cells?|batter(?:y|ies)|inlets?|cords?|packages?|firmware|board rev)(?!\p{L})/iu;

/** How much text around a word `isOtherThing` looks at. */
export const CONTEXT = 60;

/** Whether the word is no designator, going by its form and by the text before and behind it. */
export function isOtherThing(word: string, before: string, behind: string): boolean {
  return NAMES.some((name) => name.test(word)) || CALLED.test(before) || WORDS_BEHIND.test(behind);
}
