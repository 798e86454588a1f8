/**
 * Heights of chip parts by their size code in hundredths of an inch (0805 is 2.0 × 1.25 mm).
 * Capacitors after the dimensions in the generator parameters of kicad-3d-models-in-freecad where
 * those differ by size, else usual heights from memory of makers' tables (thick film, ceramic).
 */
import type { PartClass } from "./partWords.ts";

const RESISTOR: { readonly [size: string]: number } = {
  "0201": 0.23,
  "0402": 0.35,
  "0603": 0.45,
  "0805": 0.5,
  "1206": 0.55,
  "1210": 0.55,
  "1812": 0.55,
  "2010": 0.55,
  "2512": 0.55,
};

const OTHERS: { readonly [size: string]: number } = {
  "0201": 0.3,
  "0402": 0.5,
  "0603": 0.8,
  "0805": 1.25,
  "1206": 1.6,
  "1210": 2.5,
  "1812": 2.5,
  "2010": 2.5,
  "2220": 2.5,
  "2512": 2.5,
};

/** Letters before a size in short package names: C0603, RES_0805, LED-0603, M0805; not DO-201. */
const SIZE =
  /(?:^|[\s_]|(?<!DO)-)(?:[RCLDFM]|RES|RESC|CAP|CAPC|IND|INDC|LED|DIO|FUSE)?[_-]?(0?(?:201|402|603|805)|1206|1210|1812|2010|2220|2512)(?![\dx])/i;

/** The size code in a package name and the height of such a chip in mm. */
export function chipHeight(
  name: string,
  part: PartClass,
): { readonly size: string; readonly mm: number } | undefined {
  const match = SIZE.exec(name);
  if (!match) return undefined;
  // Spreadsheets drop the zero of 0603.
  const size = match[1]!.padStart(4, "0");
  const mm = (part === "resistor" ? RESISTOR : OTHERS)[size];
  return mm === undefined ? undefined : { size, mm };
}
