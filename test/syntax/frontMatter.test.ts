import fc from "fast-check";
import remarkFrontmatter from "remark-frontmatter";
import remarkParse from "remark-parse";
import { unified } from "unified";
import { describe, expect, test } from "vitest";
import { isGuide, readFrontMatter } from "../../server/src/syntax/frontMatterReader.ts";
import { applyEdits, type Span } from "../../server/src/text/span.ts";

/** The front matter of the YAML, between fences. */
function read(yaml: string) {
  const text = `---\n${yaml}\n---\n\n# Guide\n`;
  const frontMatter = readFrontMatter(text)!;
  const at = (span: Span) => text.slice(span.start, span.end);
  const problems = frontMatter.problems.map((problem) => `${at(problem.span)}: ${problem.message}`);
  const fixed = (index = 0) => {
    const { span, text: replacement } = frontMatter.problems[index]!.suggestion!;
    return applyEdits(text, [{ span, text: replacement }]).slice(4, -"\n---\n\n# Guide\n".length);
  };
  return { text, frontMatter, at, problems, fixed };
}

describe("a front matter as the design shows it", () => {
  const yaml = `title: Heron 40, a 7 MHz transceiver
language: en
parts: heron-parts.csv            # or a list
pages: [board.md, case.md]        # further files
supply: { VCC: 13.8 V ± 10 % }
figures: { Iq: 45 mA ± 10 %, P(R50): Iq^2 * R50 }
heights: { K2: 11 mm, TO-92: 5 mm, R1–R4: 0.1 in }
off-board: [T1, HS1, S1–S3]
clearance: { main: 24 mm }
tools: [soldering iron, side cutters]
columns: { value: Comment }
spares: { M3x6: 2 }
checks: { long-step: off, height-order: error }`;

  test.each(["\n", "\r\n", "\r"])("is read whole, with line end %j", (lineEnd) => {
    const text = `---\n${yaml}\n---\n# Heron\n`.replaceAll("\n", lineEnd);
    const found = readFrontMatter(text)!;
    expect(found.problems).toEqual([]);
    expect(text.slice(found.span.end)).toBe(`# Heron${lineEnd}`);
    const at = (span: Span) => text.slice(span.start, span.end);
    expect(found.title!.value).toBe("Heron 40, a 7 MHz transceiver");
    expect(at(found.title!.span)).toBe("Heron 40, a 7 MHz transceiver");
    expect(found.language!.value).toBe("en");
    expect(found.parts.map(({ path }) => [path.value, at(path.span)])).toEqual([
      ["heron-parts.csv", "heron-parts.csv"],
    ]);
    expect(found.pages.map(({ span }) => at(span))).toEqual(["board.md", "case.md"]);
    expect(found.offBoard.map(({ value }) => value)).toEqual(["T1", "HS1", "S1–S3"]);
    expect(found.tools.map(({ span }) => at(span))).toEqual(["soldering iron", "side cutters"]);
    const entries = <T>(list: readonly { name: string; nameSpan: Span; value: T; span: Span }[]) =>
      list.map(({ name, nameSpan, value, span }) => {
        expect(at(nameSpan)).toBe(name);
        return [name, value, at(span)];
      });
    expect(entries(found.supply)).toEqual([["VCC", "13.8 V ± 10 %", "13.8 V ± 10 %"]]);
    expect(entries(found.figures)).toEqual([
      ["Iq", "45 mA ± 10 %", "45 mA ± 10 %"],
      ["P(R50)", "Iq^2 * R50", "Iq^2 * R50"],
    ]);
    expect(entries(found.heights)).toEqual([
      ["K2", 11, "11 mm"],
      ["TO-92", 5, "5 mm"],
      ["R1–R4", 2.54, "0.1 in"],
    ]);
    expect(entries(found.clearance)).toEqual([["main", 24, "24 mm"]]);
    expect(entries(found.columns)).toEqual([["value", "Comment", "Comment"]]);
    expect(entries(found.spares)).toEqual([["M3x6", 2, "2"]]);
    expect(entries(found.checks)).toEqual([
      ["long-step", "off", "off"],
      ["height-order", "error", "error"],
    ]);
    for (const [name, span] of found.keys) expect(at(span)).toBe(name);
    expect(found.keys.size).toBe(13);
  });

  test("may be written in block style, in quotes and in any script", () => {
    const { frontMatter, at, problems } = read(
      `title: "Prüfgerät №5 🔧"\nparts:\n  - 'hauptplatine ä.csv'\n  - "relais \\u00e4.csv"\nsupply:\n  VCC: "12 V"\n  "-12V": '-12 V'\noff-board:\n- T1\n- S1–S3`,
    );
    expect(problems).toEqual([]);
    expect(at(frontMatter.title!.span)).toBe("Prüfgerät №5 🔧");
    expect(frontMatter.parts.map(({ path }) => path.value)).toEqual([
      "hauptplatine ä.csv",
      "relais ä.csv",
    ]);
    expect(at(frontMatter.parts[0]!.path.span)).toBe("hauptplatine ä.csv");
    expect(frontMatter.supply.map(({ name, value, span }) => [name, value, at(span)])).toEqual([
      ["VCC", "12 V", "12 V"],
      ["-12V", "-12 V", "-12 V"],
    ]);
    expect(frontMatter.offBoard.map(({ value }) => value)).toEqual(["T1", "S1–S3"]);
  });

  test("may fold a text over lines", () => {
    const { frontMatter, problems } = read("title: Heron\n  forty\nparts: x.csv");
    expect(problems).toEqual([]);
    expect(frontMatter.title!.value).toBe("Heron forty");
    expect(read("title: >\n  Heron\n  forty\nparts: x.csv").frontMatter.title!.value).toBe(
      "Heron forty",
    );
  });

  test("may stand in braces as a whole", () => {
    const { text, frontMatter, problems } = read("{ title: Heron, parts: x.csv }");
    expect(problems).toEqual([]);
    expect(frontMatter.parts[0]!.path.value).toBe("x.csv");
    expect(isGuide(text)).toBe(true);
  });
});

