/** How a change note names things to a builder: by kind and look, not by the names of footprints. */
import type { ComparedPart, QualityChange } from "../../model/compare/compareLists.ts";
import type { ListLine } from "../../model/list/partsList.ts";
import { kindOfLine } from "../../model/partKind.ts";
import { readDesignator } from "../../syntax/designators.ts";
import { packageWords } from "../../trade/packageWords.ts";
import type { PartClass } from "../../trade/partWords.ts";

/** `1k5, resistor, axial, lying, 6.3 mm long, 2.5 mm thick` */
export function builderLook({ name, line, qualities }: ComparedPart): string {
  return joined(qualities.value?.text ?? "", line, name, qualities.package?.text ?? "");
}

/** The same of a line: `told` is what names its parts, their value and ratings. */
export function builderLineLook(line: ListLine, told: string): string {
  return joined(told, line, line.designators[0]?.name ?? "", line.text("package"));
}

function joined(told: string, line: ListLine, name: string, footprint: string): string {
  const kind = kindWord(kindOfLine(line, readDesignator(name)?.letters ?? ""));
  const texts = [told];
  for (const text of [kind, ...packageWords(footprint).split(", ")]) {
    const isSaid = texts.some((one) => one.toLowerCase().includes(text.toLowerCase()));
    if (!isSaid) texts.push(text);
  }
  return texts.filter((text) => text !== "").join(", ");
}

const SPELT: Readonly<Partial<Record<PartClass, string>>> = {
  led: "LED",
  ic: "IC",
  electrolytic: "electrolytic capacitor",
  unknown: "",
};

function kindWord(kind: PartClass): string {
  return SPELT[kind] ?? kind;
}

/** Where two footprints look alike in words, only their names tell them apart. */
export function inBuilderWords(change: QualityChange): QualityChange {
  const { quality, before, after } = change;
  if (quality !== "package") return change;
  const [was, is] = [before && packageWords(before), after && packageWords(after)];
  return was === is ? change : { quality, before: was, after: is };
}
