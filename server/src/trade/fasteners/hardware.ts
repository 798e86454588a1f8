/** Sizes of nuts, washers, heads and keys by thread. Lengths in metres; NaN where a table has none. */
import type { Thread } from "./threads.ts";

type Sizes = { readonly [thread: string]: readonly number[] };

/** Width across flats and height of hexagon nuts in mm. Source: ISO 4032. */
const NUTS: Sizes = {
  "M1.6": [3.2, 1.3],
  M2: [4, 1.6],
  "M2.5": [5, 2],
  M3: [5.5, 2.4],
  "M3.5": [6, 2.8],
  M4: [7, 3.2],
  M5: [8, 4.7],
  M6: [10, 5.2],
  M8: [13, 6.8],
  M10: [16, 8.4],
  M12: [18, 10.8],
};

/** Bore, outside diameter and thickness of plain washers in mm. Source: ISO 7089. */
const WASHERS: Sizes = {
  "M1.6": [1.7, 4, 0.3],
  M2: [2.2, 5, 0.3],
  "M2.5": [2.7, 6, 0.5],
  M3: [3.2, 7, 0.5],
  M4: [4.3, 9, 0.8],
  M5: [5.3, 10, 1],
  M6: [6.4, 12, 1.6],
  M8: [8.4, 16, 1.6],
  M10: [10.5, 20, 2],
  M12: [13, 24, 2.5],
};

/** Key and head diameter of socket head screws in mm. Source: ISO 4762. */
const SOCKET_HEADS: Sizes = {
  "M1.6": [1.5, 3],
  M2: [1.5, 3.8],
  "M2.5": [2, 4.5],
  M3: [2.5, 5.5],
  M4: [3, 7],
  M5: [4, 8.5],
  M6: [5, 10],
  M8: [6, 13],
  M10: [8, 16],
  M12: [10, 18],
};

/** Key of countersunk screws with hexagon socket in mm. Source: ISO 10642. */
const COUNTERSUNK: Sizes = {
  M2: [1.3],
  "M2.5": [1.5],
  M3: [2],
  M4: [2.5],
  M5: [3],
  M6: [4],
  M8: [5],
  M10: [6],
  M12: [8],
};

export const HEADS = ["socket", "countersunk"] as const;
export type Head = (typeof HEADS)[number];

/** Width of the key for a screw with a hexagon socket. */
export function hexKey({ name }: Thread, head: Head): number {
  return metres((head === "socket" ? SOCKET_HEADS : COUNTERSUNK)[name]?.[0]);
}

/** Diameter of a socket head. */
export function headDiameter({ name }: Thread): number {
  return metres(SOCKET_HEADS[name]?.[1]);
}

/** Width across the flats of a hexagon nut: that of its spanner. */
export function nutWidth({ name }: Thread): number {
  return metres(NUTS[name]?.[0]);
}

export function nutHeight({ name }: Thread): number {
  return metres(NUTS[name]?.[1]);
}

export function washerBore({ name }: Thread): number {
  return metres(WASHERS[name]?.[0]);
}

export function washerDiameter({ name }: Thread): number {
  return metres(WASHERS[name]?.[1]);
}

export function washerThickness({ name }: Thread): number {
  return metres(WASHERS[name]?.[2]);
}

function metres(mm: number | undefined): number {
  return mm === undefined ? Number.NaN : mm / 1000;
}
