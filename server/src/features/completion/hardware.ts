/** Completion of screws, wire and the like: `4 × M3x10`, with what the steps leave over. */
import { tally } from "../../checks/tally.ts";
import { lengthText } from "../../checks/words.ts";
import type { GuideState } from "../../model/guideState.ts";
import { isKey, writtenKey } from "../../model/hardwareKeys.ts";
import type { Hardware } from "../../model/parts.ts";
import { describeSupplies } from "../hover.ts";
import { type Completion, MOST_ITEMS } from "./completion.ts";

const AMOUNT = /^(\d+(?:[.,]\d+)?\s*(?:mm|cm|dm|m|in|ft)?)\s*([×✕xX*]\s*)?/;

/** Lines of the list that have something left; `typed` is the item up to the cursor. */
export function hardwareCompletions(guide: GuideState, typed: string): readonly Completion[] {
  const amount = AMOUNT.exec(typed);
  const word = typed.slice(amount?.[0].length ?? 0).toLowerCase();
  const items: Completion[] = [];
  for (const hardware of guide.hardware) {
    if (items.length === MOST_ITEMS) break;
    const left = leftOf(hardware, guide);
    if (!left) continue;
    const key = keyOf(hardware, guide);
    if (key === undefined || !holds(key, word)) continue;
    const label = `${amount ? amount[1]!.trim() : left.one} × ${key}`;
    items.push({
      label,
      kind: "hardware",
      detail: left.words,
      filter: amount ? `${amount[0]}${key}` : `${key} ${label}`,
      documentation: () => describeSupplies([hardware], guide),
    });
  }
  return items;
}

/** Whether a word of the key begins as what is typed. */
function holds(key: string, word: string): boolean {
  return word === "" || ` ${key.toLowerCase()}`.includes(` ${word}`);
}

/** What is left, as an amount for a mark and in words; undefined where nothing is. */
function leftOf(
  hardware: Hardware,
  guide: GuideState,
): { readonly one: string; readonly words: string } | undefined {
  const { supplied, metres } = hardware;
  const uses = guide.uses(hardware);
  if (metres !== undefined) {
    const used = uses.reduce((sum, use) => sum + (use.metres ?? 0), 0);
    const left = metres - used;
    if (left < 1e-6) return undefined;
    return { one: lengthText(left), words: `${lengthText(left)} of ${lengthText(metres)} left` };
  }
  if (supplied === undefined) return { one: "1", words: "" };
  const left = supplied - tally(uses, supplied).used;
  return left > 0 ? { one: `${left}`, words: `${left} of ${supplied} left` } : undefined;
}

/** Texts by which the guide may call its hardware. */
export function hardwareKeys(guide: GuideState): readonly string[] {
  return guide.hardware
    .slice(0, MOST_ITEMS)
    .map((hardware) => keyOf(hardware, guide))
    .filter((key) => key !== undefined);
}

/** A text by which a mark finds this line and no other. */
function keyOf(hardware: Hardware, guide: GuideState): string | undefined {
  const { name } = hardware;
  const found = guide.kit.findHardware(name);
  if (isKey(name) && found.length === 1 && found[0] === hardware) return name;
  return writtenKey(hardware, guide.hardware);
}
