/** Reads a parts list from a file's bytes or an editor's text. */
import { readValue } from "../../quantity/readValue.ts";
import { readCsv } from "../../syntax/csv.ts";
import { findDelimiter } from "../../syntax/delimiter.ts";
import { isDesignatorList, readDesignatorList } from "../../syntax/designatorList.ts";
import { readTables } from "../../syntax/listTables.ts";
import type { TableRow } from "../../syntax/tableRow.ts";
import { decodeText } from "../../text/decode.ts";
import type { Cell, ColumnChoice, ListLine, ListProblem, Meaning, PartsList } from "./partsList.ts";

const HEADERS: Partial<Record<Meaning, RegExp>> = {
  designator:
    /^(designators?|ref(erence)?s?(\(s\))?|refdes|ref des|parts?|part #|bezeichner|referencia|component|id)$/i,
  quantity:
    /^(quantity|qty|qnty|count|pcs|anzahl|stückzahl|number|cantidad|qté|quantity per pcb)$/i,
  value: /^(value|comment|name|designation|wert|typ|valor|waarde|component)$/i,
  package: /^(footprint|package|pattern|size|device|huella|behuizing)$/i,
  description: /^(description|beschreibung|descripción|omschrijving)$/i,
  tolerance: /^(tolerance|tol)$/i,
  voltage: /^(voltage|rating)$/i,
  height: /^height/i,
  "part number": /^(part number|part no\.?|mpn|order code)$/i,
  fitted: /^(dnp|dnf|fitted)$/i,
  spare: /^spares?$/i,
  board: /^(board|platine)$/i,
  side: /^side$/i,
  bag: /^bag$/i,
  notes: /^(notes?|remarks?)$/i,
  item: /^(item|id|#|no)$/i,
};

export function readPartsList(
  uri: string,
  source: Uint8Array | string,
  _options: { columns?: Partial<Record<Meaning, string>> } = {},
): PartsList {
  const decoded =
    typeof source === "string" ? { text: source, encoding: "utf-8" } : decodeText(source);
  if (!("text" in decoded)) return unreadable(uri, "", "utf-8", decoded.problem);
  const { text, encoding } = decoded;
  const isMarkdown = /\.(md|markdown)$/i.test(uri);
  const delimiter = isMarkdown ? undefined : findDelimiter(text);
  if (!isMarkdown && !delimiter)
    return unreadable(uri, text, encoding, "No table is found in this file.");
  const tables = isMarkdown ? readTables(text) : [[...readCsv(text, delimiter!).rows]];
  const lines: ListLine[] = [];
  const problems: ListProblem[] = [];
  let columns: ColumnChoice[] = [];
  for (const rows of tables) columns = readRows(rows, lines, problems) ?? columns;
  return { uri, text, format: isMarkdown ? "markdown" : "csv", encoding, columns, lines, problems };
}

function unreadable(uri: string, text: string, encoding: string, message: string): PartsList {
  const problem: ListProblem = { code: "unreadable-list", span: { start: 0, end: 0 }, message };
  return { uri, text, format: "unreadable", encoding, columns: [], lines: [], problems: [problem] };
}

function readRows(rows: readonly TableRow[], lines: ListLine[], problems: ListProblem[]) {
  const head = rows.findIndex(
    (row) => cellsOf(row).filter((cell) => meaningOf(cell.text)).length >= 2,
  );
  if (head < 0) return undefined;
  const columns = chooseColumns(rows, head);
  const seen = new Set<string>();
  for (const row of rows.slice(head + 1)) {
    const line = readLine(row, columns, lines.length);
    if (!line) continue;
    for (const one of line.designators) {
      const key = `${line.board ?? ""}/${one.name.toUpperCase()}`;
      if (seen.has(key)) {
        problems.push({
          code: "repeated-designator",
          span: one.span,
          line: line.index,
          message: `${one.name} stands in the list twice.`,
        });
      }
      seen.add(key);
    }
    const count = line.designators.length;
    if (
      count > 0 &&
      line.quantity !== undefined &&
      line.quantity !== 0 &&
      line.quantity !== count
    ) {
      const message = `The line counts ${line.quantity} parts but names ${count}.`;
      problems.push({
        code: "count-mismatch",
        span: line.cells.quantity!.span,
        line: line.index,
        message,
      });
    }
    lines.push(line);
  }
  return columns;
}

function cellsOf(row: TableRow): Cell[] {
  return Array.from({ length: row.width }, (_, column) => row.cell(column)!);
}

function meaningOf(header: string): Meaning | undefined {
  const found = Object.entries(HEADERS).find(([, words]) => words.test(header.trim()));
  return found?.[0] as Meaning | undefined;
}

function chooseColumns(rows: readonly TableRow[], head: number): ColumnChoice[] {
  const taken = new Set<Meaning>();
  return cellsOf(rows[head]!).map((cell, column) => {
    let meaning = meaningOf(cell.text);
    if (meaning && taken.has(meaning)) meaning = undefined;
    if (meaning === "designator") {
      const texts = rows.slice(head + 1).map((row) => row.cell(column)?.text ?? "");
      const filled = texts.filter((text) => text !== "");
      if (filled.filter(isDesignatorList).length * 2 < filled.length) meaning = undefined;
    }
    if (meaning) taken.add(meaning);
    return {
      column,
      header: cell.text,
      headerSpan: cell.span,
      ...(meaning && { meaning }),
      why: meaning ? `Its header says ${cell.text}.` : "Nothing known speaks for a meaning.",
    };
  });
}

function readLine(
  row: TableRow,
  columns: readonly ColumnChoice[],
  index: number,
): ListLine | undefined {
  const cells: { [meaning in Meaning]?: Cell } = {};
  for (const { column, meaning } of columns) {
    const cell = row.cell(column);
    if (meaning && cell && cell.text !== "") cells[meaning] = cell;
  }
  if (Object.keys(cells).length === 0) return undefined;
  const place = columns.find((one) => one.meaning === "designator")?.column;
  const listed = place === undefined ? [] : readDesignatorList(cells.designator?.text ?? "").names;
  const designators = listed.map(({ name, start, end }) => ({
    name,
    span: row.place(place!, start, end),
  }));
  const letters = /^\p{L}+/u.exec(designators[0]?.name ?? "")?.[0];
  const read = readValue(cells.value?.text ?? cells.description?.text ?? "", letters);
  const quantity = Number.parseFloat(cells.quantity?.text ?? "");
  const metres = /^([\d.]+)\s*m$/.exec(cells.quantity?.text ?? "");
  const dnp = /^(dnp|dnf|dni|x|yes|1|do not fit)$/i.test(cells.fitted?.text ?? "");
  const spare = Number.parseInt(cells.spare?.text ?? "", 10);
  const height = Number.parseFloat(cells.height?.text ?? "");
  return {
    index,
    row: row.line,
    span: row.span,
    cells,
    designators,
    ...(metres ? { metres: Number(metres[1]) } : Number.isFinite(quantity) && { quantity }),
    ...(Number.isFinite(spare) && { spare }),
    ...(read.value && { value: read.value }),
    ...(read.tolerance && { tolerance: read.tolerance }),
    ...(Number.isFinite(height) && { height }),
    fitted: !dnp && !/^(dnp|dnf|dni)$/i.test(cells.value?.text ?? ""),
    optional: /optional/i.test(
      `${cells.notes?.text} ${cells.description?.text} ${cells.value?.text}`,
    ),
    ...(cells.board && { board: cells.board.text }),
  };
}
