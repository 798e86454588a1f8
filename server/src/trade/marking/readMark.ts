/** What a mark printed on a part may mean. */
import { readValue } from "../../quantity/readValue.ts";
import { readEia96, readFigureCode } from "./figureCode.ts";

/** Parts whose value is printed in a code. */
export type Marked = "resistor" | "capacitor" | "inductor";

const LETTERS: { readonly [kind in Marked]: string } = {
  resistor: "R",
  capacitor: "C",
  inductor: "L",
};

/** What a bare number on a part counts: ohms, picofarads or microfarads, microhenries. */
const BARE: { readonly [kind in Marked]: readonly number[] } = {
  resistor: [1],
  capacitor: [1e-12, 1e-6],
  inductor: [1e-6],
};

/** What the two figures of a three-figure mark count. */
const FIGURES: { readonly [kind in Marked]: number } = {
  resistor: 1,
  capacitor: 1e-12,
  inductor: 1e-6,
};

/**
 * All values (Ω, F or H) that a mark may mean on such a part: `104` on a capacitor 100 nF, `220` 22 pF,
 * 220 pF or 220 µF. Empty where it means none.
 */
export function readMark(mark: string, kind: Marked): readonly number[] {
  const read = readValue(mark, LETTERS[kind]);
  // Words around the value: no mark.
  if (read.rest !== "" && read.value) return [];
  const coded = read.value ? [read.value.amount] : [];
  const plain = /^\d{1,4}(?:[.,]\d{1,2})?$/.test(mark) ? Number(mark.replace(",", ".")) : undefined;
  const bare = plain === undefined ? [] : BARE[kind].map((one) => plain * one);
  const figures = readFigureCode(mark.replace(/[FGJKM]$/, ""));
  const counted = figures === undefined ? [] : [figures * FIGURES[kind]];
  const eia = kind === "resistor" ? readEia96(mark) : undefined;
  return [...coded, ...bare, ...counted, ...(eia === undefined ? [] : [eia])];
}
