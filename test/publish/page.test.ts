/** The published page, by what it says: every part once, cautions before their steps, values shown. */
import { HtmlValidate } from "html-validate";
import { beforeAll, describe, expect, test } from "vitest";
import type { GuideState } from "../../server/src/model/guideState.ts";
import type { Part } from "../../server/src/model/parts.ts";
import { type Published, publishFixture, publishSample, seen } from "./published.ts";

const LIST = `--- file: parts.csv
Designator,Quantity,Value,Tolerance,Footprint,Bag
"R1, R2",2,4k7,1 %,R_Axial_DIN0207_L6.3mm_D2.5mm,A
R3,1,10,5 %,R_Axial_DIN0207_L6.3mm_D2.5mm,A
C1,1,100n,,C_Disc_D5.0mm_W2.5mm_P5.00mm,B
D1,1,1N4148,,D_DO-35_SOD27,B
Q1-Q2,6,BC547,,TO-92,B
,4,M3x6,,,C
`;

function guide(body: string, head = ""): string {
  return `---\ntitle: Wren\nparts: parts.csv\n${head}---\n${body}\n${LIST}`;
}

async function pageOf(body: string, head = "") {
  return (await publishFixture(guide(body, head), ["guide"])).page();
}

describe("the sample kits as pages", () => {
  let heron: Published;
  let constructs: Published;
  beforeAll(async () => {
    heron = await publishSample("heron", "heron.md", ["guide"]);
    constructs = await publishSample("constructs", "guide.md", ["guide"]);
  });

  test.each(["heron", "constructs"])("%s is valid HTML", async (name) => {
    const published = name === "heron" ? heron : constructs;
    const validator = new HtmlValidate({
      extends: ["html-validate:recommended"],
      rules: {
        // Style and script are part of the file on purpose; the rest are matters of style.
        "require-sri": "off",
        "no-inline-style": "off",
        "long-title": "off",
        "prefer-native-element": "off",
        "no-implicit-button-type": "error",
        // The tree decides; how a void element or an entity is written does not.
        "no-trailing-whitespace": "off",
      },
    });
    const { results } = await validator.validateString(published.text("guide.html"));
    const told = results.flatMap(({ messages }) =>
      messages.map(({ ruleId, message, line, column }) => `${line}:${column} ${ruleId} ${message}`),
    );
    expect(told).toEqual([]);
  });

  test("every step of the guide is there once, by its number, with a box of its own", () => {
    for (const { guide, page } of [heron, constructs]) {
      const $ = page();
      const numbers = guide.stages.flatMap(({ steps }) => steps.map(({ number }) => number));
      const labels = $("label.tick")
        .toArray()
        .map((one) => $(one).find(".number").text());
      expect(labels).toEqual(numbers);
      const keys = $("input[data-step]")
        .toArray()
        .map((one) => $(one).attr("data-step"));
      expect(new Set(keys).size).toBe(numbers.length);
    }
  });

  test("every part that is fitted stands in one table, every part left empty in none", () => {
    for (const { guide, page } of [heron, constructs]) {
      const $ = page();
      const listed = $("table.parts .ref")
        .toArray()
        .flatMap((one) => namesIn($(one).text()));
      const expected = guide.parts.filter((part) =>
        guide.uses(part).some(({ role }) => ["fit", "place", "insert", "bridge"].includes(role)),
      );
      const counts = new Map<string, number>();
      for (const name of listed) counts.set(name, (counts.get(name) ?? 0) + 1);
      const shown = (part: Part) =>
        isShared(part, guide) ? `${part.board}/${part.name}` : part.name;
      const once = new Map(expected.map((part) => [shown(part), 1]));
      expect(Object.fromEntries(counts)).toEqual({
        ...Object.fromEntries(counts),
        ...Object.fromEntries(once),
      });
      for (const part of guide.parts) {
        if (!part.fitted)
          expect([part.name, counts.get(shown(part))]).toEqual([part.name, undefined]);
      }
    }
  });

  test("every hazard note keeps its place among the steps", () => {
    for (const { guide, page } of [heron, constructs]) {
      const expected: string[] = [];
      for (const piece of guide.pieces) {
        for (const fact of piece.facts.facts) {
          if (fact.kind === "note") expected.push(`${fact.signal} ${fact.hazard}`.trim());
          const step = piece.steps.find((one) => one.fact === fact);
          if (step) expected.push(step.number);
        }
      }
      const $ = page();
      const shown = $("label.tick, .note")
        .toArray()
        .map((one) => {
          if (!$(one).hasClass("note")) return $(one).find(".number").text();
          const signal = $(one).find(".signal strong").text();
          return `${signal} ${$(one).find(".hazard").text()}`.trim();
        });
      // An alert names no hazard; the page takes it from its text.
      const isAlert = (index: number) =>
        !expected[index]?.includes(" ") && /[A-Z]/.test(expected[index]!);
      const same = shown.map((one, index) => (isAlert(index) ? one.split(" ", 1)[0] : one));
      expect(same).toEqual(expected);
    }
  });

  test("nothing of the dialect's own signs is left", () => {
    const text = seen(heron.page()("main").text());
    expect(text).not.toMatch(/\[(?:R|C|tool|own|see|make|match|place|later|#)/);
    expect(text).not.toMatch(/\{[^}]*\}/);
  });

  test("references lead to the step that they name", () => {
    const $ = heron.page();
    const link = $('.step a[href^="#step-"]').first();
    expect($(link.attr("href")!).length).toBe(1);
    for (const one of $('a[href^="#"]').toArray()) {
      const target = $(one).attr("href")!;
      expect([target, $(`[id="${target.slice(1)}"]`).length]).toEqual([target, 1]);
    }
  });

  test("the page asks for nothing from outside", () => {
    const $ = heron.page();
    expect($("link, iframe, script[src], object, embed").length).toBe(0);
    for (const image of $("img").toArray()) expect($(image).attr("src")).toMatch(/^data:/);
  });
});

/** Several boards have a part of that name. */
function isShared({ name }: Part, { parts }: GuideState): boolean {
  return parts.filter((other) => other.name === name).length > 1;
}

/** `R1–R3` are R1, R2, R3. */
function namesIn(name: string): string[] {
  const range = /^((?:.*\/)?[A-Z]+)(\d+)–[A-Z]+(\d+)$/.exec(name);
  if (!range) return [name];
  const [from, to] = [Number(range[2]), Number(range[3])];
  return Array.from({ length: to - from + 1 }, (_, index) => `${range[1]}${from + index}`);
}

describe("what a page shows", () => {
  test("marks as their items, sets as the parts that they mean", async () => {
    const $ = await pageOf(
      "## A\n\n1. Fit [R1, R2 = 4k7] and [rest of R].\n2. Put [4 × M3x6] aside. [tool: vice] [#here]\n3. See [see: here].",
    );
    expect(seen($("#step-1-1 p").text())).toBe("Fit R1, R2 = 4k7 and R3.");
    expect(seen($("#step-1-2 p").text())).toBe("Put 4 × M3x6 aside. (vice)");
    expect(seen($("#step-1-3 p").text())).toBe("See 1.2.");
  });

  test("marks between sentences in parentheses, those of a sentence as they are", async () => {
    const $ = await pageOf(
      "## A\n\n1. [R1] goes first. [tool: vice] Then stop.\n2. Fit it flat!\n   [R2] [C1] It gets warm.\n3. It is „so“ [R3], and so on. [#here]\n4. Fit (first) [D1].",
    );
    const step = (number: number) => seen($(`#step-1-${number} p`).text());
    expect(step(1)).toBe("R1 goes first. (vice) Then stop.");
    expect(step(2)).toBe("Fit it flat! (R2) (C1) It gets warm.");
    expect(step(3)).toBe("It is „so“ R3, and so on.");
    expect(step(4)).toBe("Fit (first) D1.");
  });

  test("marks and figures that touch each other apart", async () => {
    const $ = await pageOf("## A\n\n1. Fit [R1 = 4k7][R2] at {U = 5 V}{I = 2 A}.");
    expect(seen($("#step-1-1 p").text())).toBe("Fit R1 = 4k7 R2 at 5 V 2 A.");
  });

  test("alerts that warn of nothing as asides, those that do as hazard notes", async () => {
    const $ = await pageOf(
      "## A\n\n> [!NOTE]\n> Take *care*.\n\n> [!TIP]  \n> Two words.\n\n> [!WARNING]\n> *Hot* parts.\n\n> A quote.\n\n1. Fit [R1].",
    );
    const quotes = $("blockquote").toArray();
    expect(quotes.map((one) => [$(one).attr("class"), seen($(one).text())])).toEqual([
      ["aside", "Take care."],
      ["aside", "Two words."],
      [undefined, "A quote."],
    ]);
    expect(seen($(".note.warning p").last().text())).toBe("Hot parts.");
  });

  test("links to its own headings, wherever the page stands", async () => {
    const $ = await pageOf("See [the board](#the-board).\n\n## The board\n\n1. Fit [R1].");
    const target = $("p a").first().attr("href")!;
    expect(seen($(target).text())).toBe("1 The board");
  });

  test("columns of a table on the side that the author says", async () => {
    const $ = await pageOf("## A\n\n1. Fit [R1].\n\n   | a | b |\n   |:--|--:|\n   | 1 | 2 |");
    const cells = $("#step-1-1 table th, #step-1-1 table td").toArray();
    expect(cells.map((cell) => $(cell).attr("class"))).toEqual(["left", "right", "left", "right"]);
  });

  test("names on paper as texts that end neither style nor text", async () => {
    const $ = await pageOf('## The "LED" < 2 V\n\n1. Fit [R1].');
    expect($(".running").text()).toBe('1 The "LED" < 2 V');
    const titled = `---\ntitle: '"LED" < 2 V'\nparts: parts.csv\n---\n## A\n\n1. Fit [R1].\n${LIST}`;
    const style = (await publishFixture(titled, ["guide"])).page()("style").text();
    expect(style).toContain('content: "\\22 LED\\22  \\3c  2 V"');
  });

  test("figures as values, with their range on demand", async () => {
    const $ = await pageOf(
      "## A\n\n1. Set {VCC}, so {P = VCC^2 / 10 Ω}. Fit [R1].",
      "supply: { VCC: 10 V ± 10 % }\n",
    );
    // 10 V squared over 10 Ω is 10 W; at 9 V it is 8.1 W, at 11 V 12.1 W.
    expect(seen($("#step-1-1 button.figure").eq(1).text())).toBe("10 W");
    expect(seen($("#step-1-1 .details").eq(1).text())).toContain("8.1 W … 12.1 W");
    // A full stop does not begin a line; what the figure is made of is as broad as it likes.
    expect(seen($("#step-1-1 .kept").last().text())).toMatch(/^10 W.*\.$/);
    expect($("#step-1-1").text()).toContain(". Fit R1.");
  });

  test("a figure that is recalled as its author states it", async () => {
    const $ = await pageOf(
      "## A\n\n1. Fit [R1]. It takes {P(R1) = VCC^2 / 240 Ω = 0.42 W}.\n2. Feel {P(R1)}, or {P(R1) / 2}.",
      "supply: { VCC: 10 V }\n",
    );
    // 100 V² over 240 Ω is 0.4167 W.
    const shown = $("button.figure").toArray();
    expect(shown.map((one) => seen($(one).text()))).toEqual(["0.42 W", "0.42 W", "0.208 W"]);
  });

  test("readings as fields with their limits in the unit that the author reads in", async () => {
    const $ = await pageOf(
      "## A\n\n1. Fit [R1]. Expect {read V(TP1) = 12 V ± 5 %}.\n2. Then {read I(TP1) < 0.05 A}.\n3. Then {read I(TP2) < 10 V / 200 Ω}.",
    );
    const [first, second, third] = $(".reading").toArray();
    expect($(first!).attr("data-low")).toBe("11.4");
    expect($(first!).attr("data-high")).toBe("12.6");
    expect($(second!).attr("data-low")).toBeUndefined();
    expect($(second!).attr("data-high")).toBe("0.05");
    expect($(second!).find(".unit").text()).toBe("A");
    expect(seen($(second!).text())).toContain("below 0.05 A");
    // Where it is computed, the unit that suits it.
    expect($(third!).attr("data-high")).toBe("50");
    expect($(third!).find(".unit").text()).toBe("mA");
  });

  test("no line ends between a number and its unit, in the text as in the tools", async () => {
    const $ = await pageOf(
      "## A\n\n1. Fit [R1] 3 mm high at 15 V a.c. [tool: bit 3.4 mm] 2 of 3 V1.",
    );
    const text = $("#step-1-1").text();
    expect(text).toContain("3\u00a0mm high at 15\u00a0V a.c.");
    expect(text).toContain("2 of 3 V1");
    expect($("#step-1-1 .thing").text()).toBe("bit 3.4\u00a0mm");
    expect($(".needs li").text()).toContain("bit 3.4\u00a0mm");
    const cells = await pageOf("| Wire |\n|---|\n| red, 0.75 mm² long |\n");
    expect(cells("td .kept").text()).toBe("0.75 mm²");
    expect(cells("td").text()).toBe("red, 0.75 mm² long");
  });

  test("of a part without marks what the list's description says, and the package where it tells", async () => {
    const list =
      "Designator,Value,Package,Description\nJ1,5.5 mm,panel,power socket\nU1,LM358,DIP-8,amplifier\nF1,2 A,Fuse_5x20,\n";
    const text = `---\nparts: parts.csv\n---\n## A\n\n1. Fit [J1, U1, F1].\n--- file: parts.csv\n${list}`;
    const $ = (await publishFixture(text, ["guide"])).page();
    const looks = $(".parts td.look").toArray();
    expect(looks.map((look) => $(look).text())).toEqual([
      "power socket",
      expect.stringMatching(/notch.*DIP-8$/),
      "Fuse",
    ]);
  });

  test("readings whose limit cannot be read say so", async () => {
    const $ = await pageOf("## A\n\n1. Fit [R1]. Expect {read Rin > 10 MO}.");
    expect($(".limits.unknown").text()).toMatch(/^> 10 MO – this limit cannot be read/);
  });

  test("bands, printed marks and which way round", async () => {
    const $ = await pageOf("## A\n\n1. Fit [R1, R2, R3, C1, D1].");
    const row = (name: string) =>
      $("table.parts tr").filter((_, one) => $(one).find(".ref").first().text() === name);
    // IEC 60062: 4.7 kΩ 1 % in three figures, 10 Ω 5 % in two; EIA-198: 100 nF is 10 and four noughts in pF.
    expect(row("R1").find("svg").attr("aria-label")).toBe("bands yellow violet black brown brown");
    expect(row("R3").find("svg").attr("aria-label")).toBe("bands brown black black gold");
    expect(row("C1").text()).toContain("printed 104");
    expect(row("D1").text()).toContain("ring is the cathode");
    expect(row("D1").find("td").last().text()).toBe("B");
  });

  test("what makers print on small capacitors, nothing on a trimmer, and bands on a lying choke", async () => {
    const text = `---
parts: parts.csv
---
## A

1. Fit [C1, C2, L1].
--- file: parts.csv
Designator,Quantity,Value,Tolerance,Footprint,Description
C1,1,12p,5 %,C_Disc_D5.0mm,ceramic
C2,1,30p trimmer,,C_Trimmer_D7.5mm,film trimmer
L1,1,1mH,10 %,L_Axial_L9.5mm,choke
`;
    const $ = (await publishFixture(text, ["guide"])).page();
    const look = (row: number) => $("table.parts tbody tr").eq(row).find(".look");
    expect(look(0).text()).toBe("printed 120 / 12");
    expect(look(1).text()).toBe("film trimmer");
    expect(look(2).find("svg").attr("aria-label")).toBe("bands brown black red silver");
  });

  test("the name of each stage for the head of its pages, hidden from who hears the page", async () => {
    const $ = await pageOf(
      "## Low <b>parts</b>\n\n1. Fit [R1].\n\n## Notes\n\nNone.\n\n## Tall\n\n1. Fit [R2].",
    );
    const heads = $(".steps > .running:first-child");
    expect(heads.toArray().map((one) => $(one).text())).toEqual(["1 Low parts", "2 Tall"]);
    expect(heads.attr("aria-hidden")).toBe("true");
  });

  test("rows, bullets and headings that are steps", async () => {
    const $ = await pageOf(
      "## A\n\n### Resistors: [R1]\n\nFlush to the board.\n\n| Fit | |\n|---|---|\n| [R2] | x |\n\n- now [R3]\n- rest",
    );
    expect(seen($("#step-1-1 h3").text())).toBe("Resistors: R1");
    expect(seen($("#step-1-1").text())).toContain("Flush to the board.");
    expect($("#step-1-2").closest("td").hasClass("stepcell")).toBe(true);
    expect(seen($("#step-1-3").closest("li").text())).toContain("now R3");
  });

  test("a sheet for matched sets with a field for each part supplied", async () => {
    const $ = await pageOf("## A\n\n1. Pick a pair. [match: Q1+Q2]\n2. Fit it. [Q1+Q2]");
    expect($(".worksheet input").length).toBe(6);
    expect($(".worksheet").attr("data-sets")).toBe('[["Q1","Q2"]]');
  });

  test("that it was published in spite of errors", async () => {
    const text = `${guide("## A\n\n1. Fit [R1].")}`;
    const { fixture } = await import("../fixture.ts");
    const { publishFiles } = await import("./published.ts");
    const forced = await publishFiles(fixture(text).files, "guide.md", ["guide"], { errors: 3 });
    expect(forced.page()(".head .forced").text()).toContain("3");
    expect((await publishFixture(text, ["guide"])).page()(".head .forced").length).toBe(0);
  });

  test("words of the guide's language", async () => {
    const $ = await pageOf("## A\n\n1. Löte [R1] ein.", "language: de\n");
    expect($("html").attr("lang")).toBe("de");
    expect($(".stagebar").text()).toContain("1 Schritt");
    expect($("table.parts svg").attr("aria-label")).toBe("Ringe gelb violett schwarz braun braun");
  });
});

test("the same guide gives the same bytes", async () => {
  const [one, other] = await Promise.all(
    [1, 2].map(() => publishSample("heron", "heron.md", ["guide"])),
  );
  expect(one!.text("guide.html") === other!.text("guide.html")).toBe(true);
});

test("a page is in the language of its guide, words for screen readers included", async () => {
  const page = (await publishSample("plover", "plover.de.md", ["guide"])).page();
  page("script, style").remove();
  const labels = page("[aria-label], [alt], [title]")
    .toArray()
    .flatMap((one) => ["aria-label", "alt", "title"].map((name) => page(one).attr(name) ?? ""));
  const words = [page("body").text(), ...labels].join("\n").match(/\p{L}+/gu)!;
  // Words that no German text on building has, and no name of a figure.
  const english =
    /^(?:the|and|of|for|with|what|you|step|steps?|parts?|tools?|value|hot|fuse|screw|board|case|wire|red|black|panel|terminal)$/i;
  expect([...new Set(words.filter((word) => english.test(word)))]).toEqual([]);
  expect(page(".sign title").first().text()).toBe("ISO 7010-W017");
});

test("numbers have the decimal comma of the guide's language", async () => {
  const page = (await publishSample("plover", "plover.de.md", ["guide"])).page();
  const shown = page(".figure, .details, .limits, .stagebar, table.parts td.right, table.parts td")
    .not(":has(.ref)")
    .toArray()
    .map((element) => seen(page(element).text()));
  const numbers = shown.filter((text) => /\d[.,]\d/.test(text));
  expect(numbers.length).toBeGreaterThan(10);
  // Formulas and names of parts stand as they are written.
  expect(
    numbers.filter((text) => /^[^=A-Z]*\d\.\d+\s?(?:mm|[mkM]?[VAWΩ]|[nµp]F)/.test(text)),
  ).toEqual([]);
  expect(shown).toContain("von 1,1875 V bis 1,3125 V");
});
