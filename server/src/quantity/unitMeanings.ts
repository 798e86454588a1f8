/**
 * Unit symbols as figures write them: SI with its prefixes, and what the shop uses beside it.
 * Stricter than `units.ts`, which takes the liberties of value cells. Factors are exact by definition
 * (SI brochure; NIST SP 811 (2008) appendix B for inch, pound-force and kilogram-force).
 */
import { type Dimension, dimension, NO_DIMENSION } from "./dimension.ts";

export interface UnitMeaning {
  /** One unit is `factor` × 10^`exponent` of the coherent SI unit. */
  readonly factor: number;
  readonly exponent: number;
  readonly dimension: Dimension;
  /** What a result in this unit is printed in, without prefix: `N·m` for kgf·cm, `%`, `°C`. */
  readonly coherent: string;
  /** A temperature in °C is a point on a scale; a wire gauge is looked up. */
  readonly scale?: "celsius" | "gauge";
}

const LENGTH = dimension({ m: 1 });
const MASS = dimension({ kg: 1 });
const TIME = dimension({ s: 1 });
const CURRENT = dimension({ A: 1 });
const FREQUENCY = dimension({ s: -1 });
const FORCE = dimension({ kg: 1, m: 1, s: -2 });
const TORQUE = dimension({ kg: 1, m: 2, s: -2 });
const POWER = dimension({ kg: 1, m: 2, s: -3 });
const CHARGE = dimension({ s: 1, A: 1 });
const VOLTAGE = dimension({ kg: 1, m: 2, s: -3, A: -1 });
const RESISTANCE = dimension({ kg: 1, m: 2, s: -3, A: -2 });
const CONDUCTANCE = dimension({ kg: -1, m: -2, s: 3, A: 2 });
const CAPACITANCE = dimension({ kg: -1, m: -2, s: 4, A: 2 });
const INDUCTANCE = dimension({ kg: 1, m: 2, s: -2, A: -2 });

/** The powers of ten of the SI prefixes in use in the trade. */
const EXPONENTS: { readonly [prefix: string]: number } = {
  f: -15,
  p: -12,
  n: -9,
  µ: -6,
  u: -6,
  m: -3,
  c: -2,
  d: -1,
  k: 3,
  M: 6,
  G: 9,
  T: 12,
};
const THOUSANDS = "f p n µ u m k M G T";

interface Symbols {
  readonly dimension: Dimension;
  readonly coherent: string;
  /** With the power of ten that the bare symbol stands for. */
  readonly exponent?: number;
  readonly prefixes?: string;
}

/** SI units that take prefixes. */
const SI: { readonly [symbol: string]: Symbols } = {
  m: { dimension: LENGTH, coherent: "m", prefixes: `${THOUSANDS} c d` },
  g: { dimension: MASS, coherent: "kg", exponent: -3, prefixes: "n µ u m k" },
  s: { dimension: TIME, coherent: "s" },
  A: { dimension: CURRENT, coherent: "A" },
  K: { dimension: dimension({ K: 1 }), coherent: "K", prefixes: "µ u m k" },
  V: { dimension: VOLTAGE, coherent: "V" },
  W: { dimension: POWER, coherent: "W" },
  VA: { dimension: POWER, coherent: "VA", prefixes: "m k M" },
  Ω: { dimension: RESISTANCE, coherent: "Ω" },
  ohm: { dimension: RESISTANCE, coherent: "Ω" },
  Ohm: { dimension: RESISTANCE, coherent: "Ω" },
  S: { dimension: CONDUCTANCE, coherent: "S" },
  F: { dimension: CAPACITANCE, coherent: "F" },
  H: { dimension: INDUCTANCE, coherent: "H" },
  Hz: { dimension: FREQUENCY, coherent: "Hz" },
  C: { dimension: CHARGE, coherent: "C" },
  J: { dimension: TORQUE, coherent: "J" },
  N: { dimension: FORCE, coherent: "N", prefixes: `${THOUSANDS} c d` },
  Nm: { dimension: TORQUE, coherent: "N·m", prefixes: `${THOUSANDS} c d` },
  Pa: { dimension: dimension({ kg: 1, m: -1, s: -2 }), coherent: "Pa" },
  T: { dimension: dimension({ kg: 1, s: -2, A: -1 }), coherent: "T" },
  Wb: { dimension: dimension({ kg: 1, m: 2, s: -2, A: -1 }), coherent: "Wb" },
  cd: { dimension: dimension({ cd: 1 }), coherent: "cd", prefixes: "µ u m k" },
  lm: { dimension: dimension({ cd: 1 }), coherent: "lm", prefixes: "m k" },
  lx: { dimension: dimension({ cd: 1, m: -2 }), coherent: "lx", prefixes: "m k" },
};

