/** A mark names a designator that no list has, or hardware that no line (or several) fits. */
import type { Guide, ResolvedItem, ResolvedMark } from "../model/guide.ts";
import { writtenKey } from "../model/hardwareKeys.ts";
import type { ListLine, PartsList } from "../model/list/partsList.ts";
import type { Hardware } from "../model/parts.ts";
import { readDesignator } from "../syntax/designators.ts";
import { type AmountItem, MOVING_ROLES } from "../syntax/dialect.ts";
import { nearestWord } from "../text/nearest.ts";
import type { Span } from "../text/span.ts";
import type { Check, Finding, Fix, Related } from "./check.ts";
import { cellAt, listedAt, listsAreRead, replace, textAt } from "./places.ts";
import { joinWords, listNames, partName } from "./words.ts";

export const check: Check = {
  meta: {
    code: "unknown-part",
    summary: "A mark names a part that the parts list does not have.",
    severity: "error",
    source: "common practice",
    tags: ["parts"],
  },
  *mark(resolved, guide) {
    if (!MOVING_ROLES.has(resolved.mark.role) || resolved.mark.role === "bridge") return;
    if (!listsAreRead(guide)) return;
    for (const item of resolved.items) {
      if (item.item.kind === "amount") yield* unknownKey(resolved, item, item.item, guide);
      else yield* unknownNames(resolved, item, guide);
      if (item.doubtfulBoard) yield doubtfulBoard(resolved, item, guide);
    }
  },
};

interface Unknown {
  readonly name: string;
  readonly board: string;
  readonly span: Span;
}

/** One finding for each place; the members of a range share theirs. */
function* unknownNames(
  resolved: ResolvedMark,
  item: ResolvedItem,
  guide: Guide,
): Iterable<Finding> {
  if (item.unknown.length === 0) return;
  const places = new Map<number, Unknown[]>();
  for (const unknown of item.unknown) {
    const there = places.get(unknown.span.start);
    if (there) there.push(unknown);
    else places.set(unknown.span.start, [unknown]);
  }
  for (const unknown of places.values()) {
    yield unknown.length === 1
      ? unknownName(resolved, item, unknown[0]!, guide)
      : {
          at: { piece: resolved.piece, span: unknown[0]!.span },
          message: () =>
            `The parts list has no ${listNames(unknown)}, which this range takes in. Correct the range, or add the parts to the list.`,
          ...severityFor(resolved),
        };
  }
}

function unknownName(
  resolved: ResolvedMark,
  item: ResolvedItem,
  unknown: Unknown,
  guide: Guide,
): Finding {
  const near = once(() => nearestElsewhere(resolved, unknown, guide));
  return {
    at: { piece: resolved.piece, span: unknown.span },
    message: () => unknownMessage(resolved, unknown, near()),
    ...severityFor(resolved),
    get related() {
      return nearestCell(near()[0], unknown, guide);
    },
    /** The part that was meant most likely: that no step fits it is the same slip. */
    get explains() {
      const [meant] = near();
      const part = meant === undefined ? undefined : guide.find(meant, unknown.board || undefined);
      return part ? [part] : [];
    },
    get fixes() {
      if (item.item.kind !== "part" && item.item.kind !== "group") return [];
      return near().map((name) => () => rename(resolved, unknown, name));
    },
  };
}

/** A part that the mark names already was not meant once more. */
function nearestElsewhere({ items }: ResolvedMark, unknown: Unknown, guide: Guide): string[] {
  const board = unknown.board || undefined;
  const named = new Set(items.flatMap(({ supplies }) => supplies));
  return guide.nearest(unknown.name, board).filter((name) => {
    const part = guide.find(name, board);
    return part === undefined || !named.has(part);
  });
}

/** What costs a search is looked up when it is first shown, and only then. */
function once<Value>(find: () => Value): () => Value {
  let found: { readonly value: Value } | undefined;
  return () => {
    found ??= { value: find() };
    return found.value;
  };
}

/** A place that stays empty may well be missing from the list: people drop such lines. */
function severityFor(resolved: ResolvedMark): { readonly severity?: "information" } {
  return resolved.mark.role === "empty" ? { severity: "information" } : {};
}

function unknownMessage(resolved: ResolvedMark, unknown: Unknown, near: readonly string[]): string {
  const what = `The parts list has no ${partName(unknown)}.`;
  const meant = near.length > 0 ? ` Did you mean ${joinWords(near, "or")}?` : "";
  if (resolved.mark.role === "empty") {
    return `${what}${meant} If its place on the board stays empty, list it as do-not-fit, so that the packer knows too.`;
  }
  const todo = " Correct the name here, or add the part to the list, else nobody packs it.";
  return what + meant + todo;
}

function nearestCell(name: string | undefined, unknown: Unknown, guide: Guide): Related[] {
  const part = name === undefined ? undefined : guide.find(name, unknown.board || undefined);
  if (!part) return [];
  return [{ at: listedAt(part), message: () => `${partName(part)} is listed here.` }];
}