describe("the parts key", () => {
  const paths = (yaml: string) =>
    read(yaml).frontMatter.parts.map(({ board, path }) => [board, path.value]);

  test("takes one path, a list, boards with paths, and boards with lists", () => {
    expect(paths("parts: a.csv")).toEqual([[undefined, "a.csv"]]);
    expect(paths("parts: [a.csv, b.csv]")).toEqual([
      [undefined, "a.csv"],
      [undefined, "b.csv"],
    ]);
    expect(paths("parts: { main: a.csv, relay: [b.csv, c.csv] }")).toEqual([
      ["main", "a.csv"],
      ["relay", "b.csv"],
      ["relay", "c.csv"],
    ]);
    expect(paths("parts:\n  - main: a.csv\n  - b.csv")).toEqual([
      ["main", "a.csv"],
      [undefined, "b.csv"],
    ]);
  });

  test.each(["parts:", "parts: []", 'parts: ""', "parts: {}"])(
    "without a file is reported: %s",
    (yaml) => {
      const { text, problems } = read(yaml);
      expect(problems).toEqual([expect.stringMatching(/^parts: `parts` names no file/)]);
      expect(isGuide(text)).toBe(true);
    },
  );

  test("survives while another line is half written", () => {
    for (const broken of [
      "supply: { VCC: 12 V",
      "title: 'Heron",
      "supply",
      "heights: [",
      "title: @x",
    ]) {
      const { frontMatter, at, problems } = read(`${broken}\nparts: "x y.csv"   # the list`);
      expect(
        frontMatter.parts.map(({ path }) => [path.value, at(path.span)]),
        broken,
      ).toEqual([["x y.csv", "x y.csv"]]);
      expect(problems.length, broken).toBeGreaterThan(0);
    }
  });
});

