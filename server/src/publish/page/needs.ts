/** What the builder needs beside the kit: tools, and supplies that are not in it. */
import type { GuideState } from "../../model/guideState.ts";
import { type InventoryEntry, inventory, stepsToTell } from "../../model/tools/inventory.ts";
import { escapeHtml, keepUnits, numberId } from "../html.ts";
import type { PageWords } from "../words/form.ts";

/** Up to so many steps are named behind a tool; one that is used everywhere needs none. */
const MOST_STEPS = 6;

export function needsHtml(guide: GuideState, words: PageWords): string {
  const entries = inventory(guide);
  const groups: [string, readonly InventoryEntry[]][] = [
    [words.tools, entries.filter(({ kind }) => kind === "tool")],
    [words.ownSupplies, entries.filter(({ kind }) => kind !== "tool")],
  ];
  const lists = groups.filter(([, of]) => of.length > 0).map(([title, of]) => list(title, of));
  if (lists.length === 0) return "";
  const hint = `<p class="where">${escapeHtml(words.needHint)}</p>`;
  return `<section class="needs" aria-labelledby="needs"><h2 id="needs">${escapeHtml(words.need)}</h2>\n${hint}\n${lists.join("\n")}\n</section>`;
}

function list(title: string, entries: readonly InventoryEntry[]): string {
  const items = entries.map((entry) => {
    const { name } = entry;
    const steps = stepsToTell(entry);
    const few = steps.length <= MOST_STEPS ? steps : [];
    const links = few.map((number) => `<a href="#step-${numberId(number)}">${number}</a>`);
    const where = links.length > 0 ? ` <span class="where">${links.join(", ")}</span>` : "";
    return `<li>${escapeHtml(keepUnits(name))}${where}</li>`;
  });
  return `<h3>${escapeHtml(title)}</h3>\n<ul>\n${items.join("\n")}\n</ul>`;
}
