/** Where the guide screws power devices down, and whether it says how tightly. */
import { fastenerOf } from "../../model/fasteners.ts";
import type { Guide, ResolvedMark, Step, Use } from "../../model/guide.ts";
import { onceALine } from "../../model/onceALine.ts";
import type { Part } from "../../model/parts.ts";
import type { Role } from "../../syntax/dialect.ts";
import { StemList } from "../../text/stems.ts";
import { COOLING_WORDS, TORQUE_TEXT } from "../../trade/fasteners/coolingWords.ts";
import { isClampedPackage } from "../../trade/fasteners/packageTorque.ts";
import { textAt } from "../places.ts";

/** A step that screws devices down, and the mark of the screws. */
export interface Clamping {
  readonly step: Step;
  readonly screws: ResolvedMark;
  readonly devices: readonly Part[];
}

/** Roles in which a device comes to stay: what is tried is taken out again. */
const STAYING: ReadonlySet<Role> = new Set<Role>(["fit", "place", "insert"]);
/** How many steps behind its own a device may be screwed down. */
const REACH = 8;
/** How many steps behind the screws the torque may be told. */
const TOLD_WITHIN = 3;
const COOLING = new StemList<true>(COOLING_WORDS.map((pattern) => [pattern, true]));

/** Parts in packages that are made to be screwed down; few in any kit. */
function powerDevices(guide: Guide): readonly Part[] {
  const known = DEVICES.get(guide.parts);
  if (known) return known;
  const devices = guide.parts.filter(isPowerDevice);
  DEVICES.set(guide.parts, devices);
  return devices;
}

const DEVICES = new WeakMap<readonly Part[], readonly Part[]>();

function isPowerDevice(part: Part): boolean {
  return part.fitted && isClamped(part.line);
}

const isClamped = onceALine((line) => isClampedPackage(packageText({ line })));

/** Package and description together: either may name the package. */
export function packageText({ line: { cells } }: Pick<Part, "line">): string {
  return `${cells.package?.text ?? ""} ${cells.description?.text ?? ""}`;
}

/** The steps that screw power devices down, in the order of the devices. */
export function clampings(guide: Guide): readonly Clamping[] {
  const bySteps = new Map<Step, { screws: ResolvedMark; devices: Set<Part> }>();
  for (const device of powerDevices(guide)) {
    for (const use of guide.uses(device)) {
      const found = STAYING.has(use.role) ? clampingOf(device, use) : undefined;
      if (!found) continue;
      const known = bySteps.get(found.step);
      if (known) known.devices.add(device);
      else bySteps.set(found.step, { screws: found.screws, devices: new Set([device]) });
    }
  }
  return [...bySteps].map(([step, { screws, devices }]) => ({
    step,
    screws,
    devices: [...devices],
  }));
}

/** The first step from the device's own on that has screws for it. */
function clampingOf(device: Part, use: Use): { step: Step; screws: ResolvedMark } | undefined {
  for (const step of stepsFrom(use.step, REACH)) {
    const screws = step.marks.find((mark) => screwsIn(mark) > 0);
    if (screws && (cools(step) || isScrewedBy(step, screws, device))) return { step, screws };
  }
  return undefined;
}

function* stepsFrom(step: Step, most: number): Generator<Step> {
  const { steps } = step.stage;
  const first = steps.indexOf(step);
  yield* steps.slice(first, first + most);
}

/** How many screws the mark uses for good. */
function screwsIn({ mark, items }: ResolvedMark): number {
  if (mark.role !== "fit") return 0;
  let count = 0;
  for (const { item, supplies } of items) {
    const [supply] = supplies;
    if (item.kind !== "amount" || item.amount.kind !== "count") continue;
    if (supply?.kind === "hardware" && fastenerOf(supply)?.kind === "screw") {
      count += item.amount.count;
    }
  }
  return count;
}

/** Whether so many screws may be those of devices: four of them are rather a board's. */
function isScrewedBy(step: Step, screws: ResolvedMark, device: Part): boolean {
  if (holds(screws, device)) return true;
  if (!step.marks.some((mark) => holds(mark, device)) && !isMentioned(device, step)) return false;
  const devices = new Set(
    step.marks.flatMap(({ items }) => items.flatMap((item) => item.supplies)),
  );
  const named = [...devices].filter((one) => one.kind === "part" && isPowerDevice(one)).length;
  return screwsIn(screws) <= 2 * Math.max(1, named);
}

function holds({ items }: ResolvedMark, device: Part): boolean {
  return items.some(({ supplies }) => supplies.includes(device));
}

function isMentioned({ name }: Part, step: Step): boolean {
  const isEdge = (char: string | undefined) => char === undefined || !/[\p{L}\p{N}]/u.test(char);
  return step.prose.some(({ text }) => {
    const at = text.indexOf(name);
    return at >= 0 && isEdge(text[at - 1]) && isEdge(text[at + name.length]);
  });
}

/** Whether the step is about heat sinks or insulators. */
const cools = rememberedOfStep((step: Step): boolean => {
  const supplies = step.marks.flatMap(({ items }) => items.flatMap((item) => item.supplies));
  const insulates = supplies.some((one) => {
    const kind = one.kind === "hardware" ? fastenerOf(one)?.kind : undefined;
    return kind === "insulator" || kind === "bush";
  });
  return insulates || step.prose.some(({ words }) => COOLING.has(words));
});

/** Whether the step, or one soon after it, says a torque in a figure or in words. */
export function saysTorque(step: Step): boolean {
  for (const one of stepsFrom(step, 1 + TOLD_WITHIN)) if (saysOwn(one)) return true;
  return false;
}

const saysOwn = rememberedOfStep(({ prose }: Step): boolean =>
  prose.some(({ fact, text, piece }) => {
    if (TORQUE_TEXT.test(text)) return true;
    return fact.runs.some(({ kind, span }) => {
      if (kind !== "figure") return false;
      const written = textAt(piece, span);
      return /^\{\s*torque\b/.test(written) || TORQUE_TEXT.test(written);
    });
  }),
);

/** A step's text and hardware do not change while the step stands. */
function rememberedOfStep(ask: (step: Step) => boolean): (step: Step) => boolean {
  const known = new WeakMap<Step, boolean>();
  return (step) => {
    const before = known.get(step);
    if (before !== undefined) return before;
    const answer = ask(step);
    known.set(step, answer);
    return answer;
  };
}
