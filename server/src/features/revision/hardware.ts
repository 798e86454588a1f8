/** Marks that use up hardware which the new list no longer has. */

import { suppliedName } from "../../model/compare/compareHardware.ts";
import type { ResolvedMark } from "../../model/guide.ts";
import type { Hardware } from "../../model/parts.ts";
import type { Draft } from "./drafts.ts";
import { marksByPlace } from "./places.ts";
import type { Revision } from "./revisedParts.ts";

export function touchedHardware(revision: Revision): Draft[] {
  const fresh = marksByPlace(revision.after);
  const drafts: Draft[] = [];
  for (const [place, mark] of marksByPlace(revision.before)) {
    for (const [index, { item, supplies }] of mark.items.entries()) {
      const was = supplies.find((supply) => supply.kind === "hardware");
      if (!was || item.kind !== "amount") continue;
      if (fresh.get(place)?.items[index]?.supplies.length !== 0) continue;
      drafts.push(goneDraft(mark, was, item, revision));
    }
  }
  return drafts;
}

function goneDraft(
  { piece, step }: ResolvedMark,
  hardware: Hardware,
  { key, keySpan }: { readonly key: string; readonly keySpan: Draft["at"]["span"] },
  revision: Revision,
): Draft {
  const other = inItsPlace(hardware, revision);
  const hint = other === undefined ? "" : ` In the same amount there is ${other} now.`;
  return {
    kind: "step",
    at: { piece, span: keySpan },
    step,
    message: `${hardware.name} is no longer in the list.${hint}`,
    note: `${hardware.name} is no longer in the kit.${hint}`,
    names: [key],
  };
}

/** The one thing that is new in the list in the amount in which this one was supplied. */
function inItsPlace({ line }: Hardware, { changes }: Revision): string | undefined {
  const name = suppliedName(line);
  const gone = changes.hardware.find((one) => one.name === name && one.after === undefined);
  const come = changes.hardware.filter(
    (one) => one.before === undefined && one.after === gone?.before,
  );
  return gone && come.length === 1 ? come[0]!.name : undefined;
}
