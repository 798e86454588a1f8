/** The texts of a packing list: what each row says, for paper and for files alike. */
import { lengthText, markItems } from "../../checks/words.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { Part } from "../../model/parts.ts";
import type { Language } from "../../text/language.ts";
import { localNumbers } from "../localNumbers.ts";
import { shortName, tellingPackage, valueText } from "../parts/lineText.ts";
import type { PageWords } from "../words/form.ts";
import { counted, filled } from "../words/words.ts";
import type { Material } from "./making.ts";
import type { PackedLine, PackKind } from "./packedLines.ts";
import {
  madeFrom,
  type PackGroup,
  type PackingList,
  type PackRow,
  type PackTotal,
} from "./packingList.ts";

/** `Bag A`, `3 Fit the resistors`, `Capacitors`. */
export function groupTitle({ of }: PackGroup, { by }: PackingList, words: PageWords): string {
  const { packing } = words;
  switch (by) {
    case "bag":
      return of === undefined ? packing.noBag : bagTitle(String(of), words);
    case "kind":
      return packing.kinds[of as PackKind];
    case "stage": {
      if (typeof of !== "object") return packing.noStage;
      const title = of.heading?.fact.title ?? "";
      return `${of.number} ${title}`.trim();
    }
  }
}

/** A list may call them bags itself. */
function bagTitle(name: string, { packing }: PageWords): string {
  const word = packing.bag.replace("#", "").trim();
  return name.toLowerCase().startsWith(word.toLowerCase()) ? name : filled(packing.bag, name);
}

/** `8`, `2.6 m`; empty where neither list nor steps say how many. */
export function amountText(
  { pieces, metres }: Pick<PackRow, "pieces" | "metres">,
  language: Language | undefined,
): string {
  if (metres !== undefined) return localNumbers(lengthText(metres), language);
  return pieces === undefined ? "" : String(pieces);
}

export function partNames(parts: readonly Part[], guide: GuideState): readonly string[] {
  return markItems(parts.map((part) => shortName(part, guide)));
}

/** The names on a packing list: those of its share, in the guide's own short form. */
export function rowNames({ packed, parts }: PackRow, guide: GuideState): readonly string[] {
  if (parts.length > 0) return partNames(parts, guide);
  return packed.pieces === undefined
    ? []
    : markItems(packed.lines.flatMap(({ designators }) => designators));
}

/** What it is called on its bag, and what else the list says of it. */
export function whatText(
  { hardware, line }: PackedLine,
  language: Language | undefined,
): { name: string; more: string } {
  const { description, package: footprint } = line.cells;
  const value = hardware ? (line.cells.value?.text ?? "") : valueText(line, language);
  const name = hardware?.name ?? (value || description?.text || footprint?.text || "");
  const more = [hardware && value !== name ? value : "", description?.text, tellingPackage(line)];
  return { name, more: more.filter((text) => text && text !== name).join(" · ") };
}

/** What the packer should know beside: `optional`, `for L1–L4`. */
export function notesOf(
  { packed }: PackRow,
  { making }: PackingList,
  guide: GuideState,
  words: PageWords,
): readonly string[] {
  const { line, surplus } = packed;
  const { packing } = words;
  const notes: string[] = [];
  if (line.optional) notes.push(packing.optional);
  if (surplus > 0) notes.push(filled(packing.surplus, surplus));
  const becomes = partNames(madeFrom(packed, making), guide);
  if (becomes.length > 0) notes.push(filled(packing.becomes, becomes.join(", ")));
  return notes;
}

/** `12 lines · 48 pieces · 2 of them spare` */
export function totalText({ lines, pieces, spare, lengths }: PackTotal, words: PageWords): string {
  const { packing } = words;
  const told = [counted(packing.lines, lines)];
  if (pieces > 0) told.push(counted(packing.pieces, pieces));
  if (spare > 0) told.push(filled(packing.spares, spare));
  if (lengths > 0) told.push(counted(packing.lengths, lengths));
  return told.join(" · ");
}

/** `500 mm × CuL 0.4` */
export function materialText(
  { hardware, count, metres }: Material,
  language: Language | undefined,
): string {
  const amount = metres === undefined ? (count ?? 1) : localNumbers(lengthText(metres), language);
  return `${amount} × ${hardware.name}`;
}
