/** What goes into the bags of a kit under the old and the new list, by kind of part. */
import type { ListChanges } from "../../model/compare/compareLists.ts";
import { fold } from "../../model/compare/qualities.ts";
import type { ListLine, PartsList } from "../../model/list/partsList.ts";
import type { PackingChange } from "./touched.ts";

/** Parts first, in the order of the new list, then hardware. */
export function packingChanges(
  before: PartsList,
  after: PartsList,
  { hardware }: ListChanges,
): PackingChange[] {
  const [old, fresh] = [kindsOf(before), kindsOf(after)];
  const changes: PackingChange[] = [];
  for (const key of new Set([...fresh.keys(), ...old.keys()])) {
    const [was, is] = [old.get(key), fresh.get(key)];
    if (was?.pieces === is?.pieces) continue;
    changes.push({
      name: (is ?? was)!.name,
      before: was && String(was.pieces),
      after: is && String(is.pieces),
    });
  }
  return [...changes, ...hardware];
}

interface Kind {
  readonly name: string;
  pieces: number;
}

function kindsOf({ lines }: PartsList): ReadonlyMap<string, Kind> {
  const kinds = new Map<string, Kind>();
  for (const line of lines) {
    if (line.designators.length === 0 || !line.fitted) continue;
    const { key, name } = kindOf(line);
    const kind = kinds.get(key) ?? { name, pieces: 0 };
    kind.pieces += line.quantity ?? line.designators.length;
    kinds.set(key, kind);
  }
  return kinds;
}

/** Parts of one value, tolerance, voltage and package lie in one bag. */
function kindOf({ value, tolerance, voltage, cells }: ListLine) {
  const { text: named } = (cells.value?.text ? cells.value : cells.description) ?? { text: "" };
  const footprint = (cells.package?.text ?? "").replace(/^[^:]*:/, "");
  const measured = value ? `${Number(value.amount.toPrecision(7))} ${value.unit}` : fold(named);
  const volts = voltage ? `${voltage.amount} V` : "";
  const key = [measured, tolerance ?? "", volts, fold(footprint)].join("\n");
  const name = [named, tolerance, volts, footprint].filter((text) => text).join(", ");
  return { key, name };
}
