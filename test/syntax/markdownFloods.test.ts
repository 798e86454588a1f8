/** Whatever the text, parsing it never throws, never hangs, and takes time in step with its length. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parseMarkdown } from "../../server/src/syntax/markdown.ts";
import { dialectNodes, NO_LABELS } from "./markdownTrees.ts";
import { syntaxProblems } from "./problems.ts";

/** What one parse costs, in milliseconds of the processor. */
function time(text: string): number {
  const start = process.cpuUsage();
  parseMarkdown(text, NO_LABELS);
  return process.cpuUsage(start).user / 1000;
}

const repeated = (unit: string) => (length: number) =>
  unit.repeat(Math.ceil(length / unit.length)).slice(0, length);
const halves = (first: string, second: string) => (length: number) =>
  repeated(first)(length / 2) + repeated(second)(length / 2);
const opened = (unit: string) => (length: number) => `a ${repeated(unit)(length)}`;
const rising = (sign: string) => (length: number) => {
  let text = "";
  for (let n = 1; text.length < length; n++) text += `${sign.repeat(n)}a`;
  return text;
};

const FLOODS: readonly (readonly [string, (length: number) => string])[] = [
  ...[
    ..."[ ] [] ][ ![ [^ [^a] ![^a] [a]( [a][ [R1] [R1](x ](x { } {} {a} {a=1 {2 *_~` * *a **a~b ~a".split(
      " ",
    ),
    ..."*a _b a* *[ a**b*c a*b_ *[R1 ~~a ` `a \\`` < > >a [a](<b [a](b( &a &".split(" "),
    "[R1] ",
    "[R1, ",
    "[a](b (",
    '[a](b "',
    "[a](b 'x\" (",
    "{a ",
    "{read V(x) <",
    "{VCC = 1 V ",
    "*a ",
    "a* ",
    "_a ",
    "~a ",
    "a~ ",
    "~a~ ",
    "*a _b ",
    "`a ",
    "a` b`` c``` ",
    "a]b\n",
    "a[b\n",
    "[R1]\n",
    "[R1,\n",
    "a{b\n",
    "a*b\n",
    "a`b\n",
    "a~b\n",
    "&a\n",
    "> ",
    "- ",
    "1. ",
    "[^a]: ",
    "|[R1]",
    "|[R1]\n|-\n",
    "[a]: b\n",
  ].map((unit) => [unit, repeated(unit)] as const),
  ["[…]", halves("[", "]")],
  ["![…]", halves("![", "]")],
  ["[a…]", halves("[a*", "]")],
  ["{…}", halves("{ ", "} ")],
  ["*a…b*", halves("*a ", "b* ")],
  ["*a**a…", halves("*a **a ", "a* a** ")],
  ["~a~~b…", halves("~a ~~b ", "a~ ")],
  ["`…", rising("`")],
  ["*…", rising("*")],
  ["* … a", (length) => `${repeated("* ")(length)}a`],
  ["- … a", (length) => `${repeated("- ")(length)}a`],
  ...["<!--", "<?a", "<![CDATA[", "<!A ", "<a "].map((unit) => [unit, opened(unit)] as const),
];

/**
 * How much longer four times as much takes: about four in linear time, sixteen in quadratic. A busy
 * machine, a cold cache or the garbage collector can make one pair look bad, so a bad one is
 * measured again, and at last at the next size: quadratic time shows in all of them.
 */
function growth(make: (size: number) => string, size: number): number {
  const ratio = (from: number) => time(make(4 * from)) / Math.max(time(make(from)), 25);
  let least = ratio(size);
  for (const from of [size, size, 4 * size]) {
    if (least > 9) least = Math.min(least, ratio(from));
  }
  return least;
}

describe("time grows in step with a flood of", () => {
  test.each(FLOODS.map(([name, make]) => ({ name, make })))("$name", ({ make }) => {
    expect(growth(make, 10_000)).toBeLessThan(11);
  });
});

