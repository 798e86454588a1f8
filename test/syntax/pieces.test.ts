import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { digestPiece } from "../../server/src/syntax/digest.ts";
import type { Fact, PieceFacts } from "../../server/src/syntax/facts.ts";
import { PieceSequence } from "../../server/src/syntax/pieces.ts";
import { type Edit, editsOf, hostileText } from "./hostile.ts";

const NO_LABELS = { links: [], footnotes: [] };

function sequenceOf(text: string): PieceSequence<PieceFacts> {
  const sequence = new PieceSequence<PieceFacts>(text, {
    headLength: () => 0,
    read: (piece, candidate) => digestPiece(piece, candidate, NO_LABELS),
  });
  finish(sequence);
  return sequence;
}

function finish(sequence: PieceSequence<PieceFacts>): void {
  for (const _ of sequence.advance()) void _;
}

/** Facts of all pieces, their spans counted in the whole text. */
function factsOf(sequence: PieceSequence<PieceFacts>): unknown[] {
  const all = (kind: "facts" | "problems") =>
    sequence.pieces.flatMap(({ start, digest }) => digest[kind].map((one) => moved(one, start)));
  return [...all("facts"), ...all("problems")];
}

/** A copy in which every span is `by` further on. */
function moved(value: unknown, by: number): unknown {
  if (Array.isArray(value)) return value.map((one) => moved(one, by));
  if (typeof value !== "object" || value === null) return value;
  const entries = Object.entries(value);
  const isSpan = entries.length === 2 && "start" in value && "end" in value;
  return Object.fromEntries(
    entries.map(([key, one]) => [key, isSpan ? (one as number) + by : moved(one, by)]),
  );
}

/** What stays the same however the text is cut: an unclosed leaf may end later in a longer text. */
function comparable(facts: unknown[]): unknown[] {
  return facts.map((fact) => {
    const { kind, span } = fact as Fact & { span?: { start: number; end: number } };
    if ((kind !== "step" && kind !== "note") || !span) return fact;
    return { ...(fact as object), span: span.start };
  });
}

function expectCovered(sequence: PieceSequence<PieceFacts>): void {
  let at = 0;
  for (const piece of sequence.pieces) {
    expect(piece.start).toBe(at);
    at += piece.length;
  }
  expect(at).toBe(sequence.text.length);
}

function apply(sequence: PieceSequence<PieceFacts>, edits: readonly Edit[], settle: boolean): void {
  for (const { at, remove, insert } of edits) {
    const { length } = sequence.text;
    const start = Math.round(at * length);
    sequence.edit(start, Math.min(length, start + remove), insert);
    if (settle) finish(sequence);
  }
  finish(sequence);
}

describe("a text cut into pieces", () => {
  test("is cut at headings and list items once an edit refines it", () => {
    const sequence = sequenceOf("## A\n\n1. one\n2. two\n   more\n3. three\n\n## B\n\n1. x\n");
    expect(sequence.pieces.map(({ start }) => start)).toEqual([0, 38]);
    sequence.edit(10, 10, "x");
    finish(sequence);
    expect(
      sequence.pieces.map(({ start, length }) => sequence.text.slice(start, start + length)),
    ).toEqual(["## A\n\n", "1. oxne\n", "2. two\n   more\n", "3. three\n\n", "## B\n\n1. x\n"]);
  });

  test("is not cut inside a fence, a comment, or a paragraph that a number only continues", () => {
    for (const text of [
      "```\n# no heading\n1. no item\n```\n",
      "<!--\n# no heading\n-->\n",
      "It was in\n1986. A good year\n2. for\n",
    ]) {
      const sequence = sequenceOf(text);
      sequence.edit(text.length, text.length, "x");
      finish(sequence);
      expect(sequence.pieces.length).toBe(1);
    }
  });

  test("gives the same facts as a parse of the whole, labels aside", () => {
    fc.assert(
      fc.property(hostileText, editsOf(3), (text, edits) => {
        const sequence = sequenceOf(text);
        apply(sequence, edits, true);
        expectCovered(sequence);
        // Definitions reach over pieces; GuidePage takes care of them.
        fc.pre(!/\]:/.test(sequence.text.toString()));
        const whole = digestPiece(sequence.text.toString(), undefined, NO_LABELS)!;
        const facts = [...whole.facts, ...whole.problems];
        expect(comparable(factsOf(sequence))).toEqual(comparable(facts));
      }),
      { numRuns: 500 },
    );
  });

  test("after any edits gives the facts of a fresh cut", () => {
    fc.assert(
      fc.property(hostileText, editsOf(6), fc.boolean(), (text, edits, settle) => {
        const sequence = sequenceOf(text);
        apply(sequence, edits, settle);
        expectCovered(sequence);
        expect(comparable(factsOf(sequence))).toEqual(
          comparable(factsOf(sequenceOf(sequence.text.toString()))),
        );
      }),
      { numRuns: 1000 },
    );
  });

  test("tells exactly which pieces came and went", () => {
    fc.assert(
      fc.property(hostileText, editsOf(4), (text, edits) => {
        const sequence = sequenceOf(text);
        const known = new Set(sequence.takeChanges().added);
        for (const edit of edits) {
          apply(sequence, [edit], true);
          const { removed, added } = sequence.takeChanges();
          for (const piece of removed) expect(known.delete(piece)).toBe(true);
          for (const piece of added) known.add(piece);
          expect(known).toEqual(new Set(sequence.pieces));
        }
      }),
      { numRuns: 300 },
    );
  });

  test("a fence that opens and closes again costs no second parse of what it covers", () => {
    const steps = Array.from({ length: 200 }, (_, i) => `${i + 1}. Solder [R${i + 1}].\n`).join("");
    let reads = 0;
    const sequence = new PieceSequence<PieceFacts>(`## A\n\n${steps}`, {
      headLength: () => 0,
      read: (piece, candidate) => {
        reads++;
        return digestPiece(piece, candidate, NO_LABELS);
      },
    });
    finish(sequence);
    sequence.edit(4, 4, "\n\n```");
    finish(sequence);
    reads = 0;
    sequence.edit(4, 9, "");
    finish(sequence);
    expect(reads).toBeLessThan(20);
    expect(sequence.pieces.flatMap(({ digest }) => digest.facts).length).toBe(602);
  });
});

test("a paragraph may name more parts than a call takes arguments", () => {
  const { facts } = digestPiece("R1 ".repeat(200_000), undefined, NO_LABELS)!;
  expect(facts.filter(({ kind }) => kind === "mention")).toHaveLength(200_000);
});
