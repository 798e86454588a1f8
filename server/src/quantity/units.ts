/** Unit symbols and prefixes as value texts spell them, with the liberties people take. */
import type { Unit } from "./value.ts";

/** A unit with the power of ten of its prefix. */
export interface ScaledUnit {
  readonly unit: Unit;
  readonly exponent: number;
}

/**
 * Reads what stands behind a number as a unit with an optional prefix: `kΩ`, `uF`, `Volts`.
 * `text` has µ folded to `u` and the ohm sign to `Ω`. A bare prefix (`k`) is no unit. Gives
 * undefined also where the spelling is doubtful (`mohm`, `MF`).
 */
export function readUnit(text: string): ScaledUnit | undefined {
  const spelledOut = readUnitName(text);
  if (spelledOut) return spelledOut;
  for (const { unit, symbol, prefixes } of UNITS) {
    const match = symbol.exec(text);
    if (!match) continue;
    const exponent = prefixes[match[1]!];
    return exponent === undefined ? undefined : { unit, exponent };
  }
  return undefined;
}

/** Names as English and German spell them: `henry`, `kilohm`, `microfarads`, `Mikrofarad`. */
function readUnitName(text: string): ScaledUnit | undefined {
  const match = UNIT_NAME.exec(text.toLowerCase());
  if (!match) return undefined;
  return { unit: NAMED_UNITS[match[2]!]!, exponent: PREFIX_NAMES[match[1]!]! };
}

const PREFIX_NAMES: Prefixes = {
  "": 0,
  kil: 3,
  kilo: 3,
  meg: 6,
  mega: 6,
  giga: 9,
  milli: -3,
  micro: -6,
  mikro: -6,
  nano: -9,
  pico: -12,
  piko: -12,
};

/** By their first three letters. */
const NAMED_UNITS: { readonly [name: string]: Unit } = {
  ohm: "Ω",
  far: "F",
  hen: "H",
  her: "Hz",
  vol: "V",
  wat: "W",
  amp: "A",
};

const UNIT_NAME = new RegExp(
  `^(${Object.keys(PREFIX_NAMES).join("|")})-?(ohm|far|hen|her|vol|wat|amp)` +
    "(?:s|ads?|ry|rys|ries|tz|ts?|[eè]res?)?$",
);

type Prefixes = { readonly [prefix: string]: number };

const METRIC: Prefixes = { "": 0, u: -6, m: -3, k: 3, K: 3 };

/**
 * Prefixes are case-sensitive only where both cases are in use: MΩ and mΩ. Hertz below one and
 * megaampere do not occur, so `mhz` and `MA` are read as meant.
 */
const UNITS: readonly { unit: Unit; symbol: RegExp; prefixes: Prefixes }[] = [
  {
    unit: "Ω",
    symbol: /^([kKMGTm]?)(?:Ω|Ohms?|OHMS?)$/,
    prefixes: { "": 0, m: -3, k: 3, K: 3, M: 6, G: 9, T: 12 },
  },
  // All lower case, `mohm` may be meant as either.
  { unit: "Ω", symbol: /^([kKMG]?)[ -]?ohms?$/, prefixes: { "": 0, k: 3, K: 3, M: 6, G: 9 } },
  // Of shunts: the ohm's R behind milli, where nobody means mega.
  { unit: "Ω", symbol: /^(m)R$/, prefixes: { m: -3 } },
  { unit: "Ω", symbol: /^(meg)(?:Ω|ohms?)?$/i, prefixes: { meg: 6, Meg: 6, MEG: 6 } },
  {
    unit: "F",
    symbol: /^([pnuPNUm]?)(?:F|f)$/,
    prefixes: { "": 0, p: -12, P: -12, n: -9, N: -9, u: -6, U: -6, m: -3 },
  },
  // The older American spellings of microfarad and picofarad.
  { unit: "F", symbol: /^([mMuU])[fF][dD]$/, prefixes: { m: -6, M: -6, u: -6, U: -6 } },
  {
    unit: "F",
    symbol: /^(mm|MM|uu|UU)[fF][dD]?$/,
    prefixes: { mm: -12, MM: -12, uu: -12, UU: -12 },
  },
  {
    unit: "H",
    symbol: /^([pnuNUm]?)(?:H|h)$/,
    prefixes: { "": 0, p: -12, n: -9, N: -9, u: -6, U: -6, m: -3 },
  },
  {
    unit: "Hz",
    symbol: /^([kKmMgG]?)hz$/i,
    prefixes: { "": 0, k: 3, K: 3, m: 6, M: 6, g: 9, G: 9 },
  },
  {
    unit: "V",
    symbol: /^([umkK]?)(?:V|v|[vV]olts?|VOLTS?|W?V ?[dDaA][cC]|v[da]c|WV)$/,
    prefixes: METRIC,
  },
  { unit: "W", symbol: /^([umkK]?)(?:W|w|[wW]atts?|WATTS?)$/, prefixes: METRIC },
  {
    unit: "A",
    symbol: /^([umM]?)(?:A|a|[aA]mps?|AMPS?)$/,
    prefixes: { "": 0, u: -6, m: -3, M: -3 },
  },
  { unit: "m", symbol: /^([mc]?)m$/, prefixes: { "": 0, m: -3, c: -2 } },
];
