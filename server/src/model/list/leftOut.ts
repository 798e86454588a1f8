/** Whether a row is marked do-not-fit or optional, by whichever of its cells. */
import type { DesignatorList } from "../../syntax/designatorItems.ts";
import { readDesignatorList } from "../../syntax/designatorList.ts";
import { designatorKey, readDesignator } from "../../syntax/designators.ts";
import type { Amount } from "./amounts.ts";
import {
  isLeftOutCell,
  isStarredOut,
  MAX_REMARK,
  readYesNo,
  saysLeftOut,
  saysOptional,
} from "./fitting.ts";
import { classLetters, isPassive } from "./letters.ts";
import type { Meaning } from "./partsList.ts";
import type { RowView } from "./rowView.ts";

/** Cells in which a remark may stand beside other words. */
const TELLING: readonly Meaning[] = ["value", "description", "notes", "quantity"];
const MAY_SAY_OPTIONAL: readonly Meaning[] = [...TELLING, "fitted"];
/** Cells that name a class, a place or a number and never say what is left out. */
const SILENT: ReadonlySet<Meaning> = new Set<Meaning>([
  "item",
  "designator",
  "board",
  "side",
  "bag",
]);

/** Whether the row's parts are marked do-not-fit. */
export function isLeftOut(
  view: RowView,
  list: DesignatorList,
  amount: Amount,
  letters: string | undefined,
): boolean {
  const fitted = fittedCell(view);
  if (fitted !== undefined) return !fitted;
  if (amount.kind === "pieces" && amount.count === 0) return true;
  if (isPassive(letters) && isStarredOut(view.text("value"))) return true;
  for (const meaning of TELLING) if (saysLeftOut(view.text(meaning))) return true;
  if (remarks(view, list).some((text) => isLeftOutCell(text, true) || saysLeftOut(text)))
    return true;
  for (let place = 0; place < view.texts.length; place++) {
    const text = view.texts[place]!;
    if (!isLeftOutCell(text, true)) continue;
    const meaning = view.layout.meaningAt(place);
    if (meaning && SILENT.has(meaning)) continue;
    if (isLeftOutCell(text, meaning === "value" || meaning === "quantity")) return true;
  }
  return false;
}

/** What the fitted column says; undefined when it leaves the question open. */
function fittedCell(view: RowView): boolean | undefined {
  if (view.columns.of("fitted") === undefined) return undefined;
  const text = view.text("fitted");
  const negative = view.columns.name("fitted")?.negative ?? false;
  if (text === "") return view.columns.blankIsLeftOut ? false : undefined;
  if (isLeftOutCell(text, true) || saysLeftOut(text)) return false;
  const said = readYesNo(text);
  // A remark in a do-not-fit column marks the row; one in a fitted column says nothing.
  if (said === undefined) return negative ? false : undefined;
  if (said === negative) return false;
  return negative ? undefined : true;
}

/** Which of the row's parts the builder may leave out. */
export interface Optional {
  readonly all: boolean;
  /** Keys of those that a remark names, where it does not name all: "U24 is optional". */
  readonly some: ReadonlySet<string>;
}

/** What the row's cells say of optional parts. */
export function readOptional(
  view: RowView,
  list: DesignatorList,
  names: readonly { readonly name: string }[],
): Optional {
  const cell = view.text("optional");
  if (cell !== "" && (readYesNo(cell) ?? true)) return ALL;
  const texts = remarks(view, list).filter(saysOptional);
  for (const meaning of MAY_SAY_OPTIONAL) {
    const text = view.text(meaning);
    if (saysOptional(text)) texts.push(text);
  }
  if (texts.length === 0) return NOTHING;
  const letters = classLetters(names);
  const keys = names.map(({ name }) => designatorKey(name));
  const some = new Set<string>();
  for (const sentence of texts.flatMap((text) =>
    text.slice(0, MAX_REMARK).split(/[.;!\n](?=\s|$)/),
  )) {
    if (!saysOptional(sentence)) continue;
    const named = namedIn(sentence, letters);
    // A sentence without designators is about all of them.
    if (named.length === 0) return ALL;
    for (const key of named) if (keys.includes(key)) some.add(key);
  }
  return some.size > 0 && keys.every((key) => some.has(key)) ? ALL : { all: false, some };
}

const ALL: Optional = { all: true, some: new Set() };
export const NOTHING: Optional = { all: false, some: new Set() };

/** Designators and ranges; bounded, or a word of many letters would be read from each of them. */
const NAMED = /\p{L}[\p{L}\d_$]{0,20}\d(?:\s{0,3}[-\u2010-\u2014…]\s*\p{L}{0,20}\d+)?/gu;

/** Keys of the designators with these letters in a sentence, ranges written out. */
function namedIn(sentence: string, letters: string | undefined): readonly string[] {
  if (letters === undefined) return [];
  const words = sentence.match(NAMED) ?? [];
  return words
    .flatMap((word) => readDesignatorList(word).names)
    .filter(({ name }) => readDesignator(name)?.letters === letters)
    .map(({ name }) => designatorKey(name));
}

/** What stands in the designator cell beside designators. */
function remarks(view: RowView, list: DesignatorList): string[] {
  if (list.remarks.length === 0) return [];
  const text = view.text("designator");
  return list.remarks.map(({ start, end }) => text.slice(start, end));
}
