/** What the cells of a line say of its parts' values, ratings, heights and sides. */
import { readRating, readTolerance, readValue } from "../../quantity/readValue.ts";
import type { Quantity, Unit, ValueReading } from "../../quantity/value.ts";
import { readHeight } from "./amounts.ts";
import { isPassive } from "./letters.ts";
import type { ListLine } from "./partsList.ts";
import type { RowView } from "./rowView.ts";

type Key = "value" | "tolerance" | "power" | "voltage" | "current" | "height" | "side";
export type LineValues = { -readonly [key in Key]?: ListLine[key] };

type Rating = "power" | "voltage" | "current";
const UNITS: { readonly [rating in Rating]: Unit } = { power: "W", voltage: "V", current: "A" };
const LETTER = /\p{L}/u;
/** The unit, written out. */
const NAMED = { power: /W\b/i, voltage: /V\b/i, current: /A\b/i };

const RATINGS = ["power", "voltage", "current"] as const;

/**
 * Sets what the row says in `line`. Own columns count before the value's text, that before the
 * description of a passive part.
 */
export function readValues(view: RowView, letters: string | undefined, line: LineValues): void {
  const text = view.text("value");
  const stated = text === "" ? undefined : readValue(text, letters);
  const described = readDescribed(view, letters, text === "");
  const tolerance =
    readTolerance(view.text("tolerance")) ?? stated?.tolerance ?? described?.tolerance;
  const value = stated?.value ?? (text === "" ? described?.value : undefined);
  if (value) line.value = value;
  if (tolerance !== undefined) line.tolerance = tolerance;
  for (const rating of RATINGS) {
    const found = ownRating(view, rating) ?? stated?.[rating] ?? described?.[rating];
    if (found) line[rating] = found;
  }
  const height = readHeight(view.text("height"), view.columns.name("height")?.unit);
  const side = readSide(view.text("side"));
  if (height !== undefined) line.height = height;
  if (side) line.side = side;
}

function readDescribed(
  view: RowView,
  letters: string | undefined,
  isOnly: boolean,
): ValueReading | undefined {
  const text = view.text("description");
  return text !== "" && (isOnly || isPassive(letters)) ? readValue(text, letters) : undefined;
}

/** A column headed `Rating` holds volts of one part and watts of another. */
function ownRating(view: RowView, rating: Rating): Quantity | undefined {
  for (const column of RATINGS) {
    const text = view.text(column);
    if (text === "") continue;
    const isOwn = column === rating;
    if (!isOwn && !LETTER.test(text)) continue;
    const found = readRating(text, UNITS[rating]);
    if (found && (isOwn || NAMED[rating].test(text))) return found;
  }
  return undefined;
}

const TOP =
  /^(?:t|top|front|f|f\.cu|component side|cs|oben|vorn|vorderseite|best(?:ü|ue)ckungsseite|dessus|haut|avant|arriba|superior|frente|boven|voorkant|bovenkant)\b/iu;
const BOTTOM =
  /^(?:b|bot|bottom|back|rear|b\.cu|solder side|ss|unten|hinten|r(?:ü|ue)ckseite|l(?:ö|oe)tseite|dessous|bas|arri[eè]re|abajo|inferior|atr[aá]s|onder|achterkant|onderkant)\b/iu;

/** Side of the board on which the parts sit. */
function readSide(text: string): "top" | "bottom" | undefined {
  if (text === "") return undefined;
  if (TOP.test(text)) return "top";
  return BOTTOM.test(text) ? "bottom" : undefined;
}
