/** The steps of a piece that fit polarised parts, and whether they say which way round. */
import type { GuidePiece, Step, Use } from "../../model/guide.ts";
import type { ListLine } from "../../model/list/partsList.ts";
import type { Part } from "../../model/parts.ts";
import type { TextBlock } from "../../model/prose.ts";
import { readWords } from "../../model/wordReader.ts";
import type { Role } from "../../syntax/dialect.ts";
import type { Language } from "../../text/language.ts";
import { tellsOrientation } from "../../trade/polarity/orientationWords.ts";
import { type PolarKind, polarKind } from "../../trade/polarity/polarParts.ts";
import { familyOf, familyProse } from "../family.ts";

/** A polarised part that a step fits. */
export interface Polar {
  readonly part: Part;
  readonly kind: PolarKind;
  readonly use: Use;
}

export interface PolarStep {
  readonly step: Step;
  readonly parts: readonly Polar[];
  /** Whether it says which way round they go. */
  readonly tells: boolean;
}

interface Known {
  readonly uses: readonly Use[];
  readonly steps: readonly PolarStep[];
}

const known = new WeakMap<GuidePiece, Known>();
const FITTING: ReadonlySet<Role> = new Set<Role>(["fit", "place", "insert"]);

/** In the order of the piece; read once, as long as its marks mean the same. */
export function polarSteps(piece: GuidePiece, language: Language): readonly PolarStep[] {
  const before = known.get(piece);
  if (before && before.uses === piece.uses) return before.steps;
  const bySteps = new Map<Step, Polar[]>();
  for (const use of piece.uses) {
    const polar = polarOf(use);
    if (!polar) continue;
    const parts = bySteps.get(use.step);
    if (parts) parts.push(polar);
    else bySteps.set(use.step, [polar]);
  }
  const steps = [...bySteps].map(([step, parts]) => ({
    step,
    parts,
    tells:
      familyProse(step).some((block) => tells(block, language)) || pictureTells(step, language),
  }));
  known.set(piece, { uses: piece.uses, steps });
  return steps;
}

export function tells(block: TextBlock, language: Language): boolean {
  return tellsOrientation(block.text, block.words, language);
}

/** The text that stands for a picture says what it shows. */
function pictureTells(step: Step, language: Language): boolean {
  const family = familyOf(step);
  const from = family[0]!.fact.span.start;
  const to = Math.max(...family.map(({ fact }) => fact.span.end));
  return step.piece.facts.facts.some(
    (fact) =>
      fact.kind === "picture" &&
      fact.span.start >= from &&
      fact.span.start < to &&
      tellsOrientation(fact.alt, readWords(fact.alt, 0), language),
  );
}

function polarOf(use: Use): Polar | undefined {
  const { supply, role } = use;
  if (supply.kind !== "part" || !FITTING.has(role)) return undefined;
  // Where a chip shares its designator with its socket, only the socket is soldered in.
  if (role === "fit" && supply.socketLine) return undefined;
  const kind = kindOf(supply);
  return kind && { part: supply, kind, use };
}

const kinds = new WeakMap<ListLine, PolarKind | "none">();

/** All parts of a line are of a kind. */
function kindOf({ line, letters }: Part): PolarKind | undefined {
  let kind = kinds.get(line);
  if (!kind) {
    const { value, package: packaged, description } = line.cells;
    const hints = { value: value?.text, package: packaged?.text, description: description?.text };
    kind = polarKind(letters, hints) ?? "none";
    kinds.set(line, kind);
  }
  return kind === "none" ? undefined : kind;
}
