/** Usual heights of round and boxed capacitors, by diameter or pitch. */
import type { UsualHeight } from "./usualHeights.ts";

/**
 * Radial electrolytics by diameter in mm: K3D entries whose names carry the height. Entries without
 * one are drawn as tall as wide there, which no such capacitor is. 4 and 13 mm from memory.
 */
const RADIAL: readonly (readonly [diameter: number, mm: number, range?: string])[] = [
  [4, 7],
  [5, 11],
  [6.3, 11],
  [8, 11.5],
  [10, 16, "12.5 to 20"],
  [12.5, 20, "20 to 25"],
  [13, 21, "20 to 25"],
  [16, 25, "25 to 35.5"],
  [18, 35.5],
];

/** The usual height of a radial electrolytic of that diameter. */
export function radialHeight(diameter: number): UsualHeight | undefined {
  const row = RADIAL.find(([size]) => Math.abs(size - diameter) <= 0.3);
  if (!row) return undefined;
  const range = row[2] ? ` (${row[2]} mm are made)` : "";
  return { mm: row[1], of: `a radial electrolytic of ${diameter} mm${range}` };
}

/** Film boxes by pitch: K3D. */
const FILM_BOX: readonly (readonly [pitch: number, mm: number])[] = [
  [2.5, 7],
  [7.5, 8.5],
  [10, 10],
  [15, 15],
  [22.5, 21],
];

/** Film boxes with 5 mm pitch grow with their width: makers' tables from memory (K3D draws all 9.0). */
const FILM_BOX_5: readonly (readonly [width: number, mm: number])[] = [
  [2.5, 6.5],
  [3, 7.5],
  [3.5, 8.5],
  [4.5, 9.5],
  [5, 10],
  [7.2, 11],
];

/** The usual height of a film capacitor box; sizes in mm. */
export function filmBoxHeight(pitch: number, width?: number): UsualHeight | undefined {
  const near = (a: number, b: number) => Math.abs(a - b) <= 0.16;
  const five = near(pitch, 5) ? FILM_BOX_5.find(([size]) => (width ?? 2.5) <= size) : undefined;
  const row = five ?? FILM_BOX.find(([size]) => near(size, pitch));
  return row && { mm: row[1], of: `a film capacitor of ${row === five ? 5 : row[0]} mm pitch` };
}
