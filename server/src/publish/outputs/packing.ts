/** The packing list: a sheet to tick off, and its rows for a spreadsheet. */

import { HTML_MARK } from "../mark.ts";
import { packingFaults } from "../packing/faults.ts";
import { PACKING_HEADER, packingCsv } from "../packing/packingCsv.ts";
import { packingHtml } from "../packing/packingHtml.ts";
import { packingList } from "../packing/packingList.ts";
import { endOfTitle } from "../title.ts";
import type { Output } from "./output.ts";

export const PACKING = {
  name: "packing",
  summary: "the packing list by bags, to tick off (HTML) and as CSV",
  write: ({ guide, packBy }) => {
    const packing = packingList(guide, packBy);
    const faults = packingFaults(packing, guide);
    return {
      files: [
        {
          name: "packing-list.html",
          content: () => packingHtml(packing, guide, faults.length),
          mark: HTML_MARK,
          titleMark: endOfTitle(guide),
        },
        {
          name: "packing-list.csv",
          content: () => packingCsv(packing, guide),
          mark: PACKING_HEADER.join(","),
        },
      ],
      faults,
    };
  },
} as const satisfies Output;
