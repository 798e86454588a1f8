/**
 * The tools and supplies that the builder brings, as rows for a spreadsheet; no file where a guide
 * needs none.
 */
import { inventory, stepsToTell } from "../../model/tools/inventory.ts";
import { csvFile } from "../../text/csvText.ts";
import { titleOf } from "../title.ts";
import { filled, pageWords } from "../words/words.ts";
import type { Output } from "./output.ts";

/**
 * The header is the mark of a file of ours: CSV has no place for another. The title stands in each
 * row, so that the tables of several kits may be put together.
 */
const HEADER = ["guide", "kind", "name", "neededIn"] as const;

export const TOOLS = {
  name: "tools",
  summary: "tools and supplies that the kit does not contain, as CSV",
  write: ({ guide }) => {
    const { step } = pageWords(guide.language);
    const title = titleOf(guide) ?? "";
    const rows = inventory(guide).map((entry) => {
      const steps = stepsToTell(entry);
      // With the word: a spreadsheet would make 1.1 of step 1.10.
      const where = steps.length === 0 ? "" : filled(step, steps.join(", "));
      return [title, entry.kind, entry.name, where];
    });
    if (rows.length === 0) return { files: [], faults: [] };
    const content = () => csvFile([HEADER, ...rows]);
    const titleMark = `${csvFile([HEADER, [title]]).trim()},`;
    return {
      files: [{ name: "tools.csv", content, mark: HEADER.join(","), titleMark }],
      faults: [],
    };
  },
} as const satisfies Output;
