/** Reads what a page of the documentation shows: rows of its tables and fenced blocks. */

/** A table row by its column titles. */
export type Row = Readonly<Record<string, string>>;

/** All rows of all tables of a page, in order. */
export function rowsOf(page: string): Row[] {
  const rows: Row[] = [];
  let titles: readonly string[] | undefined;
  for (const line of page.split("\n")) {
    if (!line.startsWith("|")) titles = undefined;
    else if (!titles) titles = cellsOf(line);
    else if (!/^\|[-|]+$/.test(line)) {
      const cells = cellsOf(line);
      rows.push(Object.fromEntries(titles.map((title, index) => [title, cells[index]!])));
    }
  }
  return rows;
}

function cellsOf(line: string): string[] {
  return line
    .slice(1, -1)
    .split("|")
    .map((cell) => cell.trim());
}

export interface Block {
  readonly language: string;
  /** What follows the language on its fence: the name of a file. */
  readonly name: string | undefined;
  readonly text: string;
}

/** All fenced blocks, in order. */
export function fencedBlocks(page: string): Block[] {
  const blocks = page.matchAll(/^```(\w*)(?: (\S+))?\n([\s\S]*?)^```$/gm);
  return [...blocks].map(([, language, name, text]) => ({
    language: language!,
    name,
    text: text!,
  }));
}

/** The texts of the fenced blocks of one language. */
export function blocksOf(page: string, language: string): string[] {
  return fencedBlocks(page)
    .filter((block) => block.language === language)
    .map(({ text }) => text);
}