describe("what an author gets wrong", () => {
  test("a decimal comma in braces is explained, and quotes offered", () => {
    const { frontMatter, problems, fixed } = read("parts: x.csv\nsupply: { VBAT: 4,5 V, X: 1 V }");
    expect(problems).toEqual([
      "4,5 V: YAML takes the comma in `4,5 V` for the end of the entry. Put the value in quotes, or write `4.5 V`.",
    ]);
    expect(frontMatter.supply.map(({ name, value }) => [name, value])).toEqual([
      ["VBAT", "4,5 V"],
      ["X", "1 V"],
    ]);
    expect(fixed()).toBe('parts: x.csv\nsupply: { VBAT: "4,5 V", X: 1 V }');
    expect(read(fixed()).problems).toEqual([]);
  });

  test("several decimal commas in one value are one problem", () => {
    const { frontMatter, problems } = read("parts: x.csv\nsupply: { V: 4,5 V ± 0,25 V }");
    expect(problems).toHaveLength(1);
    expect(frontMatter.supply[0]!.value).toBe("4,5 V ± 0,25 V");
    expect(read("parts: x.csv\nheights: { K2: 11,5 mm }").frontMatter.heights[0]!.value).toBe(11.5);
    const tools = read("parts: x.csv\ntools: [hex key 2,5 mm, pliers]");
    expect(tools.frontMatter.tools.map(({ value }) => value)).toEqual(["hex key 2,5 mm", "pliers"]);
    expect(tools.problems).toHaveLength(1);
  });

  test("a decimal comma outside braces is none of YAML's business", () => {
    expect(read("parts: x.csv\nsupply:\n  V: 4,5 V").problems).toEqual([]);
    expect(read("parts: x.csv\noff-board: [C1,2,T3]").problems).toEqual([]);
  });

  test("a comma in parentheses is explained for names and for values", () => {
    const name = read("parts: x.csv\nfigures: { torque(Q1, Q2): 0.5 N·m }");
    expect(name.frontMatter.figures.map((entry) => [entry.name, entry.value])).toEqual([
      ["torque(Q1, Q2)", "0.5 N·m"],
    ]);
    expect(name.fixed()).toBe('parts: x.csv\nfigures: { "torque(Q1, Q2)": 0.5 N·m }');
    const value = read("parts: x.csv\nfigures: { y: max(a, b) }");
    expect(value.frontMatter.figures[0]!.value).toBe("max(a, b)");
    expect(value.problems).toEqual([
      "max(a, b): YAML separates entries at a comma, so it cuts `max(a, b)` in two. Put it in quotes.",
    ]);
  });

  test("an unknown key is reported with the nearest known one", () => {
    const { problems, fixed } = read("parts: x.csv\noffboard: [T1]");
    expect(problems).toEqual([
      "offboard: `offboard` is no key of a guide and has no effect. Did you mean `off-board`?",
    ]);
    expect(fixed()).toBe("parts: x.csv\noff-board: [T1]");
    const strange = read("parts: x.csv\nlayout: post");
    expect(strange.problems[0]).toMatch(/^layout: .* Known keys: title, language, parts,/);
    expect(strange.frontMatter.problems[0]!.suggestion).toBeUndefined();
  });

  test("a key that stands twice is reported at the second place, the first counts", () => {
    const { text, frontMatter, problems } = read(
      "parts: a.csv\nparts: b.csv\nheights: { K1: 1 mm, K1: 2 mm }",
    );
    expect(frontMatter.parts.map(({ path }) => path.value)).toEqual(["a.csv"]);
    expect(frontMatter.problems.map(({ span }) => span.start)).toEqual([
      text.lastIndexOf("parts"),
      text.lastIndexOf("K1"),
    ]);
    expect(problems[0]).toBe(
      "parts: `parts` is given twice. Only the first counts: remove one of them.",
    );
  });

  test("a second colon in a line loses no line below it", () => {
    const { frontMatter, problems, fixed } = read("title: Heron: a kit: good  # yes\nparts: x.csv");
    expect(problems).toEqual([
      "Heron: a kit: good: YAML takes the second colon of this line for another key. Put the text in quotes.",
    ]);
    expect(frontMatter.title!.value).toBe("Heron: a kit: good");
    expect(frontMatter.parts[0]!.path.value).toBe("x.csv");
    expect(read(fixed()).problems).toEqual([]);
  });

  test("wrong kinds of value are reported at the value", () => {
    expect(read("parts: x.csv\ntitle: [a, b]").problems).toEqual([
      "[a, b]: `title` needs one text here.",
    ]);
    expect(read("parts: x.csv\ntitle:").problems).toEqual([
      "title: `title` has no value. Write one text, or remove it.",
    ]);
    expect(read("parts: x.csv\nsupply: 5 V").problems).toEqual([
      "5 V: `supply` needs names with values: `{ name: value }` here.",
    ]);
    expect(read("parts: x.csv\npages: { a: b.md }").problems).toHaveLength(1);
    expect(read("parts: x.csv\nlanguage: English, I think").problems).toHaveLength(1);
    expect(read("parts: x.csv\nspares: { M3x6: two }").problems).toEqual([
      "two: `two` is no number of pieces. Write a whole number, such as `2`.",
    ]);
  });

  test("a list without brackets is offered in brackets", () => {
    const { problems, fixed } = read("parts: x.csv\noff-board: T1, HS1");
    expect(problems).toHaveLength(1);
    expect(fixed()).toBe("parts: x.csv\noff-board: [T1, HS1]");
    expect(read("parts: x.csv\noff-board: T1").frontMatter.offBoard[0]!.value).toBe("T1");
  });

  test("a height needs a length, and its unit is asked for", () => {
    const bare = read("parts: x.csv\nheights: { K2: 11 }");
    expect(bare.frontMatter.heights[0]!.value).toBe(11);
    expect(bare.fixed()).toBe("parts: x.csv\nheights: { K2: 11 mm }");
    for (const wrong of ["tall", "-3 mm", "0 mm", "11 V", "1e9 mm"]) {
      const { frontMatter, problems } = read(`parts: x.csv\nheights: { K2: ${wrong} }`);
      expect(frontMatter.heights, wrong).toEqual([]);
      expect(problems, wrong).toHaveLength(1);
    }
  });

  test.each([
    ["11 mm", 11],
    ["11mm", 11],
    ["'11,5 mm'", 11.5],
    [".5 in", 12.7],
    ["0.43 in", 10.922],
    ["1.2cm", 12],
    ["500 mil", 12.7],
    [`'0.5"'`, 12.7],
    ["1.5 mm # measured", 1.5],
  ])("a height may be written as %s", (written, mm) => {
    const { frontMatter, problems } = read(`parts: x.csv\nheights:\n  K2: ${written}`);
    expect(problems).toEqual([]);
    expect(frontMatter.heights[0]!.value).toBe(mm);
  });

  test("shares of a rating, in per cent", () => {
    const { frontMatter, problems } = read(
      "parts: x.csv\nderating: { power: 50 %, voltage: 70.5 }",
    );
    expect(problems).toEqual([]);
    expect(frontMatter.derating.map(({ name, value }) => [name, value])).toEqual([
      ["power", 50],
      ["voltage", 70.5],
    ]);
  });

  test.each([
    ["{ power: 0 % }", "is no share of a rating"],
    ["{ power: 101 % }", "is no share of a rating"],
    ["{ power: half }", "is no share of a rating"],
    ["{ powr: 50 % }", "`derating` knows no `powr`"],
    ["{ power: }", "has no value"],
    ["50 %", "needs names with values"],
  ])("no share of a rating: %s", (derating, says) => {
    const { frontMatter, problems } = read(`parts: x.csv\nderating: ${derating}`);
    expect(frontMatter.derating).toEqual([]);
    expect(problems).toEqual([expect.stringContaining(says)]);
  });

  test("a clearance may stand for every board", () => {
    const { frontMatter, problems } = read("parts: x.csv\nclearance: 24 mm");
    expect(problems).toEqual([]);
    expect(frontMatter.clearance.map(({ name, value }) => [name, value])).toEqual([["", 24]]);
  });

  test("severities are held to the five words", () => {
    const { frontMatter, problems, fixed } = read(
      "parts: x.csv\nchecks: { a: warnign, b: Error, c: false }",
    );
    expect(frontMatter.checks.map(({ name, value }) => [name, value])).toEqual([["b", "error"]]);
    expect(problems).toHaveLength(2);
    expect(fixed(0)).toContain("a: warning");
    expect(fixed(1)).toContain("c: off");
  });

  test("what YAML itself refuses is told in plain words at its place", () => {
    expect(read("parts:\n\t- a.csv").problems).toEqual([
      "\t: YAML does not allow a tab at a line's start. Indent with spaces.",
    ]);
    const reserved = read("parts: x.csv\ntitle: @home");
    expect(reserved.problems).toEqual([
      "@home: YAML gives `@` at the start of a value a meaning of its own. Put the value in quotes.",
    ]);
    expect(read(reserved.fixed()).problems).toEqual([]);
    expect(read("parts: x.csv\ntitle: 'Heron # 40").problems).toEqual([
      "'Heron: This quote is opened and never closed. Write another one after the text.",
    ]);
    expect(read("parts: x.csv\ntitle: !kit Heron").problems).toHaveLength(1);
    expect(read("parts: x.csv\n--- # more\ntitle: b").problems).toHaveLength(1);
  });

  test.each([
    ["heights: { K1: 1 mm", "heights: { K1: 1 mm}"],
    ["off-board: [T1, T2  # both", "off-board: [T1, T2]  # both"],
    ["checks: { a: off }}", "checks: { a: off }"],
    ["off-board: [T1]]", "off-board: [T1]"],
    ["figures: { Iq: ratio: 2 }", 'figures: { Iq: "ratio: 2" }'],
  ])("a bracket or colon out of place is one problem, with its fix: %s", (wrong, right) => {
    const { problems, fixed } = read(`parts: x.csv\n${wrong}\nlanguage: en`);
    expect(problems).toHaveLength(1);
    expect(fixed()).toBe(`parts: x.csv\n${right}\nlanguage: en`);
    expect(read(fixed()).problems).toEqual([]);
  });

  test("what YAML has misread is not judged a second time", () => {
    expect(read("parts: x.csv\nheights: [K1").problems).toEqual([
      "[K1: `[` is opened here and never closed. Write `]` after the last entry.",
    ]);
  });

  test("a front matter that is no mapping is reported", () => {
    expect(read("just text").problems).toHaveLength(1);
    expect(read("- a\n- b").problems).toHaveLength(1);
  });
});

