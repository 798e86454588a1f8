/** What goes into the bags of a kit under the old and the new list, by kind of part. */
import type { ListChanges } from "../../model/compare/compareLists.ts";
import { fold } from "../../model/compare/qualities.ts";
import type { ListLine, PartsList } from "../../model/list/partsList.ts";
import { builderLineLook } from "./builderWords.ts";
import type { PackingChange } from "./touched.ts";

/** Parts first, in the order of the new list, then hardware. */
export function packingChanges(
  before: PartsList,
  after: PartsList,
  { hardware }: ListChanges,
): PackingChange[] {
  const [old, fresh] = [kindsOf(before), kindsOf(after)];
  const keys = new Set([...fresh.keys(), ...old.keys()]);
  const looks = countedBy([...keys].map((key) => (fresh.get(key) ?? old.get(key))!.look));
  const changes: PackingChange[] = [];
  for (const key of keys) {
    const [was, is] = [old.get(key), fresh.get(key)];
    if (was?.pieces === is?.pieces) continue;
    const { name, look } = (is ?? was)!;
    changes.push({
      name,
      look: looks.get(look)! > 1 ? name : look,
      before: was && String(was.pieces),
      after: is && String(is.pieces),
    });
  }
  return [...changes, ...hardware.map((one) => ({ ...one, look: one.name }))];
}

/** How often each text occurs. */
function countedBy(texts: readonly string[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const text of texts) counts.set(text, (counts.get(text) ?? 0) + 1);
  return counts;
}

interface Kind {
  readonly name: string;
  /** Its name for a builder, which other kinds may have, too. */
  readonly look: string;
  pieces: number;
}

function kindsOf({ lines }: PartsList): ReadonlyMap<string, Kind> {
  const kinds = new Map<string, Kind>();
  for (const line of lines) {
    if (line.designators.length === 0 || !line.fitted) continue;
    const { key, name, look } = kindOf(line);
    const kind = kinds.get(key) ?? { name, look, pieces: 0 };
    kind.pieces += line.quantity ?? line.designators.length;
    kinds.set(key, kind);
  }
  return kinds;
}

/** Parts of one value, tolerance, voltage and package lie in one bag. */
function kindOf(line: ListLine) {
  const { value, tolerance, voltage, cells } = line;
  const { text: named } = (cells.value?.text ? cells.value : cells.description) ?? { text: "" };
  const footprint = (cells.package?.text ?? "").replace(/^[^:]*:/, "");
  const measured = value ? `${Number(value.amount.toPrecision(7))} ${value.unit}` : fold(named);
  const volts = voltage ? `${voltage.amount} V` : "";
  const key = [measured, tolerance ?? "", volts, fold(footprint)].join("\n");
  const told = [named, tolerance, volts].filter((text) => text).join(", ");
  const name = [told, footprint].filter((text) => text).join(", ");
  return { key, name, look: builderLineLook(line, told) };
}
