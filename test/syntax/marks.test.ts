/** The grammar of part marks, read from the text between the brackets. */
import { describe, expect, test } from "vitest";
import type { PartMark } from "../../server/src/syntax/dialect.ts";
import { MappedText } from "../../server/src/syntax/marks/mappedText.ts";
import { parseMark } from "../../server/src/syntax/marks/parseMark.ts";
import { shortMark } from "./marksShort.ts";

/** The mark of a bracket. */
function mark(bracket: string): PartMark {
  const result = parseMark(new MappedText(bracket.slice(1, -1), 1));
  if (!result || !("mark" in result)) throw new Error(`${bracket}: ${JSON.stringify(result)}`);
  return result.mark;
}

function short(bracket: string): string {
  return shortMark(mark(bracket));
}

describe("parts", () => {
  test.each([
    ["[R1]", "fit R1"],
    ["[ R1 ,R2 ]", "fit R1 | R2"],
    ["[R17A, LED1, CONN12, XU3]", "fit R17A | LED1 | CONN12 | XU3"],
    ["[C1, 3, 6–8]", "fit C1 | C3 | C6..C8(3)"],
    ["[R2-3, R7, R10-12]", "fit R2..R3(2) | R7 | R10..R12(3)"],
    ["[U3A, B]", "fit U3A | U3B"],
    ["[U3A–U3D, U4A–C]", "fit U3A..U3D(4) | U4A..U4C(3)"],
    ["[R01–R03]", "fit R01..R03(3)"],
    ["[relay/R1, R2, main/R3, 4]", "fit relay/R1 | relay/R2 | main/R3 | main/R4"],
    ["[front panel/S1–S3]", "fit front panel/S1..S3(3)"],
    ["[main/R1–main/R4]", "fit main/R1..R4(4)"],
    ["[R1–R4, R7 = 4k7]", "fit R1..R4(4) | R7 = 4k7"],
    ["[R1 = 4,7k]", "fit R1 = 4,7k"],
    ["[C1 = 10µ, X7R]", "fit C1 = 10µ, X7R"],
  ])("%s is %s", (bracket, expected) => {
    expect(short(bracket)).toBe(expected);
  });

  // Range forms: common practice, as listed in ../shared/reference-values.md 2.6, and words of lists
  // in German, French, Spanish and Dutch.
  test.each(
    "– — - − ‐ ‑ … .. ... ~"
      .split(" ")
      .flatMap((sign) => [`R1${sign}R4`, `R1 ${sign} R4`, `R1${sign}4`]),
  )("%s is the range of four", (range) => {
    expect(short(`[${range}]`)).toBe("fit R1..R4(4)");
  });

  test.each(["to", "through", "thru", "bis", "tot", "à", "a", "t/m", "TO"])(
    "the word %s makes a range",
    (word) => {
      expect(short(`[R1 ${word} R4, C1 ${word} 3]`)).toBe("fit R1..R4(4) | C1..C3(3)");
    },
  );

  test("a tilde is read as a dash, with a problem that puts one there", () => {
    const { problems } = mark("[R1~R4]");
    expect(problems).toMatchObject([{ suggestion: { span: { start: 3, end: 4 }, text: "–" } }]);
    expect(mark("[R1–R4]").problems).toBeUndefined();
  });

  test("a long range is written out only when asked for", () => {
    expect(short("[R1–R10000]")).toBe("fit R1..R10000(10000)");
    const marks = Array.from({ length: 20_000 }, () => mark("[R1–R10000]"));
    expect(marks).toHaveLength(20_000);
  });
});