describe("hostile front matter", () => {
  test("aliases are refused once and never followed", () => {
    const bomb = Array.from(
      { length: 30 },
      (_, i) =>
        `l${i}: &l${i} [${
          i === 0
            ? "lol"
            : Array(9)
                .fill(`*l${i - 1}`)
                .join(", ")
        }]`,
    ).join("\n");
    const started = performance.now();
    const { frontMatter, problems } = read(`parts: *l29\n${bomb}`);
    expect(performance.now() - started).toBeLessThan(20_000);
    expect(frontMatter.parts).toEqual([]);
    expect(problems.filter((problem) => problem.includes("alias"))).toEqual([
      expect.stringMatching(/^\*l29: /),
    ]);
  });

  test.each([
    ["brackets", "[".repeat(50_000)],
    ["hyphens", "- ".repeat(40_000)],
    ["keys", "? ".repeat(40_000)],
    ["colons in one line", "a: ".repeat(30_000)],
    ["second colons", "a: b: c\n".repeat(11_000)],
    ["a million lines", "a: b\n".repeat(1_000_000)],
  ])("a flood of %s is answered in time", (_, flood) => {
    const started = performance.now();
    const { frontMatter, problems } = read(`parts: x.csv\nz: ${flood}`);
    expect(performance.now() - started).toBeLessThan(20_000);
    expect(frontMatter.parts[0]?.path.value).toBe("x.csv");
    expect(problems.length).toBeGreaterThan(0);
  });

  test("a front matter beyond the limit still makes a guide, and only its list is read", () => {
    const { text, frontMatter, problems } = read(
      `title: a\nparts: x.csv\n${"# filler\n".repeat(20_000)}`,
    );
    expect(isGuide(text)).toBe(true);
    expect(frontMatter.parts[0]!.path.value).toBe("x.csv");
    expect(frontMatter.title).toBeUndefined();
    expect(problems).toEqual([expect.stringContaining("longer than 100,000 characters")]);
  });
});

