/** Lines without designators, by what they name: how many of each are supplied. */
import type { ListLine, PartsList } from "../list/partsList.ts";
import { fold } from "./qualities.ts";

export interface HardwareChange {
  readonly name: string;
  /** Undefined where the list has no such line. */
  readonly before: string | undefined;
  readonly after: string | undefined;
}

export function compareHardware(before: PartsList, after: PartsList): HardwareChange[] {
  const [old, fresh] = [suppliesOf(before), suppliesOf(after)];
  const changes: HardwareChange[] = [];
  for (const key of new Set([...old.keys(), ...fresh.keys()])) {
    const [was, is] = [old.get(key), fresh.get(key)];
    const [earlier, later] = [was && amountOf(was), is && amountOf(is)];
    if (earlier !== later) {
      changes.push({ name: (is ?? was)!.name, before: earlier, after: later });
    }
  }
  return changes;
}

interface Supply {
  readonly name: string;
  pieces: number;
  metres: number;
  isCounted: boolean;
}

/** Several lines of one thing are added up. */
function suppliesOf({ lines }: PartsList): ReadonlyMap<string, Supply> {
  const supplies = new Map<string, Supply>();
  for (const line of lines) {
    if (line.designators.length > 0 || !line.fitted) continue;
    const name = suppliedName(line);
    if (name === "") continue;
    const key = fold(name);
    const supply = supplies.get(key) ?? { name, pieces: 0, metres: 0, isCounted: false };
    supply.pieces += line.quantity ?? 0;
    supply.metres += line.metres ?? 0;
    supply.isCounted ||= line.quantity !== undefined || line.metres !== undefined;
    supplies.set(key, supply);
  }
  return supplies;
}

/** What a line without designators supplies. */
export function suppliedName({ cells }: ListLine): string {
  const { value, description } = cells;
  const named = [value, description, cells["part number"], cells.package];
  const texts = named.map((cell) => cell?.text ?? "").filter((text) => text !== "");
  return [...new Set(texts)].slice(0, 2).join(" ");
}

function amountOf({ pieces, metres, isCounted }: Supply): string {
  if (!isCounted) return "some";
  const shown = [pieces > 0 ? String(pieces) : "", metres > 0 ? `${metres} m` : ""];
  return shown.filter((text) => text !== "").join(" and ") || "0";
}
