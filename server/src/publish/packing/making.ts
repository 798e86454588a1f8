/** What the builder makes parts of: which lengths and pieces of hardware go into each of them. */
import type { Stage, Step, Use } from "../../model/guide.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { Hardware, Part } from "../../model/parts.ts";
import { namesCore } from "../../trade/coils/coreWords.ts";

export interface Material {
  readonly hardware: Hardware;
  /** Undefined for one that is used by length. */
  readonly count: number | undefined;
  readonly metres: number | undefined;
}

/** By the part that is made; parts of one step share its material. */
export type Making = ReadonlyMap<Part, readonly Material[]>;

/** Parts that steps make, each with the material it is made of; empty where no step names any. */
export function makingOf(guide: GuideState): Making {
  const making = new Map<Part, readonly Material[]>();
  const bySteps = new Map<Step, readonly Material[]>();
  for (const part of guide.parts) {
    const made = guide.uses(part).find(({ role }) => role === "make");
    if (!made) continue;
    const materials = bySteps.get(made.step) ?? materialFor(made.step);
    bySteps.set(made.step, materials);
    making.set(part, materials);
  }
  return making;
}

/**
 * Whether nothing of the part itself lies in the box: it is all made of what other lines supply, and
 * its own line speaks of no core that it would be wound on.
 */
export function isMadeOfOthers(part: Part, making: Making): boolean {
  const materials = making.get(part) ?? [];
  if (materials.length === 0) return false;
  const { value, description, notes, package: footprint } = part.line.cells;
  return ![value, description, notes, footprint].some((cell) => namesCore(cell?.text ?? ""));
}

/**
 * Used in the step or its sub-steps; where those use none, in the steps before it as far as the one
 * that makes another part.
 */
function materialFor(step: Step): readonly Material[] {
  const { steps } = step.stage;
  const index = steps.indexOf(step);
  const own = [step, ...subSteps(step)].flatMap(materialsIn);
  if (own.length > 0) return own;
  for (let before = index - 1; before >= 0 && !makes(steps[before]!); before--) {
    const found = materialsIn(steps[before]!);
    if (found.length > 0) return found;
  }
  return [];
}

function subSteps({ stage, number }: Step): Stage["steps"] {
  return stage.steps.filter((one) => one.number.startsWith(`${number}.`));
}

function makes({ marks }: Step): boolean {
  return marks.some(({ mark }) => mark.role === "make");
}

function materialsIn(step: Step): Material[] {
  const uses = step.piece.uses.filter((use) => use.step === step && isMaterial(use));
  return uses.map(({ supply, count, metres }) => {
    return { hardware: supply as Hardware, count, metres };
  });
}

function isMaterial({ supply, role, metres }: Use): boolean {
  if (supply.kind !== "hardware") return false;
  return role === "make" || (role === "fit" && metres !== undefined);
}