describe("groups, choices, sets and amounts", () => {
  test.each([
    ["[Q1+Q2, Q3 + Q4]", "fit Q1+Q2 | Q3+Q4"],
    ["[U1+XU1+HS1]", "fit U1+XU1+HS1"],
    ["[main/Q1+Q2]", "fit main/Q1+main/Q2"],
    ["[R1 or R2]", "fit R1 or R2"],
    ["[all R]", "fit all R"],
    ["[all R except R16, R18]", "fit all R but R16 R18"],
    ["[all R except R16–R18, 20, C1]", "fit all R but R16..R18(3) R20 C1"],
    ["[all R except R16, all C]", "fit all R but R16 | all C"],
    ["[rest of D]", "fit rest D"],
    ["[Rest of 100n, R1]", "fit rest 100n | R1"],
    ["[all 10 kΩ]", "fit all 10 kΩ"],
    ["[all 1N4148, all BC547, all p33]", "fit all 1N4148 | all BC547 | all p33"],
    ["[relay/all C, all R]", "fit relay/all C | relay/all R"],
    ["[all relay/C]", "fit relay/all C"],
    ["[6 × M3x10]", "fit 6 of M3x10"],
    [
      "[6x M3x10, 6 x M3x10, 6 X M3, 6 * M3x10]",
      "fit 6 of M3x10 | 6 of M3x10 | 6 of M3 | 6 of M3x10",
    ],
    ["[2 × item 45]", "fit 2 of item 45"],
    ["[4 × 1N4148]", "fit 4 of 1N4148"],
    ["[820 mm × CuL 1.0]", "fit 0.82 m of CuL 1.0"],
    ["[1,5 m × CuL 0.8, R1]", "fit 1.5 m of CuL 0.8 | R1"],
    ["[1,5 m × CuL 0,8, R1]", "fit 1.5 m of CuL 0,8 | R1"],
    ["[2 × Entretoise 3,5 mm, C1, 3]", "fit 2 of Entretoise 3,5 mm | C1 | C3"],
    ["[2 × M3x10,4 × 1N4148,1,5 m × CuL 1]", "fit 2 of M3x10 | 4 of 1N4148 | 1.5 m of CuL 1"],
    ["[C1, 1,5 m × CuL 0.8]", "fit C1 | 1.5 m of CuL 0.8"],
    ["[10 in × wire]", "fit 0.254 m of wire"],
  ])("%s is %s", (bracket, expected) => {
    expect(short(bracket)).toBe(expected);
  });

  test("an amount keeps the length as written", () => {
    expect(mark("[820 mm × CuL 1.0]").items[0]).toMatchObject({ amount: { text: "820 mm" } });
  });
});

describe("roles", () => {
  test.each([
    ["[later: K2]", "later K2"],
    ["[Place: LED1–LED7]", "place LED1..LED7(7)"],
    ["[insert: U3]", "insert U3"],
    ["[empty: R12]", "empty R12"],
    ["[bridge: JP1]", "bridge JP1"],
    ["[make: L1]", "make L1"],
    ["[match: Q1+Q2, Q3+Q4]", "match Q1+Q2 | Q3+Q4"],
    ["[try: Q5–Q8]", "try Q5..Q8(4)"],
    ["[remove : Q5–Q8]", "remove Q5..Q8(4)"],
    ["[later: USB, !RESET!]", "later USB | !RESET!"],
    ["[place: R1 = 10k]", "place R1 = 10k"],
    ["[tool: hex key 2.5 mm]", "tool hex key 2.5 mm"],
    ["[tool: hex key 2,5 mm, pliers]", "tool hex key 2,5 mm | pliers"],
    ["[own: thermal paste, Sn60Pb40 = lead]", "own thermal paste | Sn60Pb40 = lead"],
    ["[see: first-power]", "see first-power"],
    ["[see: #first-power, #b]", "see first-power | b"],
    ["[#first-power]", "label first-power"],
  ])("%s is %s", (bracket, expected) => {
    expect(short(bracket)).toBe(expected);
  });
});

describe("bare words", () => {
  test.each(["USB", "RESET", "!RESET!", "U$2", "r1", "Tr1", "M3x10", "A", "all LEDs", "USB, ICSP"])(
    "[%s] is left to the parts list",
    (text) => {
      expect(mark(`[${text}]`).certain).toBe(false);
    },
  );

  test("beside a designator they belong to a mark beyond doubt", () => {
    expect(short("[R1, USB]")).toBe("fit R1 | USB");
  });
});

test("every part of a mark has its span", () => {
  const text = "[later: relay/C1, 3–5, all R except R2, 6 × M3x10, Q1+Q2 = 4,7 k]";
  const { span, roleSpan, items, stated } = mark(text);
  const at = (part: { start: number; end: number } | undefined) =>
    part && text.slice(part.start, part.end);
  expect(at(span)).toBe(text);
  expect(at(roleSpan)).toBe("later");
  expect(items.map((item) => at(item.span))).toEqual([
    "relay/C1",
    "3–5",
    "all R except R2",
    "6 × M3x10",
    "Q1+Q2",
  ]);
  const [, , set, amount, group] = items;
  expect(set?.kind === "set" && set.except.map((part) => at(part.span))).toEqual(["R2"]);
  expect(amount?.kind === "amount" && at(amount.keySpan)).toBe("M3x10");
  expect(group?.kind === "group" && group.members.map((part) => at(part.span))).toEqual([
    "Q1",
    "Q2",
  ]);
  expect(at(stated?.span)).toBe("4,7 k");
});
