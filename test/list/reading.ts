/** Short ways for tests to read a parts list and to show what was read. */
import type { ListLine, PartsList } from "../../server/src/model/list/partsList.ts";
import { type ReadOptions, readPartsList } from "../../server/src/model/list/read.ts";
import { LineIndex } from "../../server/src/text/lines.ts";

/** A list from its text or bytes; its kind follows from the name. */
export function readList(
  source: Uint8Array | string,
  options: ReadOptions = {},
  name = "parts.csv",
): PartsList {
  return readPartsList(`file:///kit/${name}`, source, options);
}

/** A Markdown file that holds the list. */
export function readMarkdown(text: string): PartsList {
  return readList(text, {}, "parts.md");
}

/** The designators of a line, parted by blanks. */
export function names(line: ListLine | undefined): string {
  return (line?.designators ?? []).map(({ name }) => name).join(" ");
}

/** One text a line: its designators, else what it describes in brackets. */
export function lines(list: PartsList): string[] {
  return list.lines.map((line) =>
    line.designators.length > 0
      ? names(line)
      : `(${(line.cells.description?.text || line.cells.value?.text) ?? ""})`,
  );
}

/** One text a finding: code, file line and the text it stands on. */
export function findings(list: PartsList): string[] {
  const index = new LineIndex(list.text);
  return list.problems.map(({ code, span }) => {
    const line = index.positionAt(span.start).line + 1;
    return `${code} ${line}: ${list.text.slice(span.start, span.end)}`;
  });
}

/** The line that has this designator. */
export function lineOf(list: PartsList, designator: string): ListLine {
  const line = list.lines.find((one) => one.designators.some(({ name }) => name === designator));
  if (!line) throw new Error(`${designator} is not listed`);
  return line;
}

/** Headers by the meaning their columns were taken for. */
export function columns(list: PartsList): { [meaning: string]: string } {
  return Object.fromEntries(
    list.columns.flatMap(({ meaning, header }) => (meaning ? [[meaning, header]] : [])),
  );
}

/** The text in UTF-16, little-endian, with byte-order mark. */
export function utf16(text: string): Uint8Array {
  const units = Uint16Array.from(`\uFEFF${text}`, (char) => char.charCodeAt(0));
  return new Uint8Array(units.buffer);
}
