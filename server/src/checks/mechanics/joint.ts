/** What a step's screws hold together, as far as its marks and the list tell. Lengths in m. */
import { fastenerOf } from "../../model/fasteners.ts";
import type { Anchor, ResolvedMark, Step } from "../../model/guide.ts";
import { foldKey } from "../../model/hardwareKeys.ts";
import type { Hardware, Supply } from "../../model/parts.ts";
import type { Fastener } from "../../trade/fasteners/fastener.ts";
import { washerThickness } from "../../trade/fasteners/hardware.ts";
import { packageThickness, thicknessIn } from "../../trade/fasteners/thickness.ts";
import type { Thread } from "../../trade/fasteners/threads.ts";

/** One layer between the head of a screw and its nut or thread. */
export interface Layer {
  readonly name: string;
  readonly thickness: number;
}

export interface Joint {
  /** Where the screws stand in their mark. */
  readonly at: Anchor;
  readonly screw: Hardware;
  /** What the mark calls it, folded. */
  readonly key: string;
  readonly thread: Thread;
  readonly length: number;
  readonly fastener: Fastener;
  /** Whether each screw has a nut, or goes into a standoff of that length. */
  readonly end: "nut" | "standoff" | "unknown";
  /** What is known of the stack under one screw. */
  readonly layers: readonly Layer[];
}

/** The joints of a step: one for each kind of screw of known length and thread in it. */
export function jointsOf(step: Step): readonly Joint[] {
  const marks = step.marks.filter(({ mark }) => mark.role === "fit");
  const screwed = marks.filter((mark) => screwsOf(mark).length > 0);
  return screwed.flatMap((mark) => {
    // Parts in marks of their own belong to the screws if only one mark has screws.
    const companions = screwed.length === 1 ? marks : [mark];
    const screws = screwsOf(mark);
    return screws.length === 1 ? jointOf(screws[0]!, companions) : [];
  });
}

interface Counted {
  readonly at: Anchor;
  readonly hardware: Hardware;
  readonly key: string;
  readonly fastener: Fastener;
  readonly count: number;
}

function jointOf(
  { at, hardware, key, fastener, count }: Counted,
  companions: readonly ResolvedMark[],
): Joint[] {
  const { thread, length } = fastener;
  if (!thread || length === undefined) return [];
  const others = companions.flatMap(hardwareOf).filter((one) => one.hardware !== hardware);
  const has = (kind: Fastener["kind"]) => others.some((one) => one.fastener.kind === kind);
  const layers = [
    ...others.flatMap((one) => layersOf(one, thread, count)),
    ...oneOfEachLine(companions.flatMap(partsOf)).flatMap(layerOfPart),
  ];
  const end = has("nut") ? "nut" : has("standoff") ? "standoff" : "unknown";
  return [{ at, screw: hardware, key, thread, length, fastener, end, layers }];
}

function screwsOf(mark: ResolvedMark): readonly Counted[] {
  return hardwareOf(mark).filter(({ fastener }) => fastener.kind === "screw");
}

/** The fastening hardware of a mark with its amounts. */
function hardwareOf({ piece, items }: ResolvedMark): Counted[] {
  return items.flatMap(({ item, supplies: [supply] }) => {
    if (item.kind !== "amount" || item.amount.kind !== "count") return [];
    const fastener = supply?.kind === "hardware" ? fastenerOf(supply) : undefined;
    if (supply?.kind !== "hardware" || !fastener) return [];
    const at = { piece, span: item.span };
    const key = foldKey(item.key);
    return [{ at, hardware: supply, key, fastener, count: item.amount.count }];
  });
}

/** As many layers as lie under one screw: two washers a screw are two layers. */
function layersOf({ hardware, fastener, count }: Counted, thread: Thread, screws: number): Layer[] {
  const { kind } = fastener;
  if (kind !== "washer" && kind !== "bush" && kind !== "insulator") return [];
  const said = thicknessIn(hardware.line.cells.description?.text ?? "");
  const thickness = said ?? (kind === "washer" ? washerThickness(thread) : undefined);
  if (thickness === undefined || Number.isNaN(thickness)) return [];
  return new Array<Layer>(Math.floor(count / screws)).fill({ name: hardware.name, thickness });
}

function partsOf({ items }: ResolvedMark): readonly Supply[] {
  return items.flatMap(({ item, supplies }) =>
    item.kind === "amount" ? supplies.filter((one) => !isFastener(one)) : supplies,
  );
}

/** Devices of one line lie side by side, each under a screw of its own. */
function oneOfEachLine(supplies: readonly Supply[]): readonly Supply[] {
  return [...new Map(supplies.map((one) => [one.line, one])).values()];
}

function isFastener(supply: Supply): boolean {
  return supply.kind === "hardware" && fastenerOf(supply) !== undefined;
}

/** Heat sinks and panels by their description, devices by their package. */
function layerOfPart(supply: Supply): Layer[] {
  const { cells } = supply.line;
  const text = `${cells.value?.text ?? ""} ${cells.description?.text ?? ""}`;
  const thickness = thicknessIn(text) ?? packageThickness(`${cells.package?.text ?? ""} ${text}`);
  return thickness === undefined ? [] : [{ name: supply.name, thickness }];
}

/** The least that lies between head and nut: what is not known is not counted. */
export function stackOf({ layers }: Joint): number {
  return layers.reduce((sum, { thickness }) => sum + thickness, 0);
}
