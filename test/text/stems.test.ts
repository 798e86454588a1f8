import { describe, expect, test } from "vitest";
import { StemList, type Word } from "../../server/src/text/stems.ts";

function wordsOf(text: string): Word[] {
  return [...text.matchAll(/[\p{L}\p{N}]+/gu)].map(({ 0: word, index }) => ({
    start: index,
    end: index + word.length,
    lower: word.toLowerCase(),
    joined: text[index - 1] === "-",
  }));
}

function found(patterns: readonly string[], text: string): string[] {
  const list = new StemList(patterns.map((pattern) => [pattern, pattern]));
  const words = wordsOf(text);
  return [...list.find(words)].map(
    ({ from, to, meaning }) => `${meaning} @ ${text.slice(words[from]!.start, words[to - 1]!.end)}`,
  );
}

describe("a list of stems", () => {
  test("finds words, stems and phrases, the longest first", () => {
    const list = ["drill", "drill* bit*", "heat sink*", "heat*"];
    expect(found(list, "Drill with a drill bit; heated heat-sinks drilled.")).toEqual([
      "drill @ Drill",
      "drill* bit* @ drill bit",
      "heat* @ heated",
      "heat sink* @ heat-sinks",
    ]);
  });

  test("takes the longer of two stems, so that an exception can be told", () => {
    expect(found(["solder*", "solderless*"], "a solderless board, soldered")).toEqual([
      "solderless* @ solderless",
      "solder* @ soldered",
    ]);
  });

  test("finds the parts of compounds where the pattern asks for it", () => {
    expect(found(["*kondensator*", "*trafo"], "Elkondensatoren, Netztrafo, Trafos")).toEqual([
      "*kondensator* @ Elkondensatoren",
      "*trafo @ Netztrafo",
    ]);
  });

  test("finds nothing in nothing, and words of one letter", () => {
    expect(found(["a", "solder*"], "")).toEqual([]);
    expect(found(["à", "à froid"], "à froid à")).toEqual(["à froid @ à froid", "à @ à"]);
  });
});
