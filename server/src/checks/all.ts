/** All checks, in the order of the pages. */
import type { Check } from "./check.ts";

export const CHECKS: readonly Check[] = [];
