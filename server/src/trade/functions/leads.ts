/** Trade functions of bent leads. */
import { bendDistance, bendRadius, glassBendDistance, leastHoleSpacing } from "../leads/bend.ts";
import { number, type TradeFunction } from "./function.ts";

const LEAD = number("diameter", "diameter of the lead", "m", "rises");
const WORKMANSHIP = "NASA and IPC workmanship tables, as taught in soldering courses";

/** A length that depends on the lead's diameter alone. */
function ofLead(
  name: string,
  summary: string,
  source: string,
  compute: (diameter: number) => number,
): TradeFunction {
  return {
    name,
    parameters: [LEAD],
    unit: "m",
    summary,
    source,
    range: "Round leads of soft wire.",
    example: { written: `${name}(0.6 mm)`, args: [0.0006] },
    compute: ([diameter]) => compute(Number(diameter)),
  };
}

const spacing: TradeFunction = {
  name: "leastHoleSpacing",
  parameters: [number("body", "length of the body", "m", "rises"), LEAD],
  unit: "m",
  summary: "Least distance of the two holes of a lying part.",
  source: "body and, on each side, bendDistance, bendRadius and half a lead",
  range: "Parts with a lead at each end; many are bent tighter.",
  example: { written: "leastHoleSpacing(6.3 mm; 0.6 mm)", args: [0.0063, 0.0006] },
  compute: (args) => leastHoleSpacing(...(args as [number, number])),
};

export const LEAD_FUNCTIONS: readonly TradeFunction[] = [
  ofLead("bendRadius", "Least inner radius of a bend.", WORKMANSHIP, bendRadius),
  ofLead("bendDistance", "Least straight lead between body and bend.", WORKMANSHIP, bendDistance),
  ofLead(
    "glassBendDistance",
    "The same for glass diodes, which crack.",
    "a diode maker's mounting notes: 1/8 in or three diameters",
    glassBendDistance,
  ),
  spacing,
];
