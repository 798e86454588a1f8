/** Parts that one stage fits and that are taken for one another, unless its steps tell them apart. */
import type { Stage, Step, Use } from "../../model/guide.ts";
import type { ListLine } from "../../model/list/partsList.ts";
import type { Part } from "../../model/parts.ts";
import type { Role } from "../../syntax/dialect.ts";
import type { Language } from "../../text/language.ts";
import { type Look, lookOf, ringsDifferByOne } from "../../trade/lookAlike/looks.ts";
import { tellingWords } from "../../trade/lookAlike/tellingWords.ts";
import { colourOfWord } from "../../trade/marking/colourWords.ts";
import { familyProse } from "../family.ts";
import { textOfLine } from "./textOfLine.ts";

/** Parts of one value that look like others, and where the stage first fits them. */
export interface Alike {
  readonly look: Look;
  /** As the list writes it. */
  readonly value: string;
  readonly ohms: number | undefined;
  readonly parts: readonly Part[];
  readonly first: Use;
}

const FITTING: ReadonlySet<Role> = new Set<Role>(["fit", "place", "insert"]);

/** Groups of two or more values that nothing tells apart, each in the order of the steps. */
export function lookalikesIn(stage: Stage, language: Language): Alike[][] {
  const groups = [...groupsIn(stage)].map((group) =>
    group.filter(({ uses }) => !uses.some((use) => isTold(use, language))),
  );
  return groups.filter((group) => group.length > 1).map((group) => group.map(alike));
}

/** Uses of one value. */
interface Gathered {
  readonly look: Look;
  readonly value: string;
  readonly ohms: number | undefined;
  readonly uses: Use[];
}

function* groupsIn(stage: Stage): Generator<Gathered[]> {
  const byLook = new Map<string, Map<string, Gathered>>();
  for (const use of usesOf(stage)) {
    if (use.supply.kind !== "part" || !FITTING.has(use.role)) continue;
    const seen = seenOf(use.supply);
    if (!seen) continue;
    const key = `${seen.look.kind} ${seen.look.case}`;
    const values = byLook.get(key) ?? new Map<string, Gathered>();
    byLook.set(key, values);
    const known = values.get(seen.value);
    if (known) known.uses.push(use);
    else values.set(seen.value, { ...seen, uses: [use] });
  }
  for (const values of byLook.values()) {
    if (values.size < 2) continue;
    const all = [...values.values()];
    if (all[0]!.look.kind === "resistor") yield* tenfold(all);
    else yield all;
  }
}

/** Pairs of resistors of which one has ten times the value of the other. */
function* tenfold(all: readonly Gathered[]): Generator<Gathered[]> {
  const sorted = all.filter(({ ohms }) => ohms !== undefined).sort((a, b) => a.ohms! - b.ohms!);
  for (const one of sorted) {
    const other = sorted.find(
      ({ ohms }) => ohms! > one.ohms! && ringsDifferByOne(one.ohms!, ohms!),
    );
    if (other) yield [one, other];
  }
}

function* usesOf(stage: Stage): Generator<Use> {
  let piece: Step["piece"] | undefined;
  for (const step of stage.steps) {
    if (step.piece === piece) continue;
    piece = step.piece;
    for (const use of piece.uses) if (use.step.stage === stage) yield use;
  }
}

interface Seen {
  readonly look: Look;
  readonly value: string;
  readonly ohms: number | undefined;
}

const seen = new WeakMap<ListLine, Seen | "nothing">();

/** All parts of a line look the same. */
function seenOf({ line, letters }: Part): Seen | undefined {
  let known = seen.get(line);
  if (!known) {
    const { value, package: packaged, description } = line.cells;
    const look = lookOf(letters, {
      value: value?.text,
      package: packaged?.text,
      description: description?.text,
    });
    const ohms = line.value?.unit === "Ω" ? line.value.amount : undefined;
    known = look ? { look, value: textOfLine(line), ohms } : "nothing";
    seen.set(line, known);
  }
  return known === "nothing" ? undefined : known;
}

/**
 * Chips and small cases carry their type, so a type stated in the mark tells them; of glass diodes
 * and resistors the step must say how.
 */
function isTold({ supply, step, resolved }: Use, language: Language): boolean {
  const { look } = seenOf(supply as Part)!;
  const isPrinted = look.kind === "chip" || look.kind === "TO-92";
  if (isPrinted && resolved.mark.stated) return true;
  const prose = familyProse(step);
  if (prose.some(({ words }) => tellingWords(language).has(words))) return true;
  if (look.kind !== "resistor") return false;
  const colours = prose.flatMap(({ words }) =>
    words.filter(({ lower }) => colourOfWord(lower, language)),
  );
  return colours.length > 1;
}

function alike({ look, value, ohms, uses }: Gathered): Alike {
  const parts = [...new Set(uses.map(({ supply }) => supply as Part))];
  return { look, value, ohms, parts, first: uses[0]! };
}
