/** Trade functions of coils. */

import { gaugeDiameter, gaugeOf } from "../../quantity/wireGauge.ts";
import { inductance, turnsFor, wheelerInductance } from "../coils/inductance.ts";
import { copperResistance, windingLength, woundLength } from "../coils/winding.ts";
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

const windingWire: TradeFunction = {
  name: "windingWire",
  parameters: [TURNS, DIAMETER, number("leads", "wire for both leads together", "m", "rises", 0)],
  unit: "m",
  summary: "Wire that a winding takes, leads included.",
  source: "geometry: turns × π × diameter",
  range: "Close windings on round formers; the slant of the turns adds well below 1 %.",
  example: { written: "windingWire(12; 12 mm; 60 mm)", args: [12, 0.012, 0.06] },
  compute: (args) => windingLength(...(args as [number, number, number])),
};

const closeWinding: TradeFunction = {
  name: "closeWinding",
  parameters: [TURNS, number("wire", "diameter of the wire with its enamel", "m", "rises")],
  unit: "m",
  summary: "Length of a close winding: the least room that the turns need.",
  source: "geometry: turns × wire",
  range: "One layer, turns touching.",
  example: { written: "closeWinding(12; 1.06 mm)", args: [12, 0.00106] },
  compute: (args) => woundLength(...(args as [number, number])),
};

const wireResistance: TradeFunction = {
  name: "wireResistance",
  parameters: [
    number("length", "length of the wire", "m", "rises"),
    number("diameter", "bare diameter of the wire", "m", "falls"),
    number("temperature", "temperature of the wire", "°C", "rises", 20),
  ],
  unit: "Ω",
  summary: "D.c. resistance of a copper wire.",
  source: "IEC 60028 (1/58 Ω·mm²/m at 20 °C), IEC 60287-1-1 (0.00393 per kelvin)",
  range: "Annealed copper, −50 °C to 200 °C; wire is made to about 1 %.",
  example: { written: "wireResistance(1 m; 1 mm; 75 °C)", args: [1, 0.001, 75] },
  compute: (args) => copperResistance(...(args as [number, number, number])),
  warn([, , temperature]) {
    if (Number(temperature) >= -50 && Number(temperature) <= 200) return undefined;
    return "Copper's resistance is a straight line of the temperature only from −50 °C to 200 °C; outside, the figure drifts off.";
  },
};

const wireDiameter: TradeFunction = {
  name: "wireDiameter",
  parameters: [number("gauge", "American wire gauge", "1", "falls")],
  unit: "m",
  summary: "Bare diameter of a wire by its American gauge.",
  source: "ASTM B258",
  range: "Gauges −3 (which is 4/0) to 56.",
  example: { written: "wireDiameter(24)", args: [24] },
  compute: ([gauge]) => gaugeDiameter(Number(gauge)),
  warn: ([gauge]) =>
    Number(gauge) >= -3 && Number(gauge) <= 56
      ? undefined
      : "The standard lists gauges from −3 (4/0) to 56; no wire is sold by this one.",
};

const wireGauge: TradeFunction = {
  name: "wireGauge",
  parameters: [number("diameter", "bare diameter of the wire", "m", "falls")],
  unit: "1",
  summary: "American gauge of a wire, with its fraction.",
  source: "ASTM B258",
  range: "Diameters of 0.012 mm to 11.7 mm.",
  example: { written: "wireGauge(0.5 mm)", args: [0.0005] },
  compute: ([diameter]) => gaugeOf(Number(diameter)),
};

export const COIL_FUNCTIONS: readonly TradeFunction[] = [
  coilInductance,
  coilInductanceWheeler,
  coilTurns,
  windingWire,
  closeWinding,
  wireResistance,
  wireDiameter,
  wireGauge,
];
