/** The parts of a step whose value may stand on them in bands or figures. */
import type { Step } from "../../model/guide.ts";
import { kindOf } from "../../model/partKind.ts";
import type { Part } from "../../model/parts.ts";
import type { Marked } from "../../trade/marking/readMark.ts";
import { groupByLine } from "../values/listed.ts";

export interface CodedPart {
  readonly part: Part;
  readonly kind: Marked;
  /** The listed value in Ω, F or H. */
  readonly amount: number;
}

const UNITS: { readonly [kind in Marked]: string } = {
  resistor: "Ω",
  capacitor: "F",
  inductor: "H",
};

/** By mark of the step, in the order of the text; marks without such parts are left out. */
export function codedParts(step: Step): CodedPart[][] {
  const groups: CodedPart[][] = [];
  for (const resolved of step.marks) {
    if (resolved.mark.role === "empty") continue;
    const supplies = new Set(resolved.items.flatMap((item) => item.supplies));
    const coded = [...supplies].flatMap((one) => (one.kind === "part" ? codedPart(one) : []));
    if (coded.length > 0) groups.push(coded);
  }
  return groups;
}

/** The parts by the line of the list that they stand on. */
export function linesOf(coded: readonly CodedPart[]): Part[][] {
  return groupByLine(coded.map(({ part }) => part));
}

export function codedPart(part: Part): readonly CodedPart[] {
  const { value } = part.line;
  if (!value) return [];
  const kind = markedKind(part);
  return kind && UNITS[kind] === value.unit ? [{ part, kind, amount: value.amount }] : [];
}

/** How the part may be marked; undefined for a part that carries no code. */
function markedKind(part: Part): Marked | undefined {
  const kind = kindOf(part);
  if (kind === "electrolytic") return "capacitor";
  return kind === "resistor" || kind === "capacitor" || kind === "inductor" ? kind : undefined;
}
