/** A screw is too short for what it holds together. */
import type { GuidePiece } from "../model/guide.ts";
import { foldKey } from "../model/hardwareKeys.ts";
import { hasUnit } from "../quantity/evaluation/value.ts";
import { printAmount } from "../quantity/printing.ts";
import type { FigureName } from "../syntax/dialect.ts";
import { nutHeight } from "../trade/fasteners/hardware.ts";
import { nextLength, OUT_OF_NUT } from "../trade/fasteners/screwLength.ts";
import { type Check, type Finding, NO_FINDINGS } from "./check.ts";
import { nameOf } from "./figures/problems.ts";
import { type Joint, jointsOf, stackOf } from "./mechanics/joint.ts";
import { STACK, stacksOf } from "./mechanics/statedStack.ts";
import { cellAt } from "./places.ts";
import { joinWords } from "./words.ts";

export const check: Check = {
  meta: {
    code: "screw-length",
    summary: "A screw is too short for what it holds together.",
    severity: "warning",
    source: "Common practice; nut heights ISO 4032, washers ISO 7089",
    tags: ["figures"],
  },
  *piece(piece: GuidePiece): Generator<Finding> {
    for (const step of piece.steps) {
      const joints = jointsOf(step);
      if (joints.length === 0) continue;
      const stated = new Set(stacksOf(step).map((name) => jointOf(name, joints)));
      for (const joint of joints) {
        const finding = stated.has(joint) ? undefined : judge(joint);
        if (finding) yield finding;
      }
    }
  },
  figure(figure) {
    const { name } = figure.figure;
    const value = figure.evaluation?.value;
    if (name?.symbol !== STACK || !figure.step || !value || !hasUnit(value, "m")) {
      return NO_FINDINGS;
    }
    const joint = jointOf(name, jointsOf(figure.step));
    const layers = [{ name: nameOf(figure), thickness: value.max }];
    const finding = joint && judge({ ...joint, layers });
    return finding ? [finding] : NO_FINDINGS;
  },
};

/** The joint that a stack is named after: by its screw, or the only one of its step. */
function jointOf({ subjects }: FigureName, joints: readonly Joint[]): Joint | undefined {
  const names = subjects.map(({ text }) => foldKey(text));
  return (
    joints.find(({ screw, key }) => names.includes(foldKey(screw.name)) || names.includes(key)) ??
    (joints.length === 1 ? joints[0] : undefined)
  );
}

function judge(joint: Joint): Finding | undefined {
  const { thread, length, end, at, screw } = joint;
  const stack = stackOf(joint);
  const hold = holdOf(joint);
  const least = stack + hold + (end === "standoff" ? 0 : thread.pitch);
  // Where a size is not in the tables the sum is no number.
  if (!(length < least - 1e-9)) return undefined;
  return {
    at,
    message: () => `${reason(joint)} ${advice(joint, stack + hold)}`,
    related: [
      {
        at: cellAt(screw.list, screw.line, "value", "description"),
        message: () => "The screw is listed here.",
      },
    ],
  };
}

/** What of the screw holds: in a nut its height, in a standoff one diameter of thread. */
function holdOf({ end, thread }: Joint): number {
  if (end === "nut") return nutHeight(thread);
  return end === "standoff" ? thread.diameter : 0;
}

function reason(joint: Joint): string {
  const { screw, length, layers, end, thread } = joint;
  const parts = layers.map(({ name, thickness }) => `${name} ${mm(thickness)}`);
  if (end === "nut") parts.push(`nut ${mm(nutHeight(thread))}`);
  if (end === "standoff") parts.push(`${mm(thread.diameter)} of thread in the standoff`);
  const sum = stackOf(joint) + holdOf(joint);
  const added =
    parts.length === 1 ? `${parts[0]} needs more` : `${joinWords(parts, "and")} make ${mm(sum)}`;
  return `${screw.name} is ${mm(length)} long, but ${added}.`;
}

function advice({ end, thread }: Joint, sum: number): string {
  const room = end === "nut" ? OUT_OF_NUT * thread.pitch : 0;
  const next = nextLength(sum + room);
  const rule =
    end === "nut" ? "A pitch or two must stand out of the nut, or it does not hold. " : "";
  return `${rule}${next === undefined ? "Take a longer screw." : `Take one of ${mm(next)} or longer.`}`;
}

function mm(length: number): string {
  return printAmount(length, "m", 3);
}
