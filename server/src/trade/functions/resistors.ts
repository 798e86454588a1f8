/** Trade functions of resistors and preferred values. */
import { ledResistor, parallel } from "../resistors/circuits.ts";
import { currentAt, deratingFactor, FILM, voltageAt } from "../resistors/derating.ts";
import { preferredValue, ROUNDINGS, type Rounding, SERIES } from "../resistors/preferred.ts";
import { number, type TradeFunction, word } from "./function.ts";

const derated: TradeFunction = {
  name: "deratedPower",
  parameters: [
    number("rating", "rated power", "W", "rises"),
    number("ambient", "temperature of the air", "°C", "falls"),
    number("full", "temperature up to which all of it holds", "°C", "rises", FILM.full),
    number("zero", "temperature at which nothing is left", "°C", "rises", FILM.zero),
  ],
  unit: "W",
  summary: "Power that a resistor stands in hot air.",
  source: "makers' data sheets of film resistors, after IEC 60115: straight from 70 °C to 155 °C",
  range: "Film resistors; for others give their own two temperatures.",
  example: { written: "deratedPower(0.25 W; 100 °C)", args: [0.25, 100, FILM.full, FILM.zero] },
  compute([rating, ambient, full, zero]) {
    const derating = { full: Number(full), zero: Number(zero) };
    return Number(rating) * deratingFactor(Number(ambient), derating);
  },
};

const voltage: TradeFunction = {
  name: "resistorVoltage",
  parameters: [
    number("power", "power of the resistor", "W", "rises"),
    number("resistance", "its resistance", "Ω", "rises"),
  ],
  unit: "V",
  summary: "Voltage at which a resistor turns that power into heat.",
  source: "√(P R)",
  range: "Up to the working voltage of the type: 250 V for a usual quarter-watt resistor.",
  example: { written: "resistorVoltage(0.25 W; 4.7 kΩ)", args: [0.25, 4700] },
  compute: (args) => voltageAt(...(args as [number, number])),
};

const current: TradeFunction = {
  name: "resistorCurrent",
  parameters: [
    number("power", "power of the resistor", "W", "rises"),
    number("resistance", "its resistance", "Ω", "falls"),
  ],
  unit: "A",
  summary: "Current at which a resistor turns that power into heat.",
  source: "√(P / R)",
  range: "All resistors.",
  example: { written: "resistorCurrent(0.25 W; 4.7 kΩ)", args: [0.25, 4700] },
  compute: (args) => currentAt(...(args as [number, number])),
};

const led: TradeFunction = {
  name: "ledResistor",
  parameters: [
    number("supply", "supply voltage", "V", "rises"),
    number("forward", "forward voltage of the diode, or of all in the chain", "V", "falls"),
    number("current", "current wanted", "A", "falls"),
  ],
  unit: "Ω",
  summary: "Resistor in series with light-emitting diodes.",
  source: "(V − Vf) / I; Lessons In Electric Circuits (Kuphaldt), Semiconductors",
  range: "Supply well above the forward voltage, or the current depends on the diode.",
  example: { written: "ledResistor(6 V; 1.6 V; 20 mA)", args: [6, 1.6, 0.02] },
  compute: (args) => ledResistor(...(args as [number, number, number])),
  warn([supply, forward]) {
    if (!(Number(supply) - Number(forward) < 0.5)) return undefined;
    return "Less than 0.5 V is left for the resistor: the current then depends on the diode more than on the resistor.";
  },
};

const beside = (name: string, standard?: number) =>
  number(name, "a resistance", "Ω", "rises", standard);

const side: TradeFunction = {
  name: "parallelResistance",
  parameters: [
    beside("first"),
    beside("second"),
    beside("third", Number.POSITIVE_INFINITY),
    beside("fourth", Number.POSITIVE_INFINITY),
  ],
  unit: "Ω",
  summary: "Resistance of resistors side by side.",
  source: "1 / (1/R1 + 1/R2 + …)",
  range: "Two to four resistors.",
  example: {
    written: "parallelResistance(10 kΩ; 15 kΩ)",
    args: [10_000, 15_000, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY],
  },
  compute: (args) => parallel(args as number[]),
};

/** Preferred values are the same for all parts; the unit differs. */
function preferred(
  name: string,
  what: string,
  unit: string,
  series: string,
  written: string,
  amount: number,
): TradeFunction {
  return {
    name,
    parameters: [
      number("value", `${what} wanted`, unit, "rises"),
      word("series", "E3 to E192", SERIES, series),
      word("rounding", "nearest, up or down", ROUNDINGS, "nearest"),
    ],
    unit,
    summary: `Preferred ${what} next to a computed one, nearest by ratio.`,
    source: "IEC 60063",
    range: "Values above zero. Not every maker sells every value of the finer series.",
    example: { written, args: [amount, series, "nearest"] },
    compute([value, of, rounding]) {
      const known = ROUNDINGS.find((one) => one === rounding) as Rounding | undefined;
      return known ? preferredValue(Number(value), String(of), known) : Number.NaN;
    },
  };
}

export const RESISTOR_FUNCTIONS: readonly TradeFunction[] = [
  derated,
  voltage,
  current,
  led,
  side,
  preferred("preferredResistor", "resistance", "Ω", "E24", "preferredResistor(319 Ω)", 319),
  preferred("preferredCapacitor", "capacitance", "F", "E6", "preferredCapacitor(8 nF)", 8e-9),
  preferred("preferredInductor", "inductance", "H", "E12", "preferredInductor(9 µH)", 9e-6),
];
