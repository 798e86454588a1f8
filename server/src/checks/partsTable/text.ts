/** A parts table as Markdown: written, and read back as far as it must be told whether it is current. */
import type { Cells } from "./rows.ts";

/** What Markdown or the dialect would take for more than a character. */
const SIGNS = /[\\`*[\]{<|~]|(?<![\p{L}\p{N}])_|_(?![\p{L}\p{N}])/gu;
const ESCAPED = /\\([!-/:-@[-`{-~])/g;
const DELIMITER = /^[\s|:-]*$/;

/** Lines of the table, each ended by `end`. */
export function writeTable([head, ...rows]: Cells, end: string): string {
  const line = (cells: readonly string[]) => `| ${cells.map(escaped).join(" | ")} |${end}`;
  const delimiter = `|${head!.map(() => "---|").join("")}${end}`;
  return [line(head!), delimiter, ...rows.map(line)].join("");
}

/** Whether the text holds a table with these rows; how it is aligned and headed is the author's. */
export function saysTable(text: string, [head, ...rows]: Cells): boolean {
  const lines = text
    .split(/\r\n|\n|\r/)
    .map((line) => line.replace(/^[\s>]+/, ""))
    .filter((line) => line !== "");
  const [first, delimiter, ...rest] = lines;
  if (first === undefined || delimiter === undefined || !DELIMITER.test(delimiter)) return false;
  if (readRow(first).length !== head!.length || rest.length !== rows.length) return false;
  return rest.every((line, index) => readRow(line).join("\n") === rows[index]!.join("\n"));
}

function escaped(text: string): string {
  return text.replace(SIGNS, "\\$&");
}

function readRow(line: string): string[] {
  const inner = line
    .trim()
    .replace(/^\|/, "")
    .replace(/(?<!\\)\|$/, "");
  return inner.split(/(?<!\\)\|/).map((cell) => cell.trim().replace(ESCAPED, "$1"));
}
