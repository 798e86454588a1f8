/** How the pieces of a line are shared out to the stages that need them. */
import { tally } from "../../checks/tally.ts";
import type { Stage, Use } from "../../model/guide.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { ListLine } from "../../model/list/partsList.ts";
import { packageOf, placesOf } from "../../model/list/supplied.ts";
import type { Hardware, Part } from "../../model/parts.ts";
import type { Role } from "../../syntax/dialect.ts";
import type { PackedLine } from "./packedLines.ts";

export interface Share {
  /** Undefined for what no step uses. */
  readonly stage: Stage | undefined;
  readonly parts: readonly Part[];
  readonly pieces: number | undefined;
  readonly spare: number;
  readonly metres: number | undefined;
}

/** Roles for which the builder has the part in hand. */
const IN_HAND: ReadonlySet<Role> = new Set<Role>([
  "fit",
  "place",
  "insert",
  "bridge",
  "make",
  "match",
  "try",
]);

export function sharesOf(packed: PackedLine, guide: GuideState): readonly Share[] {
  const { hardware, metres } = packed;
  if (metres !== undefined || packed.pieces === undefined) return [whole(packed, guide)];
  return hardware ? sharesOfHardware(packed, hardware, guide) : sharesOfParts(packed, guide);
}

/** A length is packed in one piece, for the stage that cuts it first. */
function whole({ parts, pieces, spare, metres, hardware }: PackedLine, guide: GuideState): Share {
  const uses = hardware ? guide.uses(hardware) : parts.flatMap((part) => guide.uses(part));
  return { stage: firstStage(uses), parts, pieces, spare, metres };
}

/** Parts go where they are first taken in hand; a lot to pick from stays together. */
function sharesOfParts(
  { parts, pieces = 0, spare, lines }: PackedLine,
  guide: GuideState,
): Share[] {
  const matched = parts.flatMap((part) => guide.uses(part)).find(({ role }) => role === "match");
  if (matched) {
    return [{ stage: matched.step.stage, parts, pieces, spare, metres: undefined }];
  }
  const places = sum(lines, placesOf);
  const names = sum(lines, ({ designators }) => designators.length);
  // Of a chip with sections that are fitted in several stages, the first takes the chip.
  const whole = places < names ? packageOf : (name: string) => name;
  const homes = new Map<string, Stage | undefined>();
  const byStage = new Map<Stage | undefined, Part[]>();
  for (const part of parts) {
    const name = whole(part.name);
    if (!homes.has(name)) homes.set(name, firstStage(guide.uses(part)));
    const home = homes.get(name);
    byStage.set(home, [...(byStage.get(home) ?? []), part]);
  }
  if (byStage.size === 0) byStage.set(undefined, []);
  const shares = [...byStage].map(([stage, parts]): Share => {
    const count = new Set(parts.map(({ name }) => whole(name))).size;
    return { stage, parts, pieces: count, spare: 0, metres: undefined };
  });
  return withRest(shares, pieces - homes.size, Math.max(0, Math.min(spare, pieces - places)));
}

function sum(lines: PackedLine["lines"], amount: (line: ListLine) => number): number {
  return lines.reduce((total, line) => total + amount(line), 0);
}

function sharesOfHardware(
  { pieces = 0, spare }: PackedLine,
  hardware: Hardware,
  guide: GuideState,
): Share[] {
  const uses = guide.uses(hardware);
  const shares: Share[] = [];
  let before = 0;
  for (const stage of new Set(uses.map(({ step }) => step.stage))) {
    const soFar = uses.filter(({ step }) => step.stage.number <= stage.number);
    const { most } = tally(soFar, Infinity);
    if (most <= before) continue;
    shares.push({ stage, parts: [], pieces: most - before, spare: 0, metres: undefined });
    before = most;
  }
  if (shares.length === 0) {
    return [{ stage: firstStage(uses), parts: [], pieces, spare, metres: undefined }];
  }
  return withRest(shares, pieces - before, spare);
}

/** What is left of the line lies with its last share, spares among it. */
function withRest(shares: readonly Share[], rest: number, spare: number): Share[] {
  const last = shares.at(-1)!;
  if (rest <= 0) return [...shares];
  return [...shares.slice(0, -1), { ...last, pieces: (last.pieces ?? 0) + rest, spare }];
}

function firstStage(uses: readonly Use[]): Stage | undefined {
  return uses.find(({ role }) => IN_HAND.has(role))?.step.stage;
}
