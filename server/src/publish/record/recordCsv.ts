/** The test record as rows, to be filled in by hand or by a test bench. */
import type { GuideState } from "../../model/guideState.ts";
import { csvFile } from "../../text/csvText.ts";
import { limitWords } from "../fill/readings.ts";
import { filled, pageWords } from "../words/words.ts";
import type { RecordRow } from "./readings.ts";

/** The header is the mark of a file of ours: CSV has no place for another. */
export const RECORD_HEADER = [
  "stage",
  "step",
  "reading",
  "lowest",
  "highest",
  "unit",
  "limits",
  "value",
  "inside",
] as const;

/**
 * `lowest` and `highest` are numbers in `unit`, empty where there is no such limit. Steps have their
 * word before them, since a spreadsheet would make 1.1 of step 1.10.
 */
export function recordCsv(readings: readonly RecordRow[], guide: GuideState): string {
  const words = pageWords(guide.language);
  const rows = readings.map(({ step, stage, reading }) => [
    stage?.heading?.fact.title ?? "",
    step === undefined ? "" : filled(words.step, step),
    reading.name,
    reading.low ?? "",
    reading.high ?? "",
    reading.unit,
    limitWords(reading, words),
    "",
    "",
  ]);
  return csvFile([RECORD_HEADER, ...rows]);
}
