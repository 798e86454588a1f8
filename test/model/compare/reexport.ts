/** Writes a parts list anew as another program would: other delimiter, order, grouping and spelling. */
import type { ListLine, Meaning, PartsList } from "../../../server/src/model/list/partsList.ts";
import type { Quantity } from "../../../server/src/quantity/value.ts";
import { encodeWindows1252 } from "../../../server/src/text/windows1252.ts";
import { spellings } from "./spellings.ts";

/** A row of one part or of some hardware. */
export interface Row {
  designator: string;
  quantity: string;
  fitted: boolean;
  optional: boolean;
  /** What the value cell says, where it says nothing else. */
  readonly plain: Quantity | undefined;
  /** Equal for parts that may be taken for one another: class and value, however spelt. */
  readonly kind: string;
  readonly cells: { [meaning in Meaning]?: string };
}

export const KEPT: readonly Meaning[] = [
  "value",
  "tolerance",
  "power",
  "voltage",
  "current",
  "package",
  "height",
  "description",
  "part number",
];

const HEADERS: { readonly [meaning in Meaning]?: readonly string[] } = {
  value: ["Value", "Wert", "Valeur"],
  tolerance: ["Tolerance", "Toleranz"],
  power: ["Power", "Leistung"],
  voltage: ["Voltage", "Nennspannung"],
  current: ["Current", "Strom"],
  package: ["Footprint", "Package", "Bauform"],
  height: ["Height", "Hoogte"],
  description: ["Description", "Beschreibung"],
  "part number": ["MPN", "Part number"],
};

/** Values with nothing beside them. */
const PLAIN: Readonly<Record<string, RegExp>> = {
  R: /^\d+(?:\.\d+)?[kKM]?$/,
  C: /^\d+(?:\.\d+)?[pnu]F?$/,
  L: /^\d+(?:\.\d+)?[nu]H?$/,
};

export function rowsOf(list: PartsList): Row[] {
  return list.lines.flatMap((line) => {
    const names = line.designators.length > 0 ? line.designators : [undefined];
    return names.map((listed) => rowOf(line, listed?.name ?? "", listed?.optional ?? false));
  });
}

function rowOf(line: ListLine, designator: string, optional: boolean): Row {
  const cells: Row["cells"] = {};
  for (const meaning of KEPT) {
    const text = line.cells[meaning]?.text;
    if (text) cells[meaning] = text;
  }
  const quantity = designator ? "1" : (line.cells.quantity?.text ?? "");
  const letters = /^([RCL])\d+$/.exec(designator)?.[1];
  const isPlain = letters !== undefined && PLAIN[letters]!.test(cells.value ?? "");
  const text = cells.value ?? cells.description ?? "";
  const value = line.value
    ? line.value.amount.toPrecision(6)
    : text.toLowerCase().replace(/\s/g, "");
  return {
    designator,
    kind: `${designator.replace(/\d+$/, "")} ${value}`,
    quantity,
    fitted: line.fitted,
    optional: line.optional || optional,
    plain: isPlain ? line.value : undefined,
    cells,
  };
}

/** A choice below the number; the same for the same seed. */
export type Random = (below: number) => number;

export function randomFrom(seed: number): Random {
  let state = seed;
  return (below) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

export function shuffled<Item>(items: readonly Item[], random: Random): Item[] {
  const found = [...items];
  for (let i = found.length - 1; i > 0; i--) {
    const j = random(i + 1);
    [found[i], found[j]] = [found[j]!, found[i]!];
  }
  return found;
}

/** The list as bytes of a CSV file. */
export function reexport(rows: readonly Row[], random: Random): Uint8Array {
  const pick = <Item>(items: readonly Item[]) => items[random(items.length)]!;
  const delimiter = pick([",", ";", "\t"]);
  const meanings = shuffled(
    KEPT.filter((meaning) => rows.some(({ cells }) => cells[meaning])),
    random,
  );
  const header = [
    pick(["Ref", "Designator", "Bezeichner"]),
    pick(["Qty", "Menge"]),
    ...meanings.map((meaning) => pick(HEADERS[meaning]!)),
    "DNP",
    "Optional",
  ];
  const spelt = shuffled(rows, random).map((row) => {
    const value = row.plain ? pick(spellings(row.plain)) : row.cells.value;
    return { ...row, cells: { ...row.cells, ...(value && { value }) } };
  });
  const grouped = random(2) === 0 ? spelt : groups(spelt);
  const lines = grouped.map((row) => [
    row.designator,
    row.quantity,
    ...meanings.map((meaning) => row.cells[meaning] ?? ""),
    row.fitted ? "" : "DNP",
    row.optional ? "yes" : "",
  ]);
  const text = [header, ...lines]
    .map((cells) => cells.map((cell) => `"${cell.replaceAll('"', '""')}"`).join(delimiter))
    .join(pick(["\n", "\r\n"]));
  return encode(text, random(5));
}

function groups(rows: readonly Row[]): Row[] {
  const found = new Map<string, Row & { count: number }>();
  const alone: Row[] = [];
  for (const row of rows) {
    const key = JSON.stringify([row.cells, row.fitted, row.optional]);
    const group = found.get(key);
    if (row.designator === "") alone.push(row);
    else if (!group) found.set(key, { ...row, count: 1 });
    else {
      group.designator += `, ${row.designator}`;
      group.quantity = String(++group.count);
    }
  }
  return [...found.values(), ...alone];
}

function encode(text: string, how: number): Uint8Array {
  const utf8 = new TextEncoder();
  if (how === 0) return utf8.encode(text);
  if (how === 1) return utf8.encode(`\uFEFF${text}`);
  if (how === 2) return encodeWindows1252(text) ?? utf8.encode(text);
  const bytes = new DataView(new ArrayBuffer(2 * text.length + 2));
  const isLittle = how === 3;
  for (let i = 0; i <= text.length; i++) {
    bytes.setUint16(2 * i, i === 0 ? 0xfeff : text.charCodeAt(i - 1), isLittle);
  }
  return new Uint8Array(bytes.buffer);
}
