/** Trade functions of holes, screws, nuts and washers. */
import {
  HEADS,
  type Head,
  headDiameter,
  hexKey,
  nutHeight,
  nutWidth,
  washerBore,
  washerDiameter,
  washerThickness,
} from "../fasteners/hardware.ts";
import { clearanceHole, FITS, readFit, tappingDrill } from "../fasteners/holes.ts";
import {
  lengthInThread,
  lengthWithNut,
  MATERIALS,
  type Material,
} from "../fasteners/screwLength.ts";
import { THREAD_NAMES, type Thread, threadIn } from "../fasteners/threads.ts";
import { type Argument, number, type TradeFunction, word } from "./function.ts";

export const THREAD = word("thread", "thread of the screw", THREAD_NAMES);

/** A thread for which a table has a size. */
function threadWith(size: (thread: Thread) => number) {
  const keys = THREAD_NAMES.filter((name) => Number.isFinite(ofThread(name, size)));
  return word("thread", "thread of the screw", keys);
}

const SIZES = "Coarse metric threads M1.6 to M12";

/** Of the thread that a word names; NaN for one that is not known. */
export function ofThread(key: Argument | undefined, compute: (thread: Thread) => number): number {
  const thread = threadIn(String(key));
  return thread ? compute(thread) : Number.NaN;
}

const clearance: TradeFunction = {
  name: "clearanceHole",
  parameters: [THREAD, word("fit", "fine, medium or coarse", FITS, "medium")],
  unit: "m",
  summary: "Diameter of the hole that a screw passes through.",
  source: "ISO 273; ASME B18.2.8 for unified threads",
  range: `${SIZES}, unified threads 2-56 to 1/4-20.`,
  example: { written: "clearanceHole(M3; fine)", args: ["M3", "fine"] },
  compute([thread, fit]) {
    const known = readFit(String(fit));
    return known ? ofThread(thread, (one) => clearanceHole(one, known)) : Number.NaN;
  },
};

const tapping: TradeFunction = {
  name: "tappingDrill",
  parameters: [THREAD],
  unit: "m",
  summary: "Diameter of the drill before a thread is cut.",
  source: "ISO 2306",
  range: `${SIZES}, unified threads 2-56 to 1/4-20; cut threads, not formed ones.`,
  example: { written: "tappingDrill(M3)", args: ["M3"] },
  compute: ([thread]) => ofThread(thread, tappingDrill),
};

const key: TradeFunction = {
  name: "hexKey",
  parameters: [
    threadWith((thread) => hexKey(thread, "socket")),
    word("head", "socket or countersunk", HEADS, "socket"),
  ],
  unit: "m",
  summary: "Width of the key for a screw with a hexagon socket.",
  source: "ISO 4762 for socket heads, ISO 10642 for countersunk heads",
  range: `${SIZES} (countersunk from M2).`,
  example: { written: "hexKey(M3)", args: ["M3", "socket"] },
  compute([thread, head]) {
    const known = HEADS.find((one) => one === head) as Head | undefined;
    return known ? ofThread(thread, (one) => hexKey(one, known)) : Number.NaN;
  },
};

/** A size that depends on the thread alone. */
function size(
  name: string,
  summary: string,
  source: string,
  compute: (thread: Thread) => number,
): TradeFunction {
  return {
    name,
    parameters: [threadWith(compute)],
    unit: "m",
    summary,
    source,
    range: `${SIZES}.`,
    example: { written: `${name}(M3)`, args: ["M3"] },
    compute: ([thread]) => ofThread(thread, compute),
  };
}

const screwLength: TradeFunction = {
  name: "screwLength",
  parameters: [
    threadWith(nutHeight),
    number("stack", "what is clamped, washers counted in", "m", "rises"),
  ],
  unit: "m",
  summary: "Shortest screw that holds a stack with a nut, two pitches standing out of it.",
  source: "common practice; nut heights ISO 4032",
  range: `${SIZES}, plain hexagon nut. Take the next length that is sold.`,
  example: { written: "screwLength(M3; 5.3 mm)", args: ["M3", 0.0053] },
  compute: ([thread, stack]) => ofThread(thread, (one) => lengthWithNut(one, Number(stack))),
};

const screwInThread: TradeFunction = {
  name: "screwInThread",
  parameters: [
    THREAD,
    number("stack", "what is clamped, washers counted in", "m", "rises"),
    word(
      "material",
      "what the thread is cut in: steel, brass or aluminium",
      MATERIALS,
      "aluminium",
    ),
  ],
  unit: "m",
  summary: "Shortest screw that holds a stack in a tapped hole, as in a heat sink.",
  source:
    "common practice: one diameter of thread in steel, one and a half in brass, two in aluminium",
  range: `${SIZES}, unified threads 2-56 to 1/4-20. The hole must be deep enough for the screw.`,
  example: { written: "screwInThread(M3; 2 mm; aluminium)", args: ["M3", 0.002, "aluminium"] },
  compute([thread, stack, material]) {
    const known = MATERIALS.find((one) => one === material) as Material | undefined;
    if (!known) return Number.NaN;
    return ofThread(thread, (one) => lengthInThread(one, Number(stack), known));
  },
};

export const FASTENER_FUNCTIONS: readonly TradeFunction[] = [
  clearance,
  tapping,
  key,
  size("headDiameter", "Diameter of a socket head.", "ISO 4762", headDiameter),
  size("nutWidth", "Width across the flats of a hexagon nut.", "ISO 4032", nutWidth),
  size("nutHeight", "Height of a hexagon nut.", "ISO 4032", nutHeight),
  size("washerBore", "Hole of a plain washer.", "ISO 7089", washerBore),
  size("washerDiameter", "Outside diameter of a plain washer.", "ISO 7089", washerDiameter),
  size("washerThickness", "Thickness of a plain washer.", "ISO 7089", washerThickness),
  screwLength,
  screwInThread,
];
