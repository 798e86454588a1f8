/** The grammar of figures, read from the text between the braces. */
import { describe, expect, test } from "vitest";
import type { Figure, StatedText } from "../../server/src/syntax/dialect.ts";
import { parseFigure } from "../../server/src/syntax/figures/parseFigure.ts";
import { unclosedFigure } from "../../server/src/syntax/figures/unclosed.ts";
import { parseMarkdown } from "../../server/src/syntax/markdown.ts";
import { MappedText } from "../../server/src/syntax/marks/mappedText.ts";
import { applyEdits } from "../../server/src/text/span.ts";
import { dialectNodes, dialectTexts, NO_LABELS } from "./markdownTrees.ts";
import { syntaxProblems } from "./problems.ts";

/** The figures of a Markdown text. */
function parsedFigures(text: string): Figure[] {
  return dialectNodes(text).flatMap((node) => (node.type === "figure" ? [node.figure] : []));
}

function parse(text: string) {
  return parseFigure(new MappedText(text.slice(1, -1), 1));
}

/** The parts of a figure, in the order in which they are written. */
function short(text: string): Record<string, string> {
  const result = parse(text);
  if (!result || !("figure" in result)) throw new Error(`${text}: ${JSON.stringify(result)}`);
  return shortFigure(text, result.figure);
}

/** Each part by its span, which must hold the part's text. */
function shortFigure(source: string, figure: Figure): Record<string, string> {
  const { name, expression, tolerance, stated, reading } = figure;
  const parts: Record<string, string> = {};
  const put = (key: string, part: StatedText | undefined) => {
    if (!part) return;
    parts[key] = source.slice(part.span.start, part.span.end);
    expect(parts[key]).toBe(part.text);
  };
  put("name", name);
  if (name && name.symbol !== name.text) parts.symbol = name.symbol;
  name?.subjects.forEach((subject, index) => {
    put(`subject${index}`, subject);
  });
  put("expression", expression);
  put("tolerance", tolerance);
  put("stated", stated);
  if (reading) {
    put(reading.limit, reading.value);
    put("tolerance", reading.tolerance);
    put("upTo", reading.upTo);
  }
  expect(source.slice(figure.span.start, figure.span.end)).toBe(source);
  return parts;
}

describe("a figure", () => {
  test.each([
    ["{VCC}", { expression: "VCC" }],
    ["{0.5 N·m}", { expression: "0.5 N·m" }],
    ["{ 0.5 N m }", { expression: "0.5 N m" }],
    ["{7 lbf in}", { expression: "7 lbf in" }],
    ["{4k7}", { expression: "4k7" }],
    ["{AWG 24}", { expression: "AWG 24" }],
    ["{60 °C}", { expression: "60 °C" }],
    ["{10 000 Ω}", { expression: "10 000 Ω" }],
    ["{−40 °C}", { expression: "−40 °C" }],
    ["{4,7 kΩ ∥ 10 kΩ}", { expression: "4,7 kΩ ∥ 10 kΩ" }],
    ["{VCC = 13.8 V}", { name: "VCC", expression: "13.8 V" }],
    ["{VCC = 13.8 V ± 10 %}", { name: "VCC", expression: "13.8 V", tolerance: "10 %" }],
    ["{VCC = 13.8 V +- 10 %}", { name: "VCC", expression: "13.8 V", tolerance: "10 %" }],
    ["{VCC = 13.8 V +/-10%}", { name: "VCC", expression: "13.8 V", tolerance: "10%" }],
    ["{n = 5}", { name: "n", expression: "5" }],
    ["{2 * VCC * Iq = 24 W}", { expression: "2 * VCC * Iq", stated: "24 W" }],
    ["{sqrt(VCC^2) = 13.8 V}", { expression: "sqrt(VCC^2)", stated: "13.8 V" }],
    [
      "{P(R50) = Iq^2 * R50}",
      { name: "P(R50)", symbol: "P", subject0: "R50", expression: "Iq^2 * R50" },
    ],
    [
      "{torque(Q1, Q2) = 0.55 N·m}",
      {
        name: "torque(Q1, Q2)",
        symbol: "torque",
        subject0: "Q1",
        subject1: "Q2",
        expression: "0.55 N·m",
      },
    ],
    [
      "{P(relay/R50) = 1 W ± 5 % = 1,2 W}",
      {
        name: "P(relay/R50)",
        symbol: "P",
        subject0: "relay/R50",
        expression: "1 W",
        tolerance: "5 %",
        stated: "1,2 W",
      },
    ],
    ["{min(VCC; 12 V) * 2}", { expression: "min(VCC; 12 V) * 2" }],
    ["{P(R50, R51)}", { expression: "P(R50, R51)" }],
  ])("%s has its parts", (text, expected) => {
    expect(short(text)).toEqual(expected);
  });
});

