/**
 * Unit symbols as text writes them behind a number. After NIST SP 811 (2008), tables 1, 3, 5 and 6;
 * a bare `m`, `k` or `K` is left out, since kits use them for bands and value codes.
 */

const PREFIXED: readonly (readonly [unit: string, prefixes: string])[] = [
  ["Ω", "m k M G"],
  ["ohm", "k M"],
  ["V", "µ u m k"],
  ["A", "n µ u m"],
  ["W", "µ u m k"],
  ["Hz", "m k M G"],
  ["F", "p n µ u m"],
  ["H", "n µ u m"],
  ["m", "n µ u m c k"],
  ["s", "n µ u m"],
  ["J", "m k"],
  ["g", "m k"],
];

const OTHERS =
  "ohm ohms Hz mN kN N·m cN·m mN·m °C % dB dBm Vpp Vrms Vdc Vac VDC VAC mVpp mVrms mAh Ah Wh kWh min ml ppm rpm " +
  "K/W °C/W mm² cm² mm³ cm³ V/µs lbf·in kgf·cm";

/** Symbols of two signs or more, which behind a number can mean nothing else; Ω too. */
export const CLEAR_UNITS: ReadonlySet<string> = new Set([
  ...PREFIXED.flatMap(([unit, prefixes]) => prefixes.split(" ").map((prefix) => prefix + unit)),
  ...OTHERS.split(" "),
  "Ω",
]);

/** Single letters; behind a number they may also be a pin, a figure or the print on a board. */
export const LETTER_UNITS: ReadonlySet<string> = new Set(["V", "A", "W"]);

export const UNIT_SYMBOLS: ReadonlySet<string> = new Set([
  ...CLEAR_UNITS,
  ...LETTER_UNITS,
  ..."F H J N g s m".split(" "),
]);

/** Spellings in use that SI does not know, with the right one: K is kelvin, k is kilo. */
export const MISSPELT_UNITS: ReadonlyMap<string, string> = new Map([
  ["Nm", "N·m"],
  ["cNm", "cN·m"],
  ["mNm", "mN·m"],
  ["Ncm", "N·cm"],
  ["KΩ", "kΩ"],
  ["Kohm", "kohm"],
  ["KHz", "kHz"],
  ["Khz", "kHz"],
  ["KHZ", "kHz"],
  ["khz", "kHz"],
  ["Mhz", "MHz"],
  ["MHZ", "MHz"],
  ["Ghz", "GHz"],
  ["HZ", "Hz"],
  ["hz", "Hz"],
  ["KV", "kV"],
  ["Kg", "kg"],
  ["pf", "pF"],
  ["nf", "nF"],
  ["uf", "uF"],
]);
