/** A stage fits parts that are easily taken for one another, and no step says how to tell them. */
import type { Look } from "../trade/lookAlike/looks.ts";
import { ByStage } from "./byStage.ts";
import { type Check, type Finding, NO_FINDINGS } from "./check.ts";
import { type Alike, lookalikesIn } from "./lookAlike/lookalikes.ts";
import { joinWords, listNames } from "./words.ts";

export const check: Check = {
  meta: {
    code: "look-alike",
    summary: "A stage fits parts that look alike, and no step tells them apart.",
    severity: "information",
    source: "IEC 60062 for rings; common practice",
    tags: ["parts"],
  },
  guide(guide) {
    return guide.language ? FINDINGS.in(guide) : NO_FINDINGS;
  },
};

const FINDINGS = new ByStage((stage, guide) => lookalikesIn(stage, guide.language!).map(finding));

const LIKENESS: Readonly<Record<Look["kind"], string>> = {
  "glass diode": "are small glass diodes, whose print takes a magnifier",
  "TO-92": "have the same small case",
  chip: "are chips of one case",
  resistor: "differ by one ring",
};

const REMEDY: Readonly<Record<Look["kind"], string>> = {
  "glass diode": "Say what is printed on each",
  "TO-92": "State the type in the marks, or say what is printed on each",
  chip: "State the type in the marks, or say what is printed on each",
  resistor: "Give the colours of the rings, or have each measured",
};

function finding(group: readonly Alike[]): Finding {
  const [one, other] = group;
  const named = group.map(({ value, parts }) => `${value} (${listNames(parts, 4)})`);
  const { kind } = one!.look;
  return {
    at: { piece: other!.first.resolved.piece, span: other!.first.span },
    message: () =>
      `${joinWords(named, "and")} ${LIKENESS[kind]}, this stage fits them all, and no step tells them apart. Exchanged, they are found only when the kit fails. ${REMEDY[kind]}.`,
    related: [
      {
        at: { piece: one!.first.resolved.piece, span: one!.first.span },
        message: () => `${one!.value} (${listNames(one!.parts, 4)}) looks the same.`,
      },
    ],
  };
}
