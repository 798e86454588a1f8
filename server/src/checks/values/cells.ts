/** How a cell of each kind of column is compared with the parts of its row. */
import type { GuidePiece } from "../../model/guide.ts";
import type { TableCell } from "../../model/guideTable.ts";
import { kindOf } from "../../model/partKind.ts";
import type { Part } from "../../model/parts.ts";
import { formatQuantity } from "../../quantity/formatQuantity.ts";
import { readRating, readTolerance, readValue, sameValue } from "../../quantity/readValue.ts";
import type { Unit } from "../../quantity/value.ts";
import { LANGUAGES, type Language } from "../../text/language.ts";
import { colourOfWord } from "../../trade/marking/colourWords.ts";
import type { Finding } from "../check.ts";
import { judgeBands } from "../marking/bandFindings.ts";
import { bandRuns } from "../marking/bandRuns.ts";
import { wearsBands } from "../marking/bands.ts";
import { codedPart } from "../marking/codedParts.ts";
import { worded } from "../marking/worded.ts";
import { replace } from "../places.ts";
import { differs } from "./agree.ts";
import type { ColumnKind } from "./columns.ts";
import { groupByLine, listedByAll, told, toldAt } from "./listed.ts";

export interface Row {
  readonly piece: GuidePiece;
  readonly parts: readonly Part[];
  /** Named by part marks, not by plain designators. */
  readonly marked: boolean;
  /** How many pieces the row names. */
  readonly count?: number;
  readonly language: Language | undefined;
}

type Rule = (cell: TableCell, row: Row) => Iterable<Finding>;

export const RULES: { readonly [kind in Exclude<ColumnKind, "designators">]: Rule } = {
  value: compareValue,
  colours: compareColours,
  tolerance: compareTolerance,
  power: (cell, row) => compareRating(cell, row, "power", "W"),
  voltage: (cell, row) => compareRating(cell, row, "voltage", "V"),
  current: (cell, row) => compareRating(cell, row, "current", "A"),
  count: compareCount,
};

function* compareValue(cell: TableCell, row: Row): Generator<Finding> {
  const comparable = row.parts.filter((part) => row.marked || isOwnValue(cell.text, part));
  const wrong = groupByLine(comparable).filter(([part]) => differs(part!, cell.text));
  if (wrong.length === 0) return;
  yield {
    ...contradiction(cell, row, told(wrong)),
    related: toldAt(wrong),
    fixes: listedByAll(row.parts).map(
      (value) => () => replace(row.piece, cell.span, value, `Write ${value}, as in the list`),
    ),
  };
}

/** Beside plain designators a value may also be a reading taken there. */
function isOwnValue(text: string, { line, letters }: Part): boolean {
  const { value, voltage, current, power } = readValue(text, letters);
  if (value) return value.unit === line.value?.unit;
  const isType = /^(?=.*\p{L})(?=.*\d)[\p{L}\d./-]{3,}$/u.test(text);
  return !line.value && isType && !(voltage || current || power) && !readRating(text, "V");
}

function* compareColours(cell: TableCell, row: Row): Generator<Finding> {
  const coded = row.parts.flatMap((part) => codedPart(part)).filter(wearsBands);
  if (coded.length > 0 && row.language) {
    const runs = bandRuns(worded(cell.block), row.language, true);
    for (const run of runs) {
      const found = judgeBands(run, coded, row.piece, row.language);
      if (found) yield found;
    }
    return;
  }
  const stated = coloursIn(cell.text);
  const lamps = row.parts.filter((part) => kindOf(part) === "led");
  const wrong = groupByLine(lamps).filter(([part]) => {
    const listed = coloursOf(part!);
    return stated.size > 0 && listed.size > 0 && ![...stated].some((one) => listed.has(one));
  });
  if (wrong.length > 0) yield { ...contradiction(cell, row, told(wrong)), related: toldAt(wrong) };
}

function coloursOf({ line: { cells } }: Part): ReadonlySet<string> {
  return coloursIn(`${cells.value?.text ?? ""} ${cells.description?.text ?? ""}`);
}

/** Colours in whatever language: guide and list need not speak the same. */
function coloursIn(text: string): ReadonlySet<string> {
  const words = text.toLowerCase().split(/[^\p{L}]+/u);
  const colours = words.flatMap((word) =>
    LANGUAGES.map((language) => colourOfWord(word, language)).filter((one) => one !== undefined),
  );
  return new Set(colours);
}

function* compareTolerance(cell: TableCell, row: Row): Generator<Finding> {
  const stated = readTolerance(cell.text);
  if (stated === undefined) return;
  const say = (part: Part) => part.line.tolerance ?? "";
  const wrong = groupByLine(row.parts).filter(
    ([part]) => say(part!) !== "" && say(part!) !== stated,
  );
  if (wrong.length === 0) return;
  yield { ...contradiction(cell, row, told(wrong, say)), related: toldAt(wrong, say) };
}

function* compareRating(
  cell: TableCell,
  row: Row,
  rating: "power" | "voltage" | "current",
  unit: Unit,
): Generator<Finding> {
  // A column of volts beside plain designators is one of readings as a rule.
  if (!row.marked && rating !== "power") return;
  const stated = readRating(cell.text, unit);
  if (!stated) return;
  const wrong = groupByLine(row.parts).filter(([part]) => {
    const listed = part!.line[rating];
    return listed !== undefined && !sameValue(listed, stated);
  });
  const say = (part: Part) => formatQuantity(part.line[rating]!);
  if (wrong.length === 0) return;
  yield { ...contradiction(cell, row, told(wrong, say)), related: toldAt(wrong, say) };
}

const COUNT = /^(\d{1,5})(?: ?(?:[x×]|pcs?\.?|Stk\.?|Stück|pièces?|stuks?|uds?\.?))?$/iu;

function* compareCount(cell: TableCell, { piece, count }: Row): Generator<Finding> {
  const stated = COUNT.exec(cell.text)?.[1];
  if (stated === undefined || count === undefined || Number(stated) === count) return;
  yield {
    at: { piece, span: cell.span },
    message: () =>
      `This row says ${stated}, but it names ${count} ${count === 1 ? "part" : "parts"}. Builders who lay the parts out by number miss one or look for one too many: correct the number or the parts.`,
  };
}

function contradiction(cell: TableCell, { piece }: Row, listed: string): Finding {
  return {
    at: { piece, span: cell.span },
    message: () =>
      `This row says ${cell.text}, but the parts list says ${listed}. The builder believes one of the two: correct the wrong one.`,
  };
}
