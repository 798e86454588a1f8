/** Marks mean the same, and stand where they stand, wherever in a text they are. */
import fc from "fast-check";
import { decodeString } from "micromark-util-decode-string";
import { describe, expect, test } from "vitest";
import type { PartMark } from "../../server/src/syntax/dialect.ts";
import { dialectNodes, dialectTexts } from "./markdownTrees.ts";
import { disguise, generatedMark, PLACES } from "./marksGenerated.ts";
import { shortMark } from "./marksShort.ts";

describe("spans are exact", () => {
  test.each([
    ["after a carriage return", "a\r\nb [R1] c", "[R1]"],
    ["after tabs", "\tcode\n\na\t\t[R1]", "[R1]"],
    ["after emoji", "🔧🔧 [R1]", "[R1]"],
    ["after entities", "&eacute;&#128295; [R1]", "[R1]"],
    ["after escapes", "\\* \\[ [R1]", "[R1]"],
    ["after a byte-order mark", "\uFEFF[R1]", "[R1]"],
    ["after two byte-order marks", "\uFEFF\uFEFF[R1]", "[R1]"],
    ["after a NUL", "a\0b [R1]", "[R1]"],
    ["in a list in a quote", "> - a\n>\n>   [R1]", "[R1]"],
    ["in a quote in a list", "- > 1. [R1]", "[R1]"],
    ["over a line break in a quote", "> x [R1,\n> R2] y", "[R1,\n> R2]"],
    ["over a lazy line", "> x [R1,\nR2] y", "[R1,\nR2]"],
    ["over a line break with tabs", "1. x [R1,\r\n\tR2] y", "[R1,\r\n\tR2]"],
    ["in a table cell", "| a | b |\n|--|--|\n| é | x [R1] |", "[R1]"],
    ["in a heading", "### 🔧 [R1] ###", "[R1]"],
    ["in a setext heading", "a\n[R1,\nR2]\n===", "[R1,\nR2]"],
    ["in emphasis", "**a _b [R1]_**", "[R1]"],
    ["in a link", "[a [R1] b](x)", "[R1]"],
    ["with escapes and entities inside", "a [R1 \\= &#52;k7]", "[R1 \\= &#52;k7]"],
    ["of a figure over a line break", "> - x {VCC =\n>   13.8 V} y", "{VCC =\n>   13.8 V}"],
    ["of a figure with an entity", "é {0.5 N&middot;m}", "{0.5 N&middot;m}"],
  ])("%s", (_, text, expected) => {
    expect(dialectTexts(text)).toEqual([expected]);
  });
});

test("a mark means the same wherever it stands and however it is escaped", () => {
  const place = fc.constantFrom(...PLACES);
  const choice = fc.array(fc.integer({ min: 0, max: 20 }), { minLength: 7, maxLength: 31 });
  fc.assert(
    fc.property(generatedMark, place, choice, ({ text, short }, place, choice) => {
      const bracket = `[${disguise(text, choice, place.lineBreak)}]`;
      const source = place.before + bracket + place.after;
      const nodes = dialectNodes(source);
      const mark = nodes.flatMap((node) => (node.type === "partMark" ? [node.mark] : []))[0];
      expect(mark && shortMark(mark), JSON.stringify(source)).toBe(short);
      expect(source.slice(mark!.span.start, mark!.span.end)).toBe(bracket);
      expectItemsInPlace(source, mark!);
    }),
    { numRuns: 3000 },
  );
});

/** Each item's source text, decoded, reads as the item. */
function expectItemsInPlace(source: string, { items, stated }: PartMark): void {
  const at = (span: { start: number; end: number }) =>
    decodeString(source.slice(span.start, span.end)).replace(/\s*\n[>\s]*/g, " ");
  for (const item of items) {
    if (item.kind === "part") expect(item.name.endsWith(at(item.span))).toBe(true);
    if (item.kind === "amount") expect(at(item.keySpan)).toBe(item.key);
    if (item.kind === "set") expect(at(item.span).endsWith(item.of)).toBe(true);
    if (item.kind === "range") expect(at(item.span)).toMatch(/^\p{L}+\d+.*\d$/u);
  }
  if (stated) expect(at(stated.span)).toBe(stated.text);
}