describe("a reading", () => {
  const name = { name: "V(TP1)", symbol: "V", subject0: "TP1" };

  test.each([
    ["{read V(TP1) = 12 V ± 5 %}", { ...name, value: "12 V", tolerance: "5 %" }],
    ["{read V(TP1) = 12 V}", { ...name, value: "12 V" }],
    ["{read V(TP1) < 50 mV}", { ...name, below: "50 mV" }],
    ["{read V(TP1) > 10 MΩ}", { ...name, above: "10 MΩ" }],
    ["{read V(TP1)≤50 mV}", { ...name, below: "50 mV" }],
    ["{read V(TP1) = 5.8 V … 6.6 V}", { ...name, between: "5.8 V", upTo: "6.6 V" }],
    ["{read V(TP1) = 5.8 V ... 6.6 V}", { ...name, between: "5.8 V", upTo: "6.6 V" }],
    ["{read V(TP1) = 5.8 V to 6.6 V}", { ...name, between: "5.8 V", upTo: "6.6 V" }],
    ["{read V(TP1) = 5.8–6.6 V}", { ...name, between: "5.8", upTo: "6.6 V" }],
    ["{read V(TP1) = 5,8 bis 6,6 V}", { ...name, between: "5,8", upTo: "6,6 V" }],
    ["{read V(TP1) = 5,8 à 6,6 V}", { ...name, between: "5,8", upTo: "6,6 V" }],
    ["{read V(TP1) = 5,8 tot 6,6 V}", { ...name, between: "5,8", upTo: "6,6 V" }],
    ["{read V(TP1) = 5,8 hasta 6,6 V}", { ...name, between: "5,8", upTo: "6,6 V" }],
    ["{read V(TP1) = VCC / 2 ± 0,2 V}", { ...name, value: "VCC / 2", tolerance: "0,2 V" }],
  ])("%s has its parts", (text, expected) => {
    expect(short(text)).toEqual(expected);
  });
});

describe("braces that hold no figure are left alone", () => {
  test.each([
    "{}",
    "{ }",
    "{1}",
    "{0,1}",
    "{see the note}",
    "{a, b}",
    "{read the manual}",
    "{read me}",
    "{Fig 3}",
    "{x: 1}",
    "{a == b}",
    "{x => y}",
    '{"key"}',
    "{TODO!}",
    "{:)}",
    "{a;b; c d}",
    "{a.b = c}",
    "{the voltage = 5 V}",
    "{level = low … high}",
    "{5 … 6}",
    "{read me (or not) at 5}",
    "{read on page 5}",
  ])("%s", (text) => {
    expect(parse(text)).toBeUndefined();
  });
});

describe("almost a figure", () => {
  test.each([
    ["{VCC = }", "A value is missing"],
    ["{= 5 V}", "A value is missing"],
    ["{VCC = 5 V ±}", "A value is missing"],
    ["{2 * (VCC - 1 V}", "do not pair up"],
    ["{2 * VCC) + 1 V}", "do not pair up"],
    ["{a = 1 V = 2 V = 3 V}", "one = too many"],
    ["{level = 2.5 V … 3.5 V}", "one value and a tolerance"],
    ["{seuil = 2,5...3,5 V}", "one value and a tolerance"],
    ["{U2.8 = VCC - 0.3 V = 11.7 V}", "U2.8 cannot name a figure"],
    ["{read V(TP1)}", "does not say what V(TP1) should be"],
    ["{read V(TP1) 12 V ± 5 %}", "does not say what V(TP1) should be"],
    ["{read I(J1) entre 5 et 6 mA}", "does not say what I(J1) should be"],
    ["{read < 50 mV}", "does not say what is measured"],
    ["{read V(TP1) = ± 5 %}", "cannot be read"],
    ["{read V(TP1) < 5 V ± 1 V}", "cannot be read"],
  ])("%s: %s", (text, message) => {
    const problems = syntaxProblems(parseMarkdown(text, NO_LABELS));
    expect(problems).toMatchObject([
      { span: { start: 0, end: text.length }, message: expect.stringContaining(message) },
    ]);
    expect(parse(text)).toHaveProperty("almost");
  });
});

