/** The figures of the front matter, `supply` and `figures`, with their places in the page. */
import type { Figure, SyntaxProblem } from "../../syntax/dialect.ts";
import { readEntry } from "../../syntax/figures/entry.ts";
import type { FrontMatter } from "../../syntax/frontMatter.ts";
import type { Page } from "../guide.ts";

export interface FrontMatterFigure {
  readonly section: "supply" | "figures";
  readonly index: number;
  readonly name: string;
  readonly figure: Figure;
}

export interface FrontMatterFigures {
  readonly figures: readonly FrontMatterFigure[];
  /** Entries that are no figures. */
  readonly problems: readonly SyntaxProblem[];
}

export function readFrontMatterFigures(
  page: Page,
  { supply, figures }: FrontMatter,
): FrontMatterFigures {
  const found: FrontMatterFigure[] = [];
  const problems: SyntaxProblem[] = [];
  for (const [section, entries] of [
    ["supply", supply],
    ["figures", figures],
  ] as const) {
    for (const [index, entry] of entries.entries()) {
      const read = readEntry(entry, page.text.slice(entry.span.start, entry.span.end));
      if ("message" in read) problems.push(read);
      else if (section === "figures" && !read.name)
        problems.push(noName(entry.name, entry.nameSpan));
      else found.push({ section, index, name: entry.name, figure: read });
    }
  }
  return { figures: found, problems };
}

function noName(name: string, span: SyntaxProblem["span"]): SyntaxProblem {
  return {
    span,
    about: "figure",
    message: `\`${name}\` is no name of a figure, so nothing can use it. A name is a word, with what it belongs to in brackets: Iq, P(R50).`,
  };
}
