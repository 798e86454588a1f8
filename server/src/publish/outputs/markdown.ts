/** The guide as plain Markdown, for shops and hosting sites that render no more than that. */
import { guideMarkdown, MARKDOWN_MARK } from "../markdown/guideMarkdown.ts";
import type { Output } from "./output.ts";

export const MARKDOWN = {
  name: "markdown",
  summary: "the guide as plain Markdown, for shops and hosting sites",
  shows: "picturesBeside",
  write: ({ guide, templates, picturesBeside, errors }) => {
    const content = () => guideMarkdown(guide, templates, picturesBeside, errors);
    return { files: [{ name: "guide.md", content, mark: MARKDOWN_MARK }], faults: [] };
  },
} as const satisfies Output;
