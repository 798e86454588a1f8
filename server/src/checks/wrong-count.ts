/** Screws, washers, wire: the steps use more than the list supplies, or leave some over. */
import type { Guide, Use } from "../model/guide.ts";
import { writtenKey } from "../model/hardwareKeys.ts";
import type { Hardware } from "../model/parts.ts";
import type { Anchor, Check, Finding, Related } from "./check.ts";
import { cellAt, useAt } from "./places.ts";
import { openEnds } from "./progress.ts";
import { tally } from "./tally.ts";
import { lengthText, pieces, stepName, usedAmount } from "./words.ts";

export const check: Check = {
  meta: {
    code: "wrong-count",
    summary: "The steps use more or fewer pieces of a line than the list supplies.",
    severity: "error",
    source: "common practice",
    tags: ["parts"],
  },
  *hardware(hardware, uses) {
    if (hardware.metres !== undefined) yield* tooLong(hardware, hardware.metres, uses);
    else if (hardware.supplied !== undefined) yield* tooMany(hardware, hardware.supplied, uses);
  },
  *guide(guide) {
    for (const hardware of guide.hardware) yield* leftOver(hardware, guide);
  },
};

function* tooMany(hardware: Hardware, supplied: number, uses: readonly Use[]): Iterable<Finding> {
  const { over, out } = tally(uses, supplied);
  if (!over) return;
  yield {
    at: useAt(over),
    message: () =>
      `${stepName(over)} brings the use of ${hardware.name} to ${out}, but the list supplies ${supplied}. Correct the number in a step, or the quantity in the list.`.replace(
        /^s/,
        "S",
      ),
    related: [...usedElsewhere(hardware, uses, over), suppliedHere(hardware, `${supplied}`)],
  };
}

function* tooLong(hardware: Hardware, supplied: number, uses: readonly Use[]): Iterable<Finding> {
  let metres = 0;
  for (const use of uses) {
    if (use.role === "later" || use.role === "try" || use.role === "remove") continue;
    if (use.metres === undefined) {
      yield countOfLength(hardware, supplied, use);
      continue;
    }
    const before = metres;
    metres += use.metres;
    const out = metres;
    if (before > longest(supplied) || out <= longest(supplied)) continue;
    yield {
      at: useAt(use),
      message: () =>
        `With ${stepName(use)} the guide uses ${lengthText(out)} of ${hardware.name}, but the list supplies ${lengthText(supplied)}. Shorten a piece, or supply more.`,
      related: [
        ...usedElsewhere(hardware, uses, use),
        suppliedHere(hardware, lengthText(supplied)),
      ],
    };
  }
}

/** Sums of lengths are rounded in the last binary digit. */
function longest(supplied: number): number {
  return supplied * (1 + 1e-9);
}

function countOfLength(hardware: Hardware, supplied: number, use: Use): Finding {
  return {
    at: useAt(use),
    severity: "warning",
    message: () =>
      `${hardware.name} is supplied by length (${lengthText(supplied)}), but ${stepName(use)} names pieces, so nobody knows whether it suffices. Write the length, as in [200 mm × ${hardware.name}].`,
  };
}

/** Fewer pieces used than supplied; silent where spares or an open trial say why. */
function* leftOver(hardware: Hardware, guide: Guide): Iterable<Finding> {
  const { supplied, spare, line } = hardware;
  if (supplied === undefined || hardware.metres !== undefined) return;
  if (!line.fitted || line.optional) return;
  const uses = guide.uses(hardware);
  if (uses.some((use) => use.metres !== undefined || use.item.kind === "choice")) return;
  const { used, open } = tally(uses, supplied);
  const left = supplied - spare - used;
  if (left <= 0 || open.length > 0 || openEnds(uses).held) return;
  yield {
    at: cellAt(hardware.list, line, "quantity", "part number", "value", "description"),
    severity: guide.reachesEnd ? "warning" : "information",
    message: () => leftOverMessage(hardware, used, left, guide),
    related: usedElsewhere(hardware, uses),
  };
}

function leftOverMessage(hardware: Hardware, used: number, left: number, guide: Guide): string {
  const supplied = pieces(hardware.supplied ?? 0, hardware);
  if (used === 0) {
    const key = writtenKey(hardware, guide.hardware);
    const example = key ? `, as in [${hardware.supplied} × ${key}]` : "";
    return `The list supplies ${supplied}, and no step uses any. Mark them where they go${example}.`;
  }
  return `The list supplies ${supplied}, the guide uses ${used}, so ${left} ${left === 1 ? "is" : "are"} left over. Mark where they go, or list them as spares.`;
}

function usedElsewhere(hardware: Hardware, uses: readonly Use[], but?: Use): Related[] {
  return uses
    .filter((use) => use !== but)
    .slice(0, 10)
    .map((use) => ({
      at: useAt(use),
      message: () => `${usedAmount(use, hardware)} in ${stepName(use)}.`,
    }));
}

function suppliedHere(hardware: Hardware, amount: string): Related {
  const at: Anchor = cellAt(hardware.list, hardware.line, "quantity", "part number", "value");
  return { at, message: () => `The list supplies ${amount} here.` };
}