describe("fences", () => {
  test("are told as remark-frontmatter tells them, for random openings", () => {
    // Outside source: the frontmatter extension of micromark, which knows `---` only.
    const parser = unified().use(remarkParse).use(remarkFrontmatter);
    const line = fc.constantFrom("---", "--- ", "----", " ---", "a: b", "", "# x", "--", "---\t");
    fc.assert(
      fc.property(fc.array(line, { maxLength: 8 }), fc.constantFrom("\n", "\r\n"), (lines, end) => {
        const text = lines.join(end);
        const node = parser.parse(text).children[0];
        const expected = node?.type === "yaml" ? node.position!.end.offset! : undefined;
        const found = readFrontMatter(text);
        expect(found && text.slice(0, found.span.end).trimEnd()).toBe(
          expected === undefined ? undefined : text.slice(0, expected).trimEnd(),
        );
      }),
      { numRuns: 500 },
    );
  });

  test("may close with dots", () => {
    const text = "---\nparts: x.csv\n...\nText\n";
    expect(text.slice(readFrontMatter(text)!.span.end)).toBe("Text\n");
  });

  test("that never close count only with the key parts, and are reported", () => {
    expect(readFrontMatter("---\n\nA thought.\n")).toBeUndefined();
    expect(readFrontMatter("---\ntitle: x\n\nA thought.\n")).toBeUndefined();
    const text = "---\r\ntitle: x\r\nparts: x.csv\r\n\r\n# Guide\r\n";
    const { parts, problems, span } = readFrontMatter(text)!;
    expect(parts[0]!.path.value).toBe("x.csv");
    expect(problems).toHaveLength(1);
    expect(text.slice(span.end)).toBe("\r\n# Guide\r\n");
    const fixed = applyEdits(text, [problems[0]!.suggestion!]);
    expect(fixed).toBe("---\r\ntitle: x\r\nparts: x.csv\r\n---\r\n\r\n# Guide\r\n");
    expect(readFrontMatter(fixed)!.problems).toEqual([]);
  });
});

