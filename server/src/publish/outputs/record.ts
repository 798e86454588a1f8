/** The test record: a sheet to fill in, and its rows for a spreadsheet or a test bench. */
import { HTML_MARK } from "../mark.ts";
import { readingsOf } from "../record/readings.ts";
import { RECORD_HEADER, recordCsv } from "../record/recordCsv.ts";
import { recordHtml } from "../record/recordHtml.ts";
import { endOfTitle } from "../title.ts";
import type { Output } from "./output.ts";

/** A guide without readings has none. */
export const RECORD = {
  name: "record",
  summary: "the test record of all readings, as a sheet and as CSV",
  write: ({ guide, errors }) => {
    const rows = readingsOf(guide);
    if (rows.length === 0) return { files: [], faults: [] };
    return {
      files: [
        {
          name: "test-record.html",
          content: () => recordHtml(rows, guide, errors),
          mark: HTML_MARK,
          titleMark: endOfTitle(guide),
        },
        {
          name: "test-record.csv",
          content: () => recordCsv(rows, guide),
          mark: RECORD_HEADER.join(","),
        },
      ],
      faults: [],
    };
  },
} as const satisfies Output;
