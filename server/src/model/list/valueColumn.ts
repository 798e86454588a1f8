/** Which column tells the values. */
import { readValue } from "../../quantity/readValue.ts";
import { glanceAtList } from "../../syntax/designatorList.ts";
import { type Candidates, percent } from "./candidates.ts";
import { chooseByName } from "./columnByName.ts";
import { classLetters, isPassive } from "./letters.ts";

/** The column whose cells read as values of the passive parts beside them, else by name. */
export function chooseValue(columns: Candidates): void {
  let best: { column: number; score: number; share: number } | undefined;
  let refuted = false;
  let doubtful = false;
  let isDescribed = false;
  for (const [column] of columns.free()) {
    const rank = columns.names[column]?.ranks.get("value");
    const { compared, read } = valueReadings(columns, column);
    const share = compared === 0 ? 0 : read / compared;
    if (rank === undefined && columns.isNamed(column)) {
      isDescribed ||= share >= 0.5;
      continue;
    }
    if (rank !== undefined && rank > 0 && compared > 0 && share < 0.2) {
      doubtful = true;
      if (compared >= 3) refuted = true;
    }
    if (share < 0.5) continue;
    const score = share + (rank === undefined ? 0 : 0.4 - rank / 10);
    if (!best || score > best.score) best = { column, score, share };
  }
  if (best) {
    const why = `${percent(best.share)} of its cells beside resistors, capacitors and coils are values`;
    columns.take("value", best.column, why);
  } else {
    // A loose name (`Type`) is no value's where the values stand in a column of another name.
    chooseByName(columns, "value", refuted || (doubtful && isDescribed) ? 0 : 2);
  }
}

function valueReadings(columns: Candidates, column: number) {
  const designators = columns.chosen.get("designator");
  let compared = 0;
  let read = 0;
  if (designators === undefined) return { compared, read };
  for (const row of columns.rows) {
    const letters = classLetters(glanceAtList(row.text(designators)).names);
    if (!isPassive(letters)) continue;
    compared++;
    if (readValue(row.text(column), letters).value) read++;
  }
  return { compared, read };
}
