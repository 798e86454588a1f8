/** Trade functions of heat and of class B output stages. */
import {
  dissipation,
  efficiency,
  inputPower,
  outputPower,
  worstDissipation,
} from "../heat/classB.ts";
import {
  junctionTemperature,
  largestPower,
  largestSink,
  resistanceFromRating,
} from "../heat/junction.ts";
import { number, type TradeFunction, type Trend } from "./function.ts";

const CHAIN_SOURCE = "Tj = Ta + P (Rjc + Rcs + Rsa), as in JESD51 and Rashid, Power Electronics";
const STEADY = "Steady heat of one device; short pulses heat less, a shared sink adds up.";

function chain(trend: Trend) {
  return [
    number("junctionToCase", "thermal resistance from junction to case", "K/W", trend),
    number("caseToSink", "thermal resistance of insulator and paste", "K/W", trend, 0),
    number("sinkToAir", "thermal resistance of the heat sink", "K/W", trend, 0),
  ];
}

const junction: TradeFunction = {
  name: "junctionTemperature",
  parameters: [
    number("power", "heat in the device", "W", "rises"),
    number("ambient", "temperature of the air", "°C", "rises"),
    ...chain("rises"),
  ],
  unit: "°C",
  summary: "Temperature of a junction that heats the air through a chain of thermal resistances.",
  source: CHAIN_SOURCE,
  range: STEADY,
  example: {
    written: "junctionTemperature(125 W; 25 °C; 0.4 K/W; 0.1 K/W; 0.5 K/W)",
    args: [125, 25, 0.4, 0.1, 0.5],
  },
  compute([power, ambient, ...resistances]) {
    return junctionTemperature(Number(power), Number(ambient), resistances as number[]);
  },
};

const power: TradeFunction = {
  name: "powerLimit",
  parameters: [
    number("junctionLimit", "highest temperature of the junction", "°C", "rises"),
    number("ambient", "temperature of the air", "°C", "falls"),
    ...chain("falls"),
  ],
  unit: "W",
  summary: "Heat that brings the junction to its limit.",
  source: CHAIN_SOURCE,
  range: STEADY,
  example: {
    written: "powerLimit(175 °C; 25 °C; 7.5 K/W; 1 K/W; 5 K/W)",
    args: [175, 25, 7.5, 1, 5],
  },
  compute([junctionLimit, ambient, ...resistances]) {
    return largestPower(Number(junctionLimit), Number(ambient), resistances as number[]);
  },
};

const sink: TradeFunction = {
  name: "heatSinkLimit",
  parameters: [
    number("power", "heat in the device", "W", "falls"),
    number("junctionLimit", "highest temperature of the junction", "°C", "rises"),
    number("ambient", "temperature of the air", "°C", "falls"),
    ...chain("falls").slice(0, 2),
  ],
  unit: "K/W",
  summary: "Largest thermal resistance that the heat sink may have; below zero none will do.",
  source: CHAIN_SOURCE,
  range: STEADY,
  example: {
    written: "heatSinkLimit(5 W; 150 °C; 50 °C; 3 K/W; 1 K/W)",
    args: [5, 150, 50, 3, 1],
  },
  compute([watts, junctionLimit, ambient, ...resistances]) {
    const figures = [Number(watts), Number(junctionLimit), Number(ambient)] as const;
    return largestSink(...figures, resistances as number[]);
  },
};

const rating: TradeFunction = {
  name: "junctionToCase",
  parameters: [
    number("power", "rated power of the device", "W", "falls"),
    number("junctionLimit", "highest temperature of the junction", "°C", "rises"),
    number("case", "case temperature of the rating", "°C", "falls", 25),
  ],
  unit: "K/W",
  summary: "Thermal resistance from junction to case, out of a power rating.",
  source: "Rjc = (Tj,max − Tc) / P: how data sheets state the rating",
  range: "Ratings at a case temperature, not at an air temperature.",
  example: { written: "junctionToCase(125 W; 150 °C)", args: [125, 150, 25] },
  compute: (args) => resistanceFromRating(...(args as [number, number, number])),
};

const RAIL = "voltage of one supply, of two equal ones";
const CLASS_B_SOURCE = "Boylestad and Nashelsky, Electronic Devices and Circuit Theory";
const CLASS_B_RANGE =
  "Sine wave, resistive load, no idle current; a loudspeaker can double the heat.";

const load = (trend: Trend) => number("load", "resistance of the load", "Ω", trend);
const rail = (trend: Trend) => number("rail", RAIL, "V", trend);
const peak = (trend: Trend) => number("peak", "peak voltage across the load", "V", trend);

/** A figure of a class B stage; all of them hold under the same conditions. */
function classB(
  one: Pick<TradeFunction, "name" | "parameters" | "summary" | "example" | "compute"> & {
    readonly unit?: string;
  },
): TradeFunction {
  return { unit: "W", source: CLASS_B_SOURCE, range: CLASS_B_RANGE, ...one };
}

export const HEAT_FUNCTIONS: readonly TradeFunction[] = [
  junction,
  power,
  sink,
  rating,
  classB({
    name: "classBOutput",
    parameters: [peak("rises"), load("falls")],
    summary: "Power that a sine wave of a peak voltage gives the load.",
    example: { written: "classBOutput(30 V; 16 Ω)", args: [30, 16] },
    compute: (args) => outputPower(...(args as [number, number])),
  }),
  classB({
    name: "classBInput",
    parameters: [rail("rises"), load("falls"), peak("rises")],
    summary: "Power that both supplies of a class B stage deliver.",
    example: { written: "classBInput(30 V; 16 Ω; 30 V)", args: [30, 16, 30] },
    compute: (args) => inputPower(...(args as [number, number, number])),
  }),
  classB({
    name: "classBHeat",
    parameters: [rail("rises"), load("falls"), peak("either")],
    summary: "Heat of both output devices together at a peak voltage.",
    example: { written: "classBHeat(30 V; 16 Ω; 19.1 V)", args: [30, 16, 19.1] },
    compute: (args) => dissipation(...(args as [number, number, number])),
  }),
  classB({
    name: "classBWorstHeat",
    parameters: [rail("rises"), load("falls")],
    summary: "The most heat of both output devices together, which comes at 64 % of full output.",
    example: { written: "classBWorstHeat(30 V; 16 Ω)", args: [30, 16] },
    compute: (args) => worstDissipation(...(args as [number, number])),
  }),
  classB({
    name: "classBEfficiency",
    parameters: [rail("falls"), peak("rises")],
    unit: "1",
    summary: "Share of the supplies' power that reaches the load.",
    example: { written: "classBEfficiency(24 V; 22 V)", args: [24, 22] },
    compute: (args) => efficiency(...(args as [number, number])),
  }),
];
