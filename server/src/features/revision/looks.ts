/** What a builder sees of a part beside what the list says, and how it differs under a revised list. */
import { kindOf } from "../../model/partKind.ts";
import type { Part } from "../../model/parts.ts";
import { type PolarKind, polarKind } from "../../trade/polarity/polarParts.ts";
import { markingOf, UNMARKED } from "../part/markings.ts";

/**
 * `bands brown black red gold → red red red gold`, one entry for each thing that looks otherwise.
 * `isMade`: by the builder, so that it carries no mark.
 */
export function lookChanges(before: Part, after: Part, isMade: boolean): string[] {
  const [old, fresh] = [lookOf(before, isMade), lookOf(after, isMade)];
  const changes: string[] = [];
  for (const [what, was, is] of [
    ["bands", old.bands, fresh.bands],
    ["marked", old.printed, fresh.printed],
    ["body height", old.height, fresh.height],
  ] as const) {
    if (was !== is) changes.push(`${what} ${was || "(none)"} → ${is || "(none)"}`);
  }
  if (!old.polar && fresh.polar) changes.push(`has a right way round now (${fresh.polar})`);
  if (old.polar && !fresh.polar) changes.push(`goes in either way round now (was ${old.polar})`);
  return changes;
}

interface Look {
  readonly bands: string;
  readonly printed: string;
  readonly height: string;
  readonly polar: PolarKind | undefined;
}

function lookOf(part: Part, isMade: boolean): Look {
  const { bands, percent, printed } = isMade ? UNMARKED : markingOf(part);
  const [first] = bands;
  const words =
    first && percent !== undefined
      ? `${first.slice(0, -1).join(" ")}, ${first.at(-1)}`
      : first?.join(" ");
  const { value, package: footprint, description } = part.line.cells;
  return {
    bands: words ?? "",
    // Resistors that wear bands carry no print; of several codes the first is the usual one.
    printed: first || kindOf(part) === "resistor" ? "" : (printed[0] ?? ""),
    height: part.height && !part.offBoard ? `${part.height.mm} mm` : "",
    polar: polarKind(part.letters, {
      value: value?.text,
      package: footprint?.text,
      description: description?.text,
    }),
  };
}
