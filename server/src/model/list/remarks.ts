/** Complaints about texts in the designator column that are no designators. */
import type { DesignatorList } from "../../syntax/designatorItems.ts";
import type { Span } from "../../text/span.ts";
import { classesOfLetters } from "../../trade/classLetters.ts";
import { isLeftOutCell, saysLeftOut, saysOptional } from "./fitting.ts";
import { hasName } from "./rowKinds.ts";
import type { RowView } from "./rowView.ts";

export interface Complaint {
  readonly span: Span;
  readonly message: string;
}

/** What is wrong with the row's designator cell. `isHardware`: the row has no designators. */
export function complaintsOf(
  view: RowView,
  list: DesignatorList,
  isHardware: boolean,
): readonly Complaint[] {
  if (list.names.length > 0 && list.remarks.length === 0) return list.problems;
  const cell = view.cell("designator");
  if (!cell || cell.text === "") return [];
  const place = ({ start, end }: Span) => view.designatorPlace(start, end);
  const complaints: Complaint[] = [...list.problems];
  if (list.names.length === 0 && list.remarks.length === 0) {
    return complaints.length > 0 ? complaints : [{ span: cell.span, message: NO_NAMES }];
  }
  const told = new Set<string>();
  for (const remark of list.remarks) {
    const text = cell.text.slice(remark.start, remark.end);
    const isFaulty = isHardware
      ? isMisspelt(text) || (!hasName(view) && isSentence(text))
      : !isHarmless(text);
    if (!isFaulty || told.has(text)) continue;
    told.add(text);
    complaints.push({ span: place(remark), message: complaint(text) });
  }
  return complaints;
}

const NO_NAMES =
  "This cell holds separators but no designators, so nothing tells where the parts go. Write the designators, or leave the cell empty for hardware.";

function complaint(text: string): string {
  const shown = `"${shorten(text)}"`;
  if (/^\p{L}+(?:\?|\*\*)$/u.test(text)) {
    return `${shown} has no number yet, so no step can name the part. Number the parts in the schematic and write the list again.`;
  }
  return `${shown} is no designator, so nothing is read from it. Write a designator such as R1, or move the remark to another column.`;
}

/** One word with a figure in it: meant as a designator, or a value in the wrong cell. */
function isMisspelt(text: string): boolean {
  const isWord = /^\S*[\d?*]\S*$/.test(text);
  return (isWord || beginsWithDesignator(text)) && !isHarmless(text);
}

/** `R3to R5`, `R3:R5 and more`. */
function beginsWithDesignator(text: string): boolean {
  const letters = /^(\p{Lu}{1,4})\d/u.exec(text)?.[1];
  return letters !== undefined && classesOfLetters(letters).length > 0;
}

/** Two words or more, and nothing else in the row that says what they are about. */
function isSentence(text: string): boolean {
  return /\S\s+\S+\s+\S+\s+\S/.test(text);
}

/** Do-not-fit and optional marks, and counts such as `4x`. */
function isHarmless(text: string): boolean {
  return (
    isLeftOutCell(text, true) ||
    saysLeftOut(text) ||
    saysOptional(text) ||
    /^(?:[x×]?\s*\d{1,4}\s*[x×]?|[\p{P}\p{S}]+|x|opt|option)$/iu.test(text)
  );
}

export function shorten(text: string): string {
  const plain = text.replace(/\s+/g, " ");
  return plain.length > 40 ? `${plain.slice(0, 37)}…` : plain;
}
