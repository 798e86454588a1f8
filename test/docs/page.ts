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

/** The texts of the fenced blocks of one language. */
export function blocksOf(page: string, language: string): string[] {
  const blocks = page.matchAll(/^```(\w+)\n([\s\S]*?)^```$/gm);
  return [...blocks].filter((block) => block[1] === language).map((block) => block[2]!);
}
