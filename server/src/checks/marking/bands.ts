/** What a run of colours says, and whether it fits a part of the list. */
import type { Part } from "../../model/parts.ts";
import {
  type BandReading,
  bandsFor,
  type Colour,
  readBands,
  valueBands,
} from "../../trade/marking/colours.ts";
import type { CodedPart } from "./codedParts.ts";

/** Runs are read from their end too: an author may have begun at the wrong one. */
export interface RunReading {
  readonly forward: BandReading | undefined;
  readonly backward: BandReading | undefined;
}

export function readRun(colours: readonly Colour[]): RunReading {
  return { forward: readBands(colours), backward: readBands(colours.toReversed()) };
}

/** Parts that wear bands: resistors, and inductors in microhenry. */
export function wearsBands({ kind }: CodedPart): boolean {
  return kind !== "capacitor";
}

/**
 * Whether value and tolerance of the bands are those of the list, or only the value is. With three
 * bands nothing is said of the tolerance: authors leave its band out.
 */
export function fits(
  coded: CodedPart,
  bands: BandReading,
  count: number,
): "fully" | "in value" | "not" {
  if (Math.abs(bands.ohms - ohmsOf(coded)) > 1e-6 * bands.ohms) return "not";
  const listed = percentOf(coded.part);
  return count === 3 || listed === undefined || bands.tolerances.includes(listed)
    ? "fully"
    : "in value";
}

/** The listed value of an inductor counts in microhenry, as its bands do. */
function ohmsOf({ kind, amount }: CodedPart): number {
  return kind === "inductor" ? amount * 1e6 : amount;
}

/** The listed tolerance in per cent, where it is one figure. */
export function percentOf({ line }: Part): number | undefined {
  const match = /^(\d+(?:\.\d+)?) %$/.exec(line.tolerance ?? "");
  return match ? Number(match[1]) : undefined;
}

/**
 * The bands of a part as a run that an author wrote gives them: without tolerance if that has none,
 * else with the list's, or that of the run where the list is silent. A sixth band stays, since no list
 * tells of the temperature coefficient.
 */
export function bandsLike(run: readonly Colour[], coded: CodedPart): readonly Colour[] | undefined {
  const bands = bandsOfValue(run, coded);
  return run.length === 6 && bands?.length === 5 ? [...bands, run[5]!] : bands;
}

function bandsOfValue(run: readonly Colour[], coded: CodedPart): readonly Colour[] | undefined {
  const ohms = ohmsOf(coded);
  if (run.length === 3) return valueBands(ohms, 2);
  const percent = percentOf(coded.part);
  if (percent !== undefined) return bandsFor(ohms, percent);
  const count = run.length === 4 ? 2 : 3;
  const value = valueBands(ohms, count);
  return value && [...value, run[count + 1]!];
}