function plain(factor: number, coherent: string, of: Dimension, exponent = 0): UnitMeaning {
  return { factor, exponent, dimension: of, coherent };
}

const STANDARD_GRAVITY = 9.80665;
const POUND = 0.45359237;

/** Units without prefixes. */
const OTHERS: { readonly [symbol: string]: UnitMeaning } = {
  "%": plain(1, "%", NO_DIMENSION, -2),
  "‰": plain(1, "1", NO_DIMENSION, -3),
  ppm: plain(1, "1", NO_DIMENSION, -6),
  rad: plain(1, "rad", NO_DIMENSION),
  "°": plain(Math.PI / 180, "rad", NO_DIMENSION),
  "°C": { ...plain(1, "°C", dimension({ K: 1 })), scale: "celsius" },
  min: plain(60, "s", TIME),
  h: plain(3600, "s", TIME),
  Ah: plain(3600, "C", CHARGE),
  mAh: plain(3600, "C", CHARGE, -3),
  Wh: plain(3600, "J", TORQUE),
  mWh: plain(3600, "J", TORQUE, -3),
  kWh: plain(3600, "J", TORQUE, 3),
  rpm: plain(1 / 60, "Hz", FREQUENCY),
  Ncm: plain(1, "N·m", TORQUE, -2),
  in: plain(254, "m", LENGTH, -4),
  mil: plain(254, "m", LENGTH, -7),
  ft: plain(3048, "m", LENGTH, -4),
  lb: plain(POUND, "kg", MASS),
  oz: plain(POUND / 16, "kg", MASS),
  kgf: plain(STANDARD_GRAVITY, "N", FORCE),
  gf: plain(STANDARD_GRAVITY, "N", FORCE, -3),
  lbf: plain(POUND * STANDARD_GRAVITY, "N", FORCE),
  ozf: plain((POUND * STANDARD_GRAVITY) / 16, "N", FORCE),
  dB: plain(1, "dB", dimension({ dB: 1 })),
  AWG: { ...plain(1, "m", LENGTH), scale: "gauge" },
};

/** All symbols, µ written as U+00B5. */
const SYMBOLS: ReadonlyMap<string, UnitMeaning> = new Map([
  ...prefixed(),
  ...Object.entries(OTHERS),
]);

function* prefixed(): Generator<[string, UnitMeaning]> {
  for (const [symbol, { dimension: of, coherent, exponent = 0, prefixes }] of Object.entries(SI)) {
    yield [symbol, plain(1, coherent, of, exponent)];
    for (const prefix of (prefixes ?? THOUSANDS).split(" ")) {
      yield [prefix + symbol, plain(1, coherent, of, exponent + EXPONENTS[prefix]!)];
    }
  }
}

/** One symbol with its prefix (`kΩ`, `lbf`); undefined when there is none such. Case counts. */
export function unitSymbol(symbol: string): UnitMeaning | undefined {
  const known = SYMBOLS.get(symbol);
  if (known || /^[ -~]*$/.test(symbol)) return known;
  return SYMBOLS.get(
    symbol
      .replace(/\u03bc/g, "µ")
      .replace(/\u2126/g, "Ω")
      .replace("\u2103", "°C")
      // The raised o of Spanish and Italian keyboards.
      .replace("º", "°"),
  );
}

/** For "did you mean": every symbol there is. */
export function unitSymbols(): Iterable<string> {
  return SYMBOLS.keys();
}