test("thousands of labels and of brackets that look for them take time in step with their number", () => {
  const make = (count: number) => {
    const labels = Array.from({ length: count }, (_, index) => `a${index}`);
    return `${labels.map((label) => `[${label}]: b`).join("\n\n")}\n\n${labels.map((label) => `[${label}]`).join(" ")}`;
  };
  expect(growth(make, 2_000)).toBeLessThan(11);
});

describe("within the limits nothing is lost", () => {
  test("a link in many open brackets is a link", () => {
    const text = `${"[ ".repeat(500)}[a](b) [R1] and [c](d)`;
    const root = JSON.stringify(parseMarkdown(text, NO_LABELS));
    expect(root.match(/"type":"link"/g)).toHaveLength(2);
    expect(root.match(/"type":"partMark"/g)).toHaveLength(1);
  });

  test("a paragraph of 20,000 marks has all of them", () => {
    expect(dialectNodes("[R1] and {2 V} ".repeat(20_000))).toHaveLength(40_000);
  });

  test("blocks nest as deep as anybody writes them", () => {
    const text = Array.from({ length: 40 }, (_, depth) => `${"  ".repeat(depth)}- [R${depth}]\n`);
    expect(dialectNodes(text.join(""))).toHaveLength(40);
    expect(dialectNodes(`${"> ".repeat(9)}[R1]`)).toHaveLength(1);
  });
});

describe("hostile text", () => {
  const fragment = fc.oneof(
    fc.constantFrom(
      ..."[ ] { } ( ) < > | * _ ~ ` ! ^ : = , ± – - + & ; # \\ / . $ %".split(" "),
      ..."[R1 [R1–R4] [all [later: R1] [6 × M3] {VCC {read {2*V*I} } ]( ][ ![ [^ &amp; &#x5B; <b> <!-- -->".split(
        " ",
      ),
      " ",
      "\t",
      "\n",
      "\r\n",
      "\r",
      "\n\n",
      "\n> ",
      "\n- ",
      "\n1. ",
      "\n   ",
      "\n\t",
      "\n# ",
      "\n===",
      "\n[R1]: x\n",
      "\n[^1]: ",
      "\n| a | b |\n|-|-|\n",
      "\n```\n",
      "[^1]",
      "  \n",
      "\0",
      "\uFEFF",
      "🔧",
      "\uD83D",
      "é",
    ),
    fc.string({ unit: "binary", maxLength: 3 }),
  );
  const text = fc.array(fragment, { maxLength: 60 }).map((fragments) => fragments.join(""));

  test("never throws, and whole marks and figures stand where they say", () => {
    fc.assert(
      fc.property(text, (text) => {
        for (const node of dialectNodes(text)) {
          const source = text.slice(node.position!.start.offset, node.position!.end.offset);
          if (node.type === "almostMark") {
            expect(source).toBe(node.value);
            expect("]{").toContain(source);
            expect(text.slice(node.problem.span.start, node.problem.span.end)).not.toBe("");
            continue;
          }
          const span = node.type === "partMark" ? node.mark.span : node.figure.span;
          expect(text.slice(span.start, span.end)).toBe(source);
          expect(source).toMatch(node.type === "partMark" ? /^\[.*\]$/s : /^\{.*\}$/s);
        }
        for (const { span, suggestion } of syntaxProblems(parseMarkdown(text, NO_LABELS))) {
          expect(span.start).toBeLessThanOrEqual(span.end);
          expect(span.end).toBeLessThanOrEqual(text.length);
          if (suggestion) expect(suggestion.span.end).toBeLessThanOrEqual(text.length);
        }
      }),
      { numRuns: 5000 },
    );
  });

  test("parses the same each time", () => {
    fc.assert(
      fc.property(text, (text) => {
        expect(parseMarkdown(text, NO_LABELS)).toEqual(parseMarkdown(text, NO_LABELS));
      }),
      { numRuns: 300 },
    );
  });
});
