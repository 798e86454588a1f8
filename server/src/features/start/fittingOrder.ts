/** The steps that a new guide begins with: parts that are alike together, lowest bodies first. */

import type { Kit } from "../../model/kit.ts";
import type { ListLine } from "../../model/list/partsList.ts";
import { shownValue } from "../../model/list/shownValue.ts";
import { kindOf, kindOfLine } from "../../model/partKind.ts";
import type { Part } from "../../model/parts.ts";
import type { PartClass } from "../../trade/partClass.ts";

/** Parts of one kind, value and height, which one step fits. */
export interface AlikeParts {
  readonly kind: PartClass;
  readonly parts: readonly Part[];
  /** The value as the list tells it; empty where it tells none. */
  readonly value: string;
  /** What the list says of them in words, as it stands there. */
  readonly description: string;
  /** The text is a value that a mark can state, not a type or a remark. */
  readonly statable: boolean;
  /** Body height in mm. */
  readonly height: number | undefined;
  readonly optional: boolean;
}

export interface BoardPlan {
  /** Empty in a kit of one board. */
  readonly board: string;
  readonly side: "bottom" | undefined;
  readonly soldered: readonly AlikeParts[];
  /** Chips, fuses and batteries, which go in when all is soldered. */
  readonly inserted: readonly AlikeParts[];
}

/** What is fitted on each board, in the order of the lists; rear sides follow their board. */
export function planBoards(kit: Kit): readonly BoardPlan[] {
  const boards = kit.boards.length > 0 ? kit.boards : [""];
  const plans: BoardPlan[] = [];
  for (const board of boards) {
    const parts = kit.parts.filter((part) => part.board === board && part.fitted);
    for (const side of [undefined, "bottom"] as const) {
      const there = parts.filter((part) => (part.side === "bottom") === (side === "bottom"));
      if (there.length === 0) continue;
      const late = (part: Part) => kit.socketOf(part) !== undefined || kindOf(part) === "battery";
      plans.push({
        board,
        side,
        soldered: alike(there.filter((part) => !late(part)).map(solderedAs)).sort(byHeight),
        inserted: alike(
          there.filter((part) => late(part) || part.socketLine !== undefined).map(itself),
        ),
      });
    }
  }
  return plans;
}

/** Cables and the like that the list of a kit of several boards puts on none of them. */
export function partsOffBoards(kit: Kit): readonly AlikeParts[] {
  if (kit.boards.length === 0) return [];
  return alike(kit.parts.filter((part) => part.board === "" && part.fitted).map(itself));
}

/** A value without signs that a mark gives a meaning to; a comma between digits is a decimal comma. */
const PLAIN_VALUE = /^\d[\p{L}\p{N}.]*(?:,\d+)?(?: ?[kMGmµμunp]?(?:Ω|ohms?|F|Hz?|V|W|A)?)?$/u;

/** A part and the line that says what of it is fitted: a chip may share its designator with its socket. */
interface Piece {
  readonly part: Part;
  readonly line: ListLine;
}

function itself(part: Part): Piece {
  return { part, line: part.line };
}

function solderedAs(part: Part): Piece {
  return { part, line: part.socketLine ?? part.line };
}

function alike(pieces: readonly Piece[]): AlikeParts[] {
  const groups = new Map<string, Piece[]>();
  for (const piece of pieces) {
    const key = likeness(piece);
    const group = groups.get(key);
    if (group) group.push(piece);
    else groups.set(key, [piece]);
  }
  return [...groups.values()].map((group): AlikeParts => {
    const [{ part, line }] = group as [Piece];
    const value = shownValue(line);
    return {
      kind: kindOfLine(line, part.letters),
      parts: group.map((one) => one.part),
      value,
      description: line.text("description").trim(),
      statable: line.value !== undefined && PLAIN_VALUE.test(value),
      height: part.height?.mm,
      optional: part.optional,
    };
  });
}

/** Equal for parts that a builder may take one for another: a red LED and a green one are not alike. */
function likeness({ part, line }: Piece): string {
  const { value, tolerance, power, voltage } = line;
  const what = value
    ? [value.amount, value.unit, tolerance, power?.amount, voltage?.amount]
    : [shownValue(line), line.text("description")];
  return JSON.stringify([kindOfLine(line, part.letters), what, part.height?.mm, part.optional]);
}

/** Parts of unknown height come last, where the author sees them. */
function byHeight(a: AlikeParts, b: AlikeParts): number {
  return (a.height ?? Number.MAX_VALUE) - (b.height ?? Number.MAX_VALUE);
}
