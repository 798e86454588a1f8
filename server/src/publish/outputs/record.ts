/** The test record: a sheet to fill in, and its rows for a spreadsheet or a test bench. */
import { HTML_MARK } from "../mark.ts";
import { RECORD_HEADER, recordCsv } from "../record/recordCsv.ts";
import { recordHtml } from "../record/recordHtml.ts";
import type { Output, PublishedFile } from "./output.ts";

export const RECORD = {
  name: "record",
  summary: "the test record of all readings, as a sheet and as CSV",
  write: ({ guide, errors }) => {
    const html = recordHtml(guide, errors);
    const csv = recordCsv(guide);
    const files: PublishedFile[] = [];
    if (html) files.push({ name: "test-record.html", content: html, mark: HTML_MARK });
    if (csv) files.push({ name: "test-record.csv", content: csv, mark: RECORD_HEADER.join(",") });
    return files;
  },
} as const satisfies Output;
