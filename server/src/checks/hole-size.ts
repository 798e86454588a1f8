/** The drill for a screw, or for its thread, is outside what the standards give. */
import type { GuideFigure } from "../model/figures/figure.ts";
import { textOfPart } from "../model/figures/formula.ts";
import { hasUnit } from "../quantity/evaluation/value.ts";
import { printAmount } from "../quantity/printing.ts";
import {
  clearanceHole,
  hardTappingDrill,
  holeClass,
  holeStandard,
  tappingDrill,
} from "../trade/fasteners/holes.ts";
import type { Thread } from "../trade/fasteners/threads.ts";
import { type Check, type Finding, type Fix, NO_FINDINGS } from "./check.ts";
import { edit } from "./figures/problems.ts";
import { namedThread } from "./mechanics/threads.ts";

export const check: Check = {
  meta: {
    code: "hole-size",
    summary: "The hole for a screw is too small or too large.",
    severity: "warning",
    source: "ISO 273, ISO 2306, ASME B18.2.8",
    tags: ["figures"],
  },
  figure(figure) {
    const symbol = figure.figure.name?.symbol;
    const value = figure.evaluation?.value;
    const thread = symbol === "hole" || symbol === "tap" ? namedThread(figure) : undefined;
    if (!thread || !value || !hasUnit(value, "m")) return NO_FINDINGS;
    const finding =
      symbol === "hole"
        ? judgeHole(figure, thread, value.nominal)
        : judgeTap(figure, thread, value.nominal);
    return finding ? [finding] : NO_FINDINGS;
  },
};

function judgeHole(figure: GuideFigure, thread: Thread, hole: number): Finding | undefined {
  const is = holeClass(thread, hole);
  if (is !== "below fine" && is !== "above coarse") return undefined;
  const usual = clearanceHole(thread, "medium");
  const standard = holeStandard(thread);
  return {
    at: figure.at("expression"),
    message: () => {
      const drill = `Drill ${mm(usual)}, the medium hole (${standard})`;
      if (is === "above coarse") {
        return `A hole of ${mm(hole)} is wider than the coarse one for ${thread.name}, ${mm(clearanceHole(thread, "coarse"))}: parts shift and the head gets little to sit on. ${drill}.`;
      }
      const tapped = isTapping(thread, hole)
        ? ` This is the drill for a thread: name it tap(${thread.name}) if one is cut.`
        : "";
      return `A hole of ${mm(hole)} is narrower than the fine one for ${thread.name}, ${mm(clearanceHole(thread, "fine"))}: the screw jams or does not pass at all. ${drill}.${tapped}`;
    },
    fixes: write(figure, usual),
  };
}

/** Drills are sold in steps of 0.05 mm in these sizes. */
const STEP = 0.05e-3;

function judgeTap(figure: GuideFigure, thread: Thread, hole: number): Finding | undefined {
  if (isTapping(thread, hole)) return undefined;
  const usual = tappingDrill(thread);
  return {
    at: figure.at("expression"),
    message: () =>
      hole < usual
        ? `A drill of ${mm(hole)} is too thin before tapping ${thread.name}: the tap breaks. Drill ${mm(usual)} (ISO 2306).`
        : `A drill of ${mm(hole)} leaves too little for the thread of ${thread.name}, which strips. Drill ${mm(usual)} (ISO 2306), up to ${mm(hardTappingDrill(thread))} in hard metal.`,
    fixes: write(figure, usual),
  };
}

function isTapping(thread: Thread, hole: number): boolean {
  const hair = 1e-9;
  return hole >= tappingDrill(thread) - STEP - hair && hole <= hardTappingDrill(thread) + hair;
}

/** In the author's decimal sign; a computed size is left alone. */
function write(figure: GuideFigure, length: number): (() => Fix)[] {
  const { text } = textOfPart(figure.figure, "expression")!;
  if (!figure.formula?.isQuantity) return [];
  const number = text.includes(",") ? mm(length).replace(".", ",") : mm(length);
  const whole = { start: 0, end: text.length };
  return [() => edit(figure, "expression", whole, number, `Write ${number}`, false)];
}

function mm(length: number): string {
  return printAmount(length, "m", 4).replace("\u00a0", " ");
}
