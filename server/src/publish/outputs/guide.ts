/** The guide as a page for bench, phone and paper. */
import { titleElement } from "../documentHead.ts";
import { HTML_MARK } from "../mark.ts";
import { guidePage } from "../page/page.ts";
import { titleOf } from "../title.ts";
import type { Output } from "./output.ts";

export const GUIDE = {
  name: "guide",
  summary: "the page that the builder follows",
  shows: "pictures",
  write: ({ guide, templates, pictures, errors }) => {
    const content = () => pictures.content(guidePage(guide, templates, { pictures, errors }));
    const title = titleOf(guide);
    const titleMark = title && titleElement(title);
    return { files: [{ name: "guide.html", content, mark: HTML_MARK, titleMark }], faults: [] };
  },
} as const satisfies Output;