/** Keeps a board prefix, and refuses to change letters that later items carry on. */
function rename(resolved: ResolvedMark, unknown: Unknown, name: string): Fix | undefined {
  const written = textAt(resolved.piece, unknown.span);
  const letters = readDesignator(unknown.name)?.letters.toUpperCase();
  const kept = readDesignator(name)?.letters.toUpperCase() === letters;
  const rest = textAt(resolved.piece, { start: unknown.span.end, end: resolved.mark.span.end });
  if (!kept && /^\s*,\s*\d/.test(rest)) return undefined;
  const prefix = written.slice(0, written.lastIndexOf("/") + 1);
  return replace(resolved.piece, unknown.span, prefix + name, `Write ${name}`);
}

function* unknownKey(
  resolved: ResolvedMark,
  item: ResolvedItem,
  amount: AmountItem,
  guide: Guide,
): Iterable<Finding> {
  if (item.supplies.length > 0) return;
  const at = { piece: resolved.piece, span: amount.keySpan };
  const several = item.candidates.length > 1;
  const choices = once(() => (several ? item.candidates : nearestHardware(amount.key, guide)));
  yield {
    at,
    message: () => {
      if (several) return ambiguousMessage(amount.key, item.candidates);
      return unknownKeyMessage(amount.key, choices(), guide);
    },
    get related() {
      return choices()
        .slice(0, 3)
        .map((one) => ({
          at: cellAt(one.list, one.line, "part number", "value", "description"),
          message: () => `${one.name} is listed here.`,
        }));
    },
    get fixes() {
      return choices()
        .slice(0, 3)
        .map((one) => () => changeKey(resolved, amount, one, guide));
    },
  };
}

function ambiguousMessage(key: string, candidates: readonly Hardware[]): string {
  const names = joinWords(candidates.slice(0, 5).map(lineName), "and");
  return `"${key}" fits ${candidates.length} lines of the parts list: ${names}. Say which one is used up, by a fuller name or as "item" with its number.`;
}

function unknownKeyMessage(key: string, near: readonly Hardware[], guide: Guide): string {
  const what = `No line of the parts list without designators fits "${key}".`;
  const parts = linesWithDesignators(key, guide);
  if (parts.length > 0) {
    return `${what} Parts with designators are marked by them: ${listNames(parts.flatMap((line) => line.designators))}.`;
  }
  const meant = near.length > 0 ? ` Did you mean ${near[0]!.name}?` : "";
  return `${what}${meant} Correct the name here, or add the line to the list, else nobody packs it.`;
}

function linesWithDesignators(key: string, guide: Guide): ListLine[] {
  const wanted = fold(key);
  const named = (line: ListLine) =>
    line.designators.length > 0 && keysOf(line).some((text) => fold(text) === wanted);
  return guide.lists.flatMap((list: PartsList) => list.lines.filter(named));
}

function nearestHardware(key: string, guide: Guide): readonly Hardware[] {
  const byText = new Map<string, Hardware>();
  for (const hardware of guide.hardware) {
    for (const text of keysOf(hardware.line)) {
      if (!byText.has(fold(text))) byText.set(fold(text), hardware);
    }
  }
  const nearest = nearestWord(fold(key), byText.keys());
  return nearest === undefined ? [] : [byText.get(nearest)!];
}

/** Replaces the key by a text that only this line has. */
function changeKey(
  resolved: ResolvedMark,
  amount: AmountItem,
  hardware: Hardware,
  guide: Guide,
): Fix | undefined {
  const key = writtenKey(hardware, guide.hardware);
  if (key === undefined) return undefined;
  return replace(resolved.piece, amount.keySpan, key, `Write ${key}`);
}

function keysOf(line: ListLine): string[] {
  const { value, description } = line.cells;
  return [line.cells["part number"], value, description, line.cells.package].flatMap((cell) =>
    cell?.text ? [cell.text] : [],
  );
}

function lineName(hardware: Hardware): string {
  const number = hardware.line.cells.item?.text;
  return `${hardware.name} (${number ? `item ${number}` : hardware.line.place})`;
}

function fold(text: string): string {
  return text.toLowerCase().replaceAll("×", "x").replace(/\s+/g, "");
}

function doubtfulBoard(resolved: ResolvedMark, item: ResolvedItem, guide: Guide): Finding {
  const taken = item.supplies.find((supply) => supply.kind === "part");
  const boards = () =>
    guide.boards.filter((board) => taken && guide.find(taken.name, board) !== undefined);
  return {
    at: { piece: resolved.piece, span: item.item.span },
    severity: "warning",
    message: () =>
      `${taken?.name ?? "This part"} is on the boards ${joinWords(boards(), "and")}; ${taken?.board} is taken. Write the board before the name, or put a board comment at the head of the stage.`,
    get fixes() {
      return boards().map((board) => () => {
        const written = textAt(resolved.piece, item.item.span);
        const whole = /^\p{L}/u.test(written) ? written : (taken?.name ?? written);
        return replace(
          resolved.piece,
          item.item.span,
          `${board}/${whole}`,
          `Write ${board}/${whole}`,
        );
      });
    },
  };
}
