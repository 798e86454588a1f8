/** Voltages up to which the product standards let people touch bare parts, in dry conditions. */

export interface VoltageLimits {
  /** In volts, ripple-free. */
  readonly dc: number;
  /** Peak value in volts, up to 1 kHz. */
  readonly acPeak: number;
}

/**
 * IEC 62368-1:2018 table 4 (ES1; from memory of it), IEC 61010-1:2010 6.3.1 (from memory of it),
 * IEC 60335-1 8.1.4 as quoted in test reports, and IEC 60065 as a maker's test instruction has it.
 */
export const PRODUCT_STANDARDS = {
  "IEC 62368-1": { dc: 60, acPeak: 42.4 },
  "IEC 61010-1": { dc: 60, acPeak: 42.4 },
  "IEC 60335-1": { dc: 42.4, acPeak: 42.4 },
  "IEC 60065": { dc: 60, acPeak: 35 },
} as const satisfies Readonly<Record<string, VoltageLimits>>;

export type ProductStandard = keyof typeof PRODUCT_STANDARDS;

export const USUAL_STANDARD: ProductStandard = "IEC 62368-1";

export function isProductStandard(name: string): name is ProductStandard {
  return Object.hasOwn(PRODUCT_STANDARDS, name);
}