describe("isGuide", () => {
  test.each([
    ["---\nparts: x.csv\n---\n", true],
    ['---\n"parts": x.csv\n---\n', true],
    ["---\nparts:\n---\n", true],
    ["---\ntitle: x\n---\n", false],
    ["---\ntitle: 'parts: none'\n---\n", false],
    ["---\nmeta:\n  parts: x\n---\n", false],
    ["---\ntitle: |\n  parts: x\n---\n", false],
    ["---\nspare-parts: x\n---\n", false],
    ["# parts: x\n", false],
    ["\n---\nparts: x\n---\n", false],
    ["---\ntitle: x\n---\n\nparts: 5\n---\n", false],
    ["", false],
  ])("%j: %s", (text, expected) => {
    expect(isGuide(text)).toBe(expected);
    expect(readFrontMatter(text)?.keys.has("parts") ?? false).toBe(expected);
  });
});

test("random YAML never throws, and every span lies in the text", () => {
  const word = fc.constantFrom(
    ..."parts pages title supply heights tools spares checks clearance columns K1 4,5 11 mm x.csv".split(
      " ",
    ),
    ..."{ } [ ] : , - ? # & * ! | > ' \" % @ ` --- ... \t é 🔧 ( ) \\".split(" "),
    ": ",
    " ",
    "  ",
    "\n",
    "\r\n",
    "\r",
    "\n  ",
    "*a",
    "&a ",
    "<<: ",
    "\u2028",
    "\uE03A",
  );
  fc.assert(
    fc.property(fc.array(word, { maxLength: 60 }), fc.boolean(), (words, closed) => {
      const text = `---\nparts: x.csv\n${words.join("")}${closed ? "\n---\n" : ""}`;
      const found = readFrontMatter(text)!;
      const spans = [
        found.span,
        ...found.keys.values(),
        ...found.problems.flatMap((p) => [p.span, ...(p.suggestion ? [p.suggestion.span] : [])]),
        ...found.parts.map(({ path }) => path.span),
        ...[...found.pages, ...found.tools, ...found.offBoard].map(({ span }) => span),
        ...[
          ...found.supply,
          ...found.heights,
          ...found.checks,
          ...found.spares,
          ...found.clearance,
        ].flatMap(({ nameSpan, span }) => [nameSpan, span]),
      ];
      for (const { start, end } of spans) {
        expect(start).toBeGreaterThanOrEqual(0);
        expect(end).toBeGreaterThanOrEqual(start);
        expect(end).toBeLessThanOrEqual(text.length);
      }
      expect(isGuide(text)).toBe(found.keys.has("parts"));
    }),
    { numRuns: 3000 },
  );
});
