/** The guide as a page for bench, phone and paper. */
import { HTML_MARK } from "../mark.ts";
import { guidePage } from "../page/page.ts";
import type { Output } from "./output.ts";

export const GUIDE = {
  name: "guide",
  summary: "the page that the builder follows",
  shows: "pictures",
  write: ({ guide, templates, pictures, errors }) => {
    const content = () => pictures.content(guidePage(guide, templates, { pictures, errors }));
    return { files: [{ name: "guide.html", content, mark: HTML_MARK }], faults: [] };
  },
} as const satisfies Output;
