/** Trade functions of coils. */
import { inductance, turnsFor, wheelerInductance } from "../coils/inductance.ts";
import { type Argument, number, type TradeFunction } from "./function.ts";

const TURNS = number("turns", "number of turns", "1", "rises");
const DIAMETER = number("diameter", "mean diameter of a turn: former and one wire", "m", "rises");
const LENGTH = number(
  "length",
  "winding from middle of first to middle of last turn",
  "m",
  "falls",
);

function coil(args: readonly Argument[]) {
  const [turns, diameter, length] = args as readonly number[];
  return { turns: turns!, diameter: diameter!, length: length! };
}

const coilInductance: TradeFunction = {
  name: "coilInductance",
  parameters: [TURNS, DIAMETER, LENGTH],
  unit: "H",
  summary: "Inductance of a single-layer air-core coil, by Nagaoka's coefficient.",
  source: "H. Nagaoka, Journal of the College of Science, Tokyo, 27 (1909), article 6",
  range: "Close winding of round wire, length at least a tenth of the diameter, no core.",
  example: { written: "coilInductance(12; 10 mm; 15 mm)", args: [12, 0.01, 0.015] },
  compute: (args) => inductance(coil(args)),
  warn(args) {
    const { diameter, length } = coil(args);
    if (length >= diameter / 10) return undefined;
    return "The winding is shorter than a tenth of its diameter: the formula takes it for a thin sheet, and real wire departs from that by more than a few per cent. Measure the coil.";
  },
};

const coilInductanceWheeler: TradeFunction = {
  name: "coilInductanceWheeler",
  parameters: [TURNS, DIAMETER, LENGTH],
  unit: "H",
  summary: "The same by Wheeler's approximation, for comparison with printed tables.",
  source: "H. A. Wheeler, Proceedings of the IRE 16 (1928)",
  range: "Winding at least 0.4 times as long as wide: within 1 % there.",
  example: { written: "coilInductanceWheeler(10; 18 mm; 20 mm)", args: [10, 0.018, 0.02] },
  compute: (args) => wheelerInductance(coil(args)),
  warn(args) {
    const { diameter, length } = coil(args);
    if (length >= 0.4 * diameter) return undefined;
    return "The winding is shorter than 0.4 times its diameter: Wheeler's formula comes out low there, by 4 % at 0.2. Use coilInductance.";
  },
};

const coilTurns: TradeFunction = {
  name: "coilTurns",
  parameters: [
    number("inductance", "inductance wanted", "H", "rises"),
    { ...DIAMETER, trend: "falls" },
    { ...LENGTH, trend: "rises" },
  ],
  unit: "1",
  summary: "Turns of a single-layer air-core coil for an inductance, by Nagaoka's coefficient.",
  source: coilInductance.source,
  range: coilInductance.range,
  example: { written: "coilTurns(10 µH; 25.4 mm; 31.75 mm)", args: [10e-6, 0.0254, 0.03175] },
  compute: (args) => turnsFor(...(args as [number, number, number])),
  warn: (args) => coilInductance.warn?.(args),
};

export const COIL_FUNCTIONS: readonly TradeFunction[] = [
  coilInductance,
  coilInductanceWheeler,
  coilTurns,
];
