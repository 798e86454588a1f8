/** Counts findings, those not shown included. */
import type { Severity } from "./check.ts";

export interface Counted {
  readonly severity: Severity;
  /** How many findings are left out in favour of this one, by severity. */
  readonly standsFor?: Readonly<Partial<Record<Severity, number>>>;
}

/** How many findings of a severity there are. */
export function count(findings: readonly Counted[], severity: Severity): number {
  let sum = 0;
  for (const finding of findings) {
    if (finding.standsFor) sum += finding.standsFor[severity] ?? 0;
    else if (finding.severity === severity) sum++;
  }
  return sum;
}
