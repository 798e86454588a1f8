/** Trade functions of capacitors, supplies and the lamp that limits a current. */
import {
  bleederResistor,
  dischargeTime,
  storedEnergy,
  voltageAfter,
} from "../capacitors/charge.ts";
import { coldResistance, hotResistance, limitCurrent } from "../supply/lamp.ts";
import { peakVoltage, rippleVoltage } from "../supply/reservoir.ts";
import { type Argument, number, type TradeFunction, type Trend } from "./function.ts";

const farads = (trend: Trend) => number("capacitance", "its capacitance", "F", trend);
const from = (trend: Trend) => number("from", "voltage at the start", "V", trend);
const to = (trend: Trend) => number("to", "voltage at the end", "V", trend);

const energy: TradeFunction = {
  name: "storedEnergy",
  parameters: [farads("rises"), number("voltage", "voltage across it", "V", "rises")],
  unit: "J",
  summary: "Energy in a charged capacitor.",
  source: "C V² / 2",
  range: "All capacitors.",
  example: { written: "storedEnergy(10 000 µF; 45 V)", args: [0.01, 45] },
  compute: (args) => storedEnergy(...(args as [number, number])),
};

const EXPONENTIAL = "R C ln(V1 / V2)";
const BLEEDING =
  "One resistor across one capacitor. Measure before you touch: a bleeder may be open.";

const time: TradeFunction = {
  name: "dischargeTime",
  parameters: [
    farads("rises"),
    number("resistance", "resistor across it", "Ω", "rises"),
    from("rises"),
    to("falls"),
  ],
  unit: "s",
  summary: "Time in which a resistor discharges a capacitor to a voltage.",
  source: EXPONENTIAL,
  range: BLEEDING,
  example: {
    written: "dischargeTime(10 000 µF; 2.2 kΩ; 63 V; 60 V)",
    args: [0.01, 2200, 63, 60],
  },
  compute: (args) => dischargeTime(...(args as [number, number, number, number])),
};

const voltage: TradeFunction = {
  name: "dischargeVoltage",
  parameters: [
    farads("rises"),
    number("resistance", "resistor across it", "Ω", "rises"),
    from("rises"),
    number("time", "time since then", "s", "falls"),
  ],
  unit: "V",
  summary: "Voltage that is left on a capacitor after a time.",
  source: "V e^(−t / R C)",
  range: BLEEDING,
  example: {
    written: "dischargeVoltage(10 000 µF; 2.2 kΩ; 63 V; 22 s)",
    args: [0.01, 2200, 63, 22],
  },
  compute: (args) => voltageAfter(...(args as [number, number, number, number])),
};

const bleeder: TradeFunction = {
  name: "bleederResistor",
  parameters: [
    farads("falls"),
    from("falls"),
    to("rises"),
    number("time", "time it may take", "s", "rises"),
  ],
  unit: "Ω",
  summary: "Largest resistor that discharges a capacitor to a voltage in a time.",
  source: EXPONENTIAL,
  range: BLEEDING,
  example: { written: "bleederResistor(0.47 µF; 373 V; 60 V; 2 s)", args: [0.47e-6, 373, 60, 2] },
  compute: (args) => bleederResistor(...(args as [number, number, number, number])),
};

const ripple: TradeFunction = {
  name: "rippleVoltage",
  parameters: [
    number("current", "load current", "A", "rises"),
    farads("falls"),
    number("mains", "mains frequency", "Hz", "falls", 50),
  ],
  unit: "V",
  summary: "Ripple after a full-wave rectifier, from peak to peak: an upper bound.",
  source: "I / (2 f C); Malvino and Bates, Electronic Principles",
  range: "Ripple small against the voltage. Real ripple is 7 % to a third lower.",
  example: { written: "rippleVoltage(2 A; 10 000 µF)", args: [2, 0.01, 50] },
  compute: (args) => rippleVoltage(...(args as [number, number, number])),
};

const reservoir: TradeFunction = {
  name: "reservoirVoltage",
  parameters: [
    number("secondary", "rated r.m.s. voltage of the winding", "V", "rises"),
    number("regulation", "rise of the winding without load", "1", "rises", 0),
    number("tolerance", "rise of the mains", "1", "rises", 0),
    number("drop", "drop of the diodes in the path", "V", "falls", 0),
  ],
  unit: "V",
  summary: "Voltage of the reservoir capacitor without load: what its rating must stand.",
  source: "√2 V (1 + regulation) (1 + tolerance) − drop",
  range: "Full-wave rectifier with capacitor input.",
  example: {
    written: "reservoirVoltage(18 V; 8 %; 10 %; 1.4 V)",
    args: [18, 0.08, 0.1, 1.4],
  },
  compute: (args) => peakVoltage(...(args as [number, number, number, number])),
};

const LAMP_RANGE = "Filament lamps only. A lamp with electronics in it limits nothing.";
const COLD_RATIO = 12;

function lamp([power, voltage]: readonly Argument[]) {
  return { power: Number(power), voltage: Number(voltage) };
}

function printed(power: Trend, voltage: Trend) {
  return [
    number("power", "power printed on the lamp", "W", power),
    number("voltage", "voltage printed on the lamp", "V", voltage),
  ];
}

const hot: TradeFunction = {
  name: "lampHotResistance",
  parameters: printed("falls", "rises"),
  unit: "Ω",
  summary: "Resistance of a filament lamp at full brightness.",
  source: "V² / P",
  range: LAMP_RANGE,
  example: { written: "lampHotResistance(60 W; 230 V)", args: [60, 230] },
  compute: (args) => hotResistance(lamp(args)),
};

const cold: TradeFunction = {
  name: "lampColdResistance",
  parameters: [
    ...printed("falls", "rises"),
    number("ratio", "hot to cold resistance", "1", "falls", COLD_RATIO),
  ],
  unit: "Ω",
  summary: "Resistance of a cold filament lamp, which lets a working circuit start.",
  source: "tungsten: 10 to 15 times less than hot, lamp makers' figures",
  range: LAMP_RANGE,
  example: { written: "lampColdResistance(60 W; 230 V)", args: [60, 230, COLD_RATIO] },
  compute: (args) => coldResistance(lamp(args), Number(args[2])),
  warn: ([, , ratio]) =>
    Number(ratio) >= 10 && Number(ratio) <= 15
      ? undefined
      : "Cold tungsten has a tenth to a fifteenth of its hot resistance; other ratios are no filament lamp's.",
};

const limit: TradeFunction = {
  name: "lampCurrentLimit",
  parameters: printed("rises", "falls"),
  unit: "A",
  summary: "Current that a lamp in series lets flow into a short circuit.",
  source: "P / V",
  range: LAMP_RANGE,
  example: { written: "lampCurrentLimit(60 W; 230 V)", args: [60, 230] },
  compute: (args) => limitCurrent(lamp(args)),
};

export const SUPPLY_FUNCTIONS: readonly TradeFunction[] = [
  energy,
  time,
  voltage,
  bleeder,
  ripple,
  reservoir,
  hot,
  cold,
  limit,
];
