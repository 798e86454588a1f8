/** From the sections of a list's tables to its lines. */
import type { TableRow } from "../../syntax/tableRow.ts";
import { type Columns, chooseColumns, type Overrides } from "./columns.ts";
import { foldHeader } from "./headerWords.ts";
import { LineReader } from "./lines.ts";
import type { OverrideProblem, PartsList } from "./partsList.ts";
import { dropRepeatedList, findRepeats } from "./repeats.ts";
import type { HeaderLookup, Section } from "./sections.ts";

/** What the sections were cut from. */
export type ListSource = Pick<PartsList, "uri" | "text" | "encoding" | "format" | "places">;

/** The lines of all sections; undefined where none of them is a parts list. */
export function readSections(
  source: ListSource,
  sections: readonly Section[],
  lookup: HeaderLookup,
  overrides: Overrides,
): PartsList | undefined {
  const columnsOf = columnsBySection(sections, lookup, overrides);
  const found = [...new Set(columnsOf.values())];
  if (!found.some(({ isPartsList }) => isPartsList)) {
    // Screws alone make a list, too, but not any table of a Markdown file.
    if (source.format === "markdown" || !found.some(({ isHardwareList }) => isHardwareList))
      return undefined;
  }
  const reader = new LineReader(source);
  const used = new Set<Columns>();
  for (const section of sections) {
    const columns = columnsOf.get(section)!;
    if (!columns.isPartsList && !columns.isHardwareList) continue;
    used.add(columns);
    reader.readAll(section.rows, columns);
  }
  const { lines, problem } = dropRepeatedList(reader.lines);
  const kept = problem
    ? reader.problems.filter(({ span }) => span.start < problem.span.start)
    : reader.problems;
  return {
    ...source,
    columns: [...used].flatMap(({ choices }) => choices),
    lines,
    problems: [...kept, ...(problem ? [problem] : []), ...findRepeats(lines, reader.rows)],
    overrideProblems: overrideProblems([...used], overrides),
  };
}

/** Sections under the same header are looked at together: a short one tells little. */
function columnsBySection(
  sections: readonly Section[],
  lookup: HeaderLookup,
  overrides: Overrides,
): ReadonlyMap<Section, Columns> {
  const groups = new Map<string | Section, Section[]>();
  for (const section of sections) {
    // Without a header each may have its columns in an order of its own.
    const key = section.header ? headerKey(section.header) : section;
    const group = groups.get(key);
    if (group) group.push(section);
    else groups.set(key, [section]);
  }
  const found = new Map<Section, Columns>();
  for (const group of groups.values()) {
    const [first, ...others] = group;
    const rows = others.length === 0 ? first!.rows : group.flatMap((section) => section.rows);
    const columns = chooseColumns(first!.header, rows, lookup, overrides);
    for (const section of group) found.set(section, columns);
  }
  return found;
}

function headerKey(header: TableRow): string {
  const names: string[] = [];
  for (let i = 0; i < header.width; i++) names.push(foldHeader(header.text(i)).name);
  return names.join("\n");
}

/** Names of the guide that no header of the list has. */
function overrideProblems(found: readonly Columns[], overrides: Overrides): OverrideProblem[] {
  const [first, ...rest] = found;
  if (!first) return [];
  const unmatched = first.unmatched.filter((meaning) =>
    rest.every((columns) => columns.unmatched.includes(meaning)),
  );
  const headers = found.flatMap(({ choices }) => choices.map(({ header }) => header));
  const candidates = [...new Set(headers)].filter((header) => header !== "");
  return unmatched.map((meaning) => ({ meaning, name: overrides[meaning]!, candidates }));
}

/** The header of a list that has nothing else yet. */
export function headerWithoutLines(
  list: PartsList | undefined,
  sections: readonly Section[],
  lookup: HeaderLookup,
): TableRow | undefined {
  if (list)
    return list.lines.length === 0 ? sections.find(({ header }) => header)?.header : undefined;
  if (sections.some(({ rows }) => rows.some(isFilled))) return undefined;
  return sections.find(({ header }) => header && namesDesignators(header, lookup))?.header;
}

function isFilled(row: TableRow): boolean {
  return cellTexts(row).some((text) => text !== "");
}

function namesDesignators(header: TableRow, lookup: HeaderLookup): boolean {
  return cellTexts(header).some((text) => lookup.of(text)?.ranks.has("designator"));
}

function cellTexts(row: TableRow): string[] {
  return Array.from({ length: row.width }, (_, column) => row.text(column));
}
