/** Which lines of a parts list are of one kind of part, where the list has a row for each part. */
import type { ListLine } from "../../model/list/partsList.ts";
import { valueText } from "./lineText.ts";

/** What tells one kind of part from another, beside its value. */
const TELLING = [
  "power",
  "voltage",
  "current",
  "package",
  "description",
  "part number",
  "bag",
  "notes",
] as const;

/** The same for lines whose parts are equal to whoever packs or fits them. */
export function partKind(line: ListLine): string {
  const told = TELLING.map((meaning) => line.text(meaning).toLowerCase());
  const letters = line.designators[0]?.name.replace(/[^A-Za-z].*$/, "");
  return JSON.stringify([letters, line.fitted, line.optional, valueText(line), ...told]);
}
