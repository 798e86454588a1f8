import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { HELD, type TextBlock } from "../../server/src/model/prose.ts";
import { hostileText } from "../syntax/hostile.ts";
import { guideOf } from "./guides.ts";

function blocksOf(body: string): TextBlock[] {
  return guideOf(body, "Designator,Value\nR1,1k\n").pieces.flatMap((piece) => [...piece.prose]);
}

/** The text with what holds a place and what is blank shortened. */
function short({ text }: TextBlock): string {
  return text
    .replace(new RegExp(`${HELD}+`, "g"), "#")
    .replace(/\s+/g, " ")
    .trim();
}

function wordsOf(body: string): string[] {
  return blocksOf(body).flatMap((block) => block.words.map((word) => word.lower));
}

function sentencesOf(body: string): string[] {
  return blocksOf(body).flatMap((block) =>
    block.sentences.map(({ start, end }) => {
      const at = block.piece.start;
      return block.piece.page.text.slice(at + start, at + end);
    }),
  );
}

describe("The text of a block", () => {
  test("shows words, holds the place of marks and the like, and blanks Markdown's signs", () => {
    const body =
      "1. Fit **the** [red one](a.md) [R1], {5 V}, `code`, ![alt](p.png), <https://a.b/c> and <!-- not this -->\n   more &amp; \\*so\\*.";
    expect(blocksOf(body).map(short)).toEqual([
      "Fit the red one #, #, #, #, # and more &amp; \\*so\\*.",
    ]);
  });

  test("leaves out the signs at the starts of a quote's lines", () => {
    expect(blocksOf("> > one\n> > two > three\nlazy").map(short)).toEqual(["one two > three lazy"]);
  });

  test("comes per paragraph, heading, bullet and cell, each with its step and note", () => {
    const body = `## Stage

Before.

> **CAUTION: fumes.** Air the room.

1. One.

   > **NOTICE: dust.** Wipe.

   - a bullet
2. Two.

> A quotation.

| What | Fit |
|---|---|
| | [R1] now |

### Below

After.`;
    const rows = blocksOf(body).map((block) =>
      [
        block.fact.block,
        short(block),
        block.step?.number ?? "-",
        block.note?.signal ?? (block.fact.quoted ? "quoted" : ""),
        block.instructs ? "instructs" : "",
      ].join("|"),
    );
    expect(rows).toEqual([
      "heading|Stage|-||",
      "paragraph|Before.|-||",
      "paragraph|CAUTION: fumes. Air the room.|-|CAUTION|",
      "paragraph|One.|1.1||instructs",
      "paragraph|NOTICE: dust. Wipe.|1.1|NOTICE|",
      "bullet|a bullet|1.1||instructs",
      "paragraph|Two.|1.2||instructs",
      "paragraph|A quotation.|1.2|quoted|",
      "cell|What|1.2||instructs",
      "cell|Fit|1.2||instructs",
      "cell||1.3||instructs",
      "cell|# now|1.3||instructs",
      "heading|Below|-||",
      "paragraph|After.|-||",
    ]);
  });

  test("maps offsets exactly: each word stands in the page where it says", () => {
    fc.assert(
      fc.property(hostileText, (body) => {
        for (const block of blocksOf(body)) {
          const { start, end } = block.fact.span;
          expect(block.text.length).toBe(end - start);
          const at = block.piece.start;
          let last = start;
          for (const word of block.words) {
            expect(word.start).toBeGreaterThanOrEqual(last);
            const source = block.piece.page.text.slice(at + word.start, at + word.end);
            expect(source.toLowerCase().normalize("NFC")).toBe(word.lower);
            last = word.end;
          }
          expect(block.sentences.flatMap(({ words }) => words)).toEqual(block.words);
        }
      }),
      { numRuns: 500 },
    );
  });

  test("is the same however the piece is read", () => {
    const guide = guideOf("1. One.\n2. Two.");
    const [piece] = guide.pieces;
    expect(piece!.prose).toBe(piece!.prose);
    expect(piece!.steps.map((step) => step.prose.map(short))).toEqual([["One."], ["Two."]]);
  });
});

describe("Words", () => {
  test("keep decimal points and short endings, and part what hyphens and elisions join", () => {
    expect(
      wordsOf(
        "2.5 mm, 4,7 k, 1N4148, flat-nose, don't, l'étain, s'il, jusqu’à, e.g. so/else R1–R4",
      ),
    ).toEqual(
      "2.5 mm 4,7 k 1n4148 flat nose don't l étain s il jusqu à e.g so else r1 r4".split(" "),
    );
    const [block] = blocksOf("flat-nose l'étain R1–R4 - so");
    expect(block!.words.map((word) => word.joined)).toEqual([
      false,
      true,
      false,
      true,
      false,
      false,
      false,
    ]);
  });
});

describe("Sentences", () => {
  test("end at stops, not at short forms, decimal points and numbered things", () => {
    expect(
      sentencesOf(
        'Cut it, e.g. with pliers. Take 2.5 mm, ca. 3 turns. See Fig. 3! "Done?" Wait 10 min. Go on … now. Löte z. B. R1 an. Das war’s.',
      ),
    ).toEqual([
      "Cut it, e.g. with pliers.",
      "Take 2.5 mm, ca. 3 turns.",
      "See Fig. 3!",
      'Done?"',
      "Wait 10 min.",
      "Go on … now.",
      "Löte z. B. R1 an.",
      "Das war’s.",
    ]);
  });

  test("hold marks, and begin behind a mark that follows a stop", () => {
    expect(sentencesOf("1. Fit it. [R1] Its ring is left. Look at [R1]. Then {5 V}.")).toEqual([
      "Fit it.",
      "Its ring is left.",
      "Look at [R1].",
      "Then {5 V}.",
    ]);
  });

  test("run on behind colons and semicolons", () => {
    expect(sentencesOf("Measure here: 5 V; then there. Off")).toEqual([
      "Measure here: 5 V; then there.",
      "Off",
    ]);
  });
});