describe("bars for ∥", () => {
  test.each([
    ["{R1 || R2}", "{R1 ∥ R2}"],
    ["{P = 2 * (R1 || R2 || 1 kΩ)}", "{P = 2 * (R1 ∥ R2 ∥ 1 kΩ)}"],
  ])("%s is almost %s", (before, after) => {
    const [problem, ...others] = syntaxProblems(parseMarkdown(before, NO_LABELS));
    expect(others).toEqual([]);
    expect(applyEdits(before, [problem!.suggestion!])).toBe(after);
    expect(dialectTexts(after)).toEqual([after]);
  });

  test.each(["{a || b}", "{R1 | R2}", "{R1 ||| R2}", "{1 || then [R1]", "{|R1}"])(
    "%s is left alone",
    (text) => {
      expect(syntaxProblems(parseMarkdown(text, NO_LABELS))).toEqual([]);
    },
  );
});

describe("an open brace that was meant as a figure", () => {
  test.each([
    ["{VCC = 13.8 V", "{VCC = 13.8 V}"],
    ["{VCC = 13.8 V ± 10 % and so on", "{VCC = 13.8 V ± 10 %} and so on"],
    ["{P(R50) = 1,2 W. Then [R1]", "{P(R50) = 1,2 W}. Then [R1]"],
    ["{read V(TP1) < 50 mV here", "{read V(TP1) < 50 mV} here"],
    ["> a {VCC =\n> 13.8 V", "> a {VCC =\n> 13.8 V}"],
    ["| {VCC = 5 V |\n| - |\n", "| {VCC = 5 V} |\n| - |\n"],
    ["{VCC = 5 V {x}", "{VCC = 5 V} {x}"],
  ])("%j gets its brace", (before, after) => {
    const [problem, ...others] = syntaxProblems(parseMarkdown(before, NO_LABELS));
    expect(others).toEqual([]);
    expect(applyEdits(before, [problem!.suggestion!])).toBe(after);
    expect(syntaxProblems(parseMarkdown(after, NO_LABELS))).toEqual([]);
    expect(dialectTexts(after)[0]).toMatch(/^\{.*\}$/s);
  });

  test.each(["{", "{ and so on", "{see note", "{a", "a { b", "{x = y", "{name: 5"])(
    "%j is ordinary text",
    (text) => {
      expect(syntaxProblems(parseMarkdown(text, NO_LABELS))).toEqual([]);
    },
  );

  test("is told by the text behind it", () => {
    expect(unclosedFigure(new MappedText("VCC = 5 V", 1))).toMatchObject({
      suggestion: { span: { start: 10, end: 10 }, text: "}" },
    });
  });
});

describe("a figure longer than 500 characters", () => {
  const sum = (terms: number) => `{${"1 V + ".repeat(terms)}1 V}`;

  test("is ordinary text, and told", () => {
    expect(parsedFigures(sum(80))).toHaveLength(1);
    expect(parsedFigures(sum(100))).toHaveLength(0);
    for (const text of [sum(100), `{x = ${"(".repeat(10_000)}1${")".repeat(10_000)}}`]) {
      expect(syntaxProblems(parseMarkdown(text, NO_LABELS))).toMatchObject([
        { span: { start: 0, end: 1 }, about: "figure", message: expect.stringContaining("500") },
      ]);
    }
  });

  test("is not told where it is prose or code", () => {
    for (const text of [`{${"some words ".repeat(60)}}`, `{${'"key": "value", '.repeat(60)}}`]) {
      expect(syntaxProblems(parseMarkdown(text, NO_LABELS))).toEqual([]);
    }
  });
});

describe("each character of an expression knows its place", () => {
  test.each([
    ["> {2 * VCC +\n> VEE = 4 V}", "VEE"],
    ["{2 &#42; VCC + VEE = 4 V}", "VEE"],
    ["1. a\n   {2 *\n   VCC + VEE}", "VCC"],
  ])("%j", (text, word) => {
    const figures = parsedFigures(text);
    const { expression } = figures[0]!;
    const { offsets } = expression!;
    const index = expression!.text.indexOf(word);
    expect(text.slice(offsets![index]!, offsets![index + word.length]!)).toBe(word);
    expect(offsets).toHaveLength(expression!.text.length + 1);
  });

  test("without a list where they simply follow each other", () => {
    expect(parsedFigures("{2 * VCC = 4 V}")[0]!.expression).not.toHaveProperty("offsets");
  });
});

test("one star alone cannot be taken for emphasis, two of one paragraph can", () => {
  const stars = (text: string) => syntaxProblems(parseMarkdown(text, NO_LABELS)).length;
  expect(stars("It is {2*VCC}.")).toBe(0);
  expect(stars("It is {2*VCC}, and {3*VCC}.")).toBe(2);
  expect(stars("It is {2*VCC}.\n\nOr {3*VCC}.")).toBe(0);
});
