/** Whether a new name can be taken, and if not, why. */
import { stepName } from "../../checks/words.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { Part } from "../../model/parts.ts";
import { ARITHMETIC, CONSTANTS } from "../../quantity/functions.ts";
import { unitSymbol } from "../../quantity/unitMeanings.ts";
import { designatorKey, readDesignator } from "../../syntax/designators.ts";
import { readItems } from "../../syntax/marks/items.ts";
import { MappedText } from "../../syntax/marks/mappedText.ts";
import { ROLES } from "../../syntax/marks/words.ts";
import { TRADE_FUNCTIONS } from "../../trade/functions/all.ts";

/** Why the part cannot be called so; undefined where it can. */
export function partNameProblem(guide: GuideState, part: Part, to: string): string | undefined {
  if (!isDesignator(to, part)) {
    return `\`${to}\` is no designator. Write class letters and a number: R17.`;
  }
  const other = guide.parts.find(
    (one) =>
      one !== part && one.board === part.board && designatorKey(one.name) === designatorKey(to),
  );
  if (other) {
    const value = other.line.cells.value?.text;
    return `The parts list has a ${to} already, in line ${other.line.row}${value ? ` (${value})` : ""}. Choose a name that is free.`;
  }
  if (guide.figures.named(to)) return `A figure is called ${to}. Choose a name that is free.`;
  return setProblem(guide, part, to);
}

/** A word without a number (USB) may be given to a part that had such a name before. */
function isDesignator(name: string, part: Part): boolean {
  const { items, unread, wrong, empty } = readItems(new MappedText(name));
  const [item] = items;
  const isOne = items.length === 1 && unread.length + wrong.length + empty.length === 0;
  if (!isOne || item?.kind !== "part" || item.name !== name || item.board !== undefined)
    return false;
  const read = readDesignator(name);
  return read ? /^\p{Lu}/u.test(name) : !readDesignator(part.name) && !ROLES.has(name);
}

/** A set of a class (`all R`) would lose the part, or take it in. */
function setProblem(guide: GuideState, part: Part, to: string): string | undefined {
  const [before, after] = [part.letters, readDesignator(to)?.letters ?? to].map(designatorKey);
  if (before === after) return undefined;
  for (const piece of guide.pieces) {
    for (const { items, step } of piece.marks) {
      for (const { item, supplies } of items) {
        if (item.kind !== "set" || !step) continue;
        const of = designatorKey(item.of);
        const loses = of === before && supplies.includes(part);
        if (!loses && of !== after) continue;
        const what = loses ? "would no longer hold it" : "would hold it too";
        return `The set \`${item.which === "all" ? "all" : "rest of"} ${item.of}\` in ${stepName({ step })} ${what}. Name its parts one by one first.`;
      }
    }
  }
  return undefined;
}

export function labelProblem(guide: GuideState, to: string): string | undefined {
  if (!/^\p{L}[\p{L}\d._-]*$/u.test(to)) {
    return `\`${to}\` is no label. A label begins with a letter and holds letters, digits, dots and dashes.`;
  }
  const [step] = guide.labels(to);
  if (!step) return undefined;
  const where = step.step ? ` in ${stepName({ step: step.step })}` : "";
  return `There is a label \`${to}\` already${where}. Choose one that is free.`;
}

export function figureNameProblem(guide: GuideState, to: string): string | undefined {
  if (!/^\p{L}[\p{L}\p{N}_]*$/u.test(to)) {
    return `\`${to}\` is no name of a figure. A name begins with a letter and holds letters and digits.`;
  }
  if (guide.figures.named(to))
    return `A figure is called ${to} already. Choose a name that is free.`;
  const { part } = guide.kit.find(to);
  if (part)
    return `${part.name} is a part of the list, and in a figure means its value. Choose another name.`;
  const isTaken = ARITHMETIC.has(to) || CONSTANTS.has(to) || TRADE_FUNCTIONS.has(to);
  if (isTaken) return `\`${to}\` is a function or a constant. Choose another name.`;
  if (unitSymbol(to)) return `\`${to}\` is a unit. Choose another name.`;
  return undefined;
}
