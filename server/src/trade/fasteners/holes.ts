/** Holes for screws: those they pass through and those a thread is cut in. Lengths in metres. */
import type { Thread } from "./threads.ts";

export const FITS = ["fine", "medium", "coarse"] as const;
export type Fit = (typeof FITS)[number];

type Row = readonly [fine: number, medium: number, coarse: number];

/** Clearance holes in mm. Source: ISO 273:1979. */
const METRIC: { readonly [thread: string]: Row } = {
  "M1.6": [1.7, 1.8, 2],
  M2: [2.2, 2.4, 2.6],
  "M2.5": [2.7, 2.9, 3.1],
  M3: [3.2, 3.4, 3.6],
  "M3.5": [3.7, 3.9, 4.2],
  M4: [4.3, 4.5, 4.8],
  M5: [5.3, 5.5, 5.8],
  M6: [6.4, 6.6, 7],
  M8: [8.4, 9, 10],
  M10: [10.5, 11, 12],
  M12: [13, 13.5, 14.5],
};

/** Close, normal and loose holes in mm, as tables in millimetres round them. Source: ASME B18.2.8. */
const UNIFIED: { readonly [thread: string]: Row } = {
  "2-56": [2.4, 2.6, 2.9],
  "4-40": [3, 3.3, 3.7],
  "6-32": [3.9, 4.3, 4.7],
  "8-32": [4.6, 5, 5.4],
  "10-24": [5.2, 5.6, 6],
  "1/4-20": [6.8, 7.1, 7.5],
};

/** Tapping drills in mm for steel and aluminium. Source: ISO 2306, coarse threads. */
const TAPPING: { readonly [thread: string]: number } = {
  "M1.6": 1.25,
  M2: 1.6,
  "M2.5": 2.05,
  M3: 2.5,
  "M3.5": 2.9,
  M4: 3.3,
  M5: 4.2,
  M6: 5,
  M8: 6.8,
  M10: 8.5,
  M12: 10.2,
  "2-56": 1.85,
  "4-40": 2.35,
  "6-32": 2.85,
  "8-32": 3.5,
  "10-24": 3.9,
  "1/4-20": 5.1,
};

/** The fit that a word means: ISO 273 says fine, medium, coarse; ASME B18.2.8 close, normal, loose. */
export function readFit(word: string): Fit | undefined {
  const folded = word.trim().toLowerCase();
  return FITS.find((fit) => fit === folded) ?? AMERICAN.get(folded);
}

const AMERICAN = new Map<string, Fit>([
  ["close", "fine"],
  ["normal", "medium"],
  ["loose", "coarse"],
]);

/** Diameter in m of the hole a screw passes through. Source: ISO 273, ASME B18.2.8. */
export function clearanceHole({ name }: Thread, fit: Fit): number {
  const row = METRIC[name] ?? UNIFIED[name];
  return row ? row[FITS.indexOf(fit)]! / 1000 : Number.NaN;
}

/** The standard that the clearance holes of a thread come from. */
export function holeStandard({ name }: Thread): string {
  return name in METRIC ? "ISO 273" : "ASME B18.2.8";
}

/** Diameter in m of the drill before a thread is cut. Source: ISO 2306. */
export function tappingDrill({ name }: Thread): number {
  const mm = TAPPING[name];
  return mm === undefined ? Number.NaN : mm / 1000;
}

/**
 * The widest drill in m before a thread: in hard metal, where a full thread would break the tap,
 * 0.6 of the pitch are left (common practice; tables give 2.7 mm for M3 and 3.5 mm for M4).
 */
export function hardTappingDrill({ diameter, pitch }: Thread): number {
  return Math.ceil((diameter - 0.6 * pitch) * 20_000) / 20_000;
}

/** Where a hole lies among the classes of the standard. */
export type HoleClass =
  | Fit
  | "below fine"
  | "between fine and medium"
  | "between medium and coarse"
  | "above coarse";

/** Drills are no better than this: a hole within 0.02 mm of a class is of that class. */
const SAME = 0.02e-3;

/** The class of a hole of that diameter in m for the screw. */
export function holeClass(screw: Thread, diameter: number): HoleClass {
  const exact = FITS.find((fit) => Math.abs(clearanceHole(screw, fit) - diameter) <= SAME);
  if (exact) return exact;
  if (diameter < clearanceHole(screw, "fine")) return "below fine";
  if (diameter < clearanceHole(screw, "medium")) return "between fine and medium";
  return diameter < clearanceHole(screw, "coarse") ? "between medium and coarse" : "above coarse";
}
