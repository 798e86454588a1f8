/**
 * What a type number alone tells of a part: JEDEC (1N, 2N), Pro Electron (BC, BAT, BZX) and JIS
 * (2SA … 2SK) designations, and the commonest makers' prefixes. From memory of those schemes.
 */
import type { PartClass } from "./partWords.ts";

const TYPES: readonly [PartClass, RegExp][] = [
  ["diode", /^1(?:N|S[SRVZ]?)\d/],
  ["transistor", /^[23]N\d|^2S[ABCDJK]\d/],
  // Pro Electron: second letter A, B, Y, Z diodes; C, D, F, L, S, U transistors.
  ["diode", /^[AB][ABYZ][A-Z]{0,2}\d/],
  ["transistor", /^[AB][CDFLSU][A-Z]{0,2}\d/],
  ["transistor", /^(?:TIP|IRF|IRL|MPS|MMBT|PN|MJ|SS)[A-Z]{0,3}\d/],
  ["ic", /^(?:SN)?(?:54|74)[A-Z]{0,5}\d|^(?:LM|NE|TL|CD|MC|UA|ATMEGA|ATTINY|PIC)\d/],
];

/** The class that the first word of a value tells as a type number. */
export function classOfType(value: string): PartClass | undefined {
  const first = value.trim().slice(0, 20).toUpperCase();
  return TYPES.find(([, pattern]) => pattern.test(first))?.[0];
}
