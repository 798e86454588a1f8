/** All trade functions by name. */
import { COIL_FUNCTIONS } from "./coils.ts";
import type { TradeFunction } from "./function.ts";

export const TRADE_FUNCTIONS: ReadonlyMap<string, TradeFunction> = new Map(
  [...COIL_FUNCTIONS].map((one) => [one.name, one]),
);
