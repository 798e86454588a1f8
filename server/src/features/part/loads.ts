/** Figures declared for a part, with their share of its rating. */
import { LOADS, type Load, ratingOf } from "../../checks/electric/ratings.ts";
import type { Guide } from "../../model/guide.ts";
import type { Part } from "../../model/parts.ts";
import { hasUnit } from "../../quantity/evaluation/value.ts";
import { shown } from "./shown.ts";

/** One paragraph, or empty where the guide declares none. */
export function loads(part: Part, guide: Guide): string {
  const told = (Object.keys(LOADS) as Load[]).flatMap((load) => {
    const value = guide.figures.named(load, part)?.evaluation?.value;
    if (!value || !hasUnit(value, LOADS[load])) return [];
    const most = Math.max(Math.abs(value.min), Math.abs(value.max));
    const rating = ratingOf(part, load);
    const share = rating?.share
      ? `, ${percent((100 * most) / rating.most)} of ${shown(rating.most, LOADS[load])}`
      : "";
    return [`${load} up to ${shown(most, LOADS[load])}${share}`];
  });
  return told.length > 0 ? `Bears ${told.join("; ")}.` : "";
}

function percent(share: number): string {
  return share < 1 ? "less than 1 %" : `${Math.round(share)} %`;
}
