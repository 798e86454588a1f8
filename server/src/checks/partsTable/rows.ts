/** What the parts table of a stage says: a row for each line of the list that the stage fits from. */

import type { Guide, Stage, Use } from "../../model/guide.ts";
import type { ListLine } from "../../model/list/partsList.ts";
import { shownValue } from "../../model/list/shownValue.ts";
import type { Part } from "../../model/parts.ts";
import type { Item, Role } from "../../syntax/dialect.ts";
import type { Language } from "../../text/language.ts";
import { lengthText, markItems } from "../words.ts";

/** Cells as plain text, the head first. */
export type Cells = readonly (readonly string[])[];

const FITS: ReadonlySet<Role> = new Set<Role>(["fit", "insert"]);

const HEADS: Readonly<Record<Language, readonly string[]>> = {
  en: ["Parts", "Quantity", "Value", "Package"],
  de: ["Bauteile", "Anzahl", "Wert", "Bauform"],
  fr: ["Composants", "Quantité", "Valeur", "Boîtier"],
  nl: ["Onderdelen", "Aantal", "Waarde", "Behuizing"],
  es: ["Componentes", "Cantidad", "Valor", "Encapsulado"],
};

/** In the order in which the stage takes the parts up; without a column of packages if no line has one. */
export function partsTable(stage: Stage, guide: Guide): Cells {
  const severalBoards = guide.boards.length > 1;
  const rows = [...linesOf(stage)].map(([line, taken]) => cellsOf(line, taken, severalBoards));
  const head = HEADS[guide.language ?? "en"];
  const columns = rows.some((row) => row.at(-1) !== "") ? head.length : head.length - 1;
  return [head, ...rows].map((row) => row.slice(0, columns));
}

/** What a stage takes of a line. */
interface Taken {
  readonly parts: Part[];
  /** Name of hardware, which has no designators. */
  name: string;
  count: number;
  metres: number;
  /** A choice takes one of its parts. */
  readonly choices: Set<Item>;
}

function linesOf(stage: Stage): ReadonlyMap<ListLine, Taken> {
  const lines = new Map<ListLine, Taken>();
  for (const use of usesOf(stage)) {
    const line = lineOf(use);
    const taken = lines.get(line) ?? newTaken();
    lines.set(line, taken);
    take(use, taken);
  }
  return lines;
}

function newTaken(): Taken {
  return { parts: [], name: "", count: 0, metres: 0, choices: new Set() };
}

function take({ supply, item, count, metres }: Use, taken: Taken): void {
  if (supply.kind === "part") taken.parts.push(supply);
  else taken.name = supply.name;
  taken.metres += metres ?? 0;
  const isFirst = item.kind !== "choice" || !taken.choices.has(item);
  if (item.kind === "choice") taken.choices.add(item);
  if (isFirst) taken.count += count ?? 0;
}

function* usesOf(stage: Stage): Iterable<Use> {
  for (const { piece } of stage.stretches) {
    for (const use of piece.uses) if (use.step.stage === stage && FITS.has(use.role)) yield use;
  }
}

/** A plain mark fits the socket where socket and chip share a designator. */
function lineOf({ supply, role }: Use): ListLine {
  const socket = supply.kind === "part" && role === "fit" ? supply.socketLine : undefined;
  return socket ?? supply.line;
}

function cellsOf(line: ListLine, taken: Taken, severalBoards: boolean): string[] {
  const named = severalBoards ? taken.parts : taken.parts.map(({ name }) => ({ name }));
  return [
    markItems(named).join(", "),
    taken.metres > 0 ? lengthText(taken.metres) : String(taken.count),
    oneLine(shownValue(line) || line.cells.description?.text || taken.name),
    oneLine(line.cells.package?.text ?? ""),
  ];
}

function oneLine(text: string): string {
  return text.replace(/\s+/g, " ").trim();
}
