/** Screw threads of the sizes that kits use: their names, diameters and pitches. Lengths in metres. */

export interface Thread {
  /** `M3`, `4-40`, `1/4-20`. */
  readonly name: string;
  /** Major diameter in m. */
  readonly diameter: number;
  readonly pitch: number;
}

/** Coarse metric threads in mm. Source: ISO 261. */
const METRIC: readonly (readonly [name: string, diameter: number, pitch: number])[] = [
  ["M1.6", 1.6, 0.35],
  ["M2", 2, 0.4],
  ["M2.5", 2.5, 0.45],
  ["M3", 3, 0.5],
  ["M3.5", 3.5, 0.6],
  ["M4", 4, 0.7],
  ["M5", 5, 0.8],
  ["M6", 6, 1],
  ["M8", 8, 1.25],
  ["M10", 10, 1.5],
  ["M12", 12, 1.75],
];

/** Unified threads: diameter in inches (number n: 0.060 + 0.013 n) and threads per inch. ASME B1.1. */
const UNIFIED: readonly (readonly [name: string, inches: number, perInch: number])[] = [
  ["2-56", 0.086, 56],
  ["4-40", 0.112, 40],
  ["6-32", 0.138, 32],
  ["8-32", 0.164, 32],
  ["10-24", 0.19, 24],
  ["1/4-20", 0.25, 20],
];

const THREADS: ReadonlyMap<string, Thread> = new Map(
  [
    ...METRIC.map(([name, mm, pitch]) => thread(name, mm / 1000, pitch / 1000)),
    ...UNIFIED.map(([name, inches, perInch]) => thread(name, inches * 0.0254, 0.0254 / perInch)),
  ].map((one) => [one.name, one]),
);

function thread(name: string, diameter: number, pitch: number): Thread {
  return { name, diameter, pitch };
}

/** Names of all threads known here, metric ones first. */
export const THREAD_NAMES: readonly string[] = [...THREADS.keys()];

const METRIC_WORD = /(?<![\p{L}\p{N}.,])M ?(\d{1,2}(?:[.,]\d)?)(?![\p{N}.,]*\p{N})(?!\p{L}{2})/iu;
const UNIFIED_WORD = /(?<![\p{L}\p{N}.,/])#?(1\/4|\d{1,2})-(\d{2})(?![\p{L}\p{N}])/u;

/**
 * The thread that a text names: `M3`, `M3x10`, `M 3 × 0.5`, `#4-40`. Undefined where it names none
 * of those known here.
 */
export function threadIn(text: string): Thread | undefined {
  const metric = METRIC_WORD.exec(text);
  if (metric) return THREADS.get(`M${metric[1]!.replace(",", ".").replace(/\.0$/, "")}`);
  const unified = UNIFIED_WORD.exec(text);
  return unified ? THREADS.get(`${unified[1]}-${unified[2]}`) : undefined;
}

/**
 * The tensile stress area in m²: π/4 · (d − 0.9382 p)². Source: ISO 898-1; the same for unified
 * threads, ASME B1.1 (0.9743/n).
 */
export function stressArea({ diameter, pitch }: Thread): number {
  return (Math.PI / 4) * (diameter - 0.9382 * pitch) ** 2;
}
