/** All trade functions by name. */
import { COIL_FUNCTIONS } from "./coils.ts";
import { FASTENER_FUNCTIONS } from "./fasteners.ts";
import type { TradeFunction } from "./function.ts";
import { HEAT_FUNCTIONS } from "./heat.ts";
import { LEAD_FUNCTIONS } from "./leads.ts";
import { RESISTOR_FUNCTIONS } from "./resistors.ts";
import { SUPPLY_FUNCTIONS } from "./supply.ts";
import { TORQUE_FUNCTIONS } from "./torque.ts";

/** By subject, as the reference page shows them. */
export const FUNCTION_GROUPS: readonly {
  readonly title: string;
  readonly functions: readonly TradeFunction[];
}[] = [
  { title: "Coils and wire", functions: COIL_FUNCTIONS },
  { title: "Holes, screws, nuts and washers", functions: FASTENER_FUNCTIONS },
  { title: "Torque", functions: TORQUE_FUNCTIONS },
  { title: "Heat", functions: HEAT_FUNCTIONS },
  { title: "Resistors and preferred values", functions: RESISTOR_FUNCTIONS },
  { title: "Capacitors and supplies", functions: SUPPLY_FUNCTIONS },
  { title: "Leads", functions: LEAD_FUNCTIONS },
];

export const TRADE_FUNCTIONS: ReadonlyMap<string, TradeFunction> = new Map(
  FUNCTION_GROUPS.flatMap(({ functions }) => functions).map((one) => [one.name, one]),
);
