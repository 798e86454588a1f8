import { describe, expect, test } from "vitest";
import { readSignal } from "../../server/src/syntax/signalWords.ts";
import guideGrammar from "../../syntaxes/kitquill-guide.tmLanguage.json" with { type: "json" };
import { coloured, scopesOf } from "./tokens.ts";

const DESIGNATOR = "entity.name.tag.designator";

describe("part marks", () => {
  test("show designators, ranges and carried prefixes", () => {
    expect(coloured("1. Fit [R1–R4, 7, U3A–U3D] flat.")).toEqual([
      `R1 -> ${DESIGNATOR}`,
      "– -> keyword.operator.range",
      `R4 -> ${DESIGNATOR}`,
      `7 -> ${DESIGNATOR}`,
      `U3A -> ${DESIGNATOR}`,
      "– -> keyword.operator.range",
      `U3D -> ${DESIGNATOR}`,
    ]);
  });

  test.each(["to", "through", "bis", "à", "t/m", "..", "…", "—", "-"])(
    "know the range word or sign %s",
    (dash) => {
      expect(coloured(`Fit [C1 ${dash} C4].`)).toEqual([
        `C1 -> ${DESIGNATOR}`,
        `${dash} -> keyword.operator.range`,
        `C4 -> ${DESIGNATOR}`,
      ]);
    },
  );

  test("show sets, groups, choices, boards and stated values", () => {
    expect(
      coloured("[all R except R16], [rest of D], [Q1+Q2], [D1 or D2], [relay/R1 = 4k7]"),
    ).toEqual([
      "all -> keyword.other.set",
      "R -> entity.name.type.class",
      "except -> keyword.other.set",
      `R16 -> ${DESIGNATOR}`,
      "rest of -> keyword.other.set",
      "D -> entity.name.type.class",
      `Q1 -> ${DESIGNATOR}`,
      "+ -> keyword.operator.group",
      `Q2 -> ${DESIGNATOR}`,
      `D1 -> ${DESIGNATOR}`,
      "or -> keyword.operator.choice",
      `D2 -> ${DESIGNATOR}`,
      "relay -> entity.name.namespace.board",
      `R1 -> ${DESIGNATOR}`,
      "= -> keyword.operator.assignment",
      "4k7 -> constant.numeric.stated",
    ]);
  });

  test("show amounts with their key", () => {
    expect(coloured("Use [6 × M3x10] and [820 mm × CuL 1.0].")).toEqual([
      "6 -> constant.numeric.amount",
      "× -> keyword.operator.amount",
      "M3x10 -> string.unquoted.key",
      "820 -> constant.numeric.amount",
      "mm -> keyword.other.unit",
      "× -> keyword.operator.amount",
      "CuL 1.0 -> string.unquoted.key",
    ]);
  });

  test.each(["later", "place", "insert", "empty", "bridge", "make", "match", "try", "remove"])(
    "show the role %s and its parts",
    (role) => {
      expect(coloured(`1. Then [${role}: K2].`)).toEqual([
        `${role} -> keyword.control.role.${role}`,
        `K2 -> ${DESIGNATOR}`,
      ]);
    },
  );

  test.each(["tool", "own", "see"])("show the role %s with free text", (role) => {
    expect(coloured(`1. With [${role}: hex key 2.5 mm].`)).toEqual([
      `${role} -> keyword.control.role.${role}`,
      "hex key 2.5 mm -> string.unquoted.mark",
    ]);
  });

  test("show labels", () => {
    expect(coloured("1. Switch on. [#first-power]")).toEqual(["first-power -> entity.name.label"]);
  });

  test.each([
    ["a heading", "## Mount [R1]"],
    ["a heading's start", "### [R1]"],
    ["a paragraph's start", "[R1]: solder it flat"],
    ["a bullet", "- [R1] (1k)"],
    ["a sub-step", "1. Board\n   1. Fit [R1]"],
    ["a list item's second line", "1. Fit\n   [R1]"],
    ["a table cell", "| part | job |\n| - | - |\n| [R1] | flat |"],
    ["a quote", "> Fit [R1]"],
    ["bold text", "**Fit [R1]**"],
    ["a task", "- [ ] [R1] flat"],
  ])("are seen in %s", (_, markdown) => {
    expect(coloured(markdown)).toEqual([`R1 -> ${DESIGNATOR}`]);
  });

  test.each([
    ["inline code", "Write `[R1]`."],
    ["a code fence", "```\n[R1] {VCC = 3 V}\n```"],
    ["indented code", "Text\n\n    [R1]"],
    ["a link's text", "See [R1](r1.md)."],
    ["a link's target", "See [this](a[R1].md)."],
    ["an image", "![R1](r1.png)"],
    ["an image without a link", "![R1]"],
    ["an attribute", 'See <b title="[R1]">this</b>.'],
    ["a comment", "<!-- [R1] -->"],
    ["front matter", "---\noff-board: [T1, R1]\n---"],
    ["a link definition", "[R1]: r1.md"],
    ["an escaped bracket", "\\[R1]"],
    ["a footnote", "Text[^1]"],
    ["a task box", "- [x] done"],
    ["a bare number", "As in [1] and [2, 3]."],
    ["a bare word", "Press [RESET]."],
    ["words", "It [sic] works."],
  ])("are not seen in %s", (_, markdown) => {
    expect(coloured(markdown)).toEqual([]);
  });

  test("do not disturb Markdown's own colours around them", () => {
    const markdown = "**Fit [R1]** and `code` [link](a.md)";
    expect(scopesOf(markdown, "R1")).toContain("markup.bold.markdown");
    expect(scopesOf(markdown, "code")).toContain("markup.inline.raw.string.markdown");
    expect(scopesOf(markdown, "link")).toContain("string.other.link.title.markdown");
  });
});

describe("figures", () => {
  test("show names, numbers, units and operators", () => {
    expect(coloured("Set {VCC = 13.8 V ± 10 %}.")).toEqual([
      "VCC -> variable.other.figure",
      "= -> keyword.operator.assignment",
      "13.8 -> constant.numeric",
      "V -> keyword.other.unit",
      "± -> keyword.operator.arithmetic",
      "10 -> constant.numeric",
      "% -> keyword.other.unit",
    ]);
  });

  test("show what a quantity belongs to", () => {
    expect(coloured("{P(R50) = Iq^2 * R50}")).toEqual([
      "P -> entity.name.function.figure",
      `R50 -> ${DESIGNATOR}`,
      "= -> keyword.operator.assignment",
      "Iq -> variable.other.figure",
      "^ -> keyword.operator.arithmetic",
      "2 -> constant.numeric",
      "* -> keyword.operator.arithmetic",
      `R50 -> ${DESIGNATOR}`,
    ]);
  });

  test("show readings with their limits", () => {
    expect(coloured("{read V(TP3) < 50 mV}")).toEqual([
      "read -> keyword.control.read",
      "V -> entity.name.function.figure",
      `TP3 -> ${DESIGNATOR}`,
      "< -> keyword.operator.arithmetic",
      "50 -> constant.numeric",
      "mV -> keyword.other.unit",
    ]);
  });

  test.each([
    "V",
    "mA",
    "kΩ",
    "MΩ",
    "ohm",
    "µF",
    "uF",
    "nH",
    "MHz",
    "N·m",
    "cN·m",
    "Nm",
    "kgf·cm",
    "lbf·in",
    "K/W",
    "°C",
    "mm",
    "mil",
    "in",
    "W",
    "%",
  ])("know the unit %s", (unit) => {
    expect(coloured(`{x = 2.5 ${unit}}`)).toContain(`${unit} -> keyword.other.unit`);
  });

  test("bind tighter than emphasis", () => {
    expect(coloured("{2*V*I}")).toContain("V -> variable.other.figure");
    expect(scopesOf("{2*V*I}", "V")).not.toContain("markup.italic.markdown");
  });

  test.each([
    "{{x = 1}}",
    "{% if a = 1 %}",
    "{# a = 1 #}",
    "{.wide}",
    "{: .A = 1}",
    // biome-ignore lint/suspicious/noTemplateCurlyInString: this is what other tools write
    "${x = 1}",
    "{name}",
    "{}",
    "`{a = 1}`",
    "\\{a = 1}",
  ])("are not seen in %s", (markdown) => {
    expect(coloured(`Text ${markdown} text`)).toEqual([]);
  });
});

describe("hazard notes", () => {
  test("show signal word and hazard, in the colours that they have once the server answers", () => {
    const note = "> **DANGER: electric shock.** Do not touch.";
    expect(coloured(note)).toEqual([
      "DANGER -> keyword.other.signal.danger",
      "electric shock. -> entity.name.section.hazard",
    ]);
    expect(scopesOf(note, "DANGER")).toContain("markup.bold.markdown");
    // Themes have colours of their own for such words, which the server's would take away again, and
    // which are too pale in those of high contrast.
    for (const word of ["DANGER", "WARNING", "CAUTION", "NOTICE"]) {
      const scopes = scopesOf(`> **${word}: fumes.**`, word);
      expect(scopes.filter((scope) => scope.startsWith("token."))).toEqual([]);
    }
  });

  test("know the same signal words as the checker, at the same rank", () => {
    const patterns = guideGrammar.repository.hazard.patterns;
    const words = patterns.flatMap(
      ({ match }) => /\\s\*\(([\p{Lu}| ]+)\)/u.exec(match)?.[1]?.split("|") ?? [],
    );
    expect(words).toHaveLength(20);
    for (const word of words) {
      const signal = readSignal(`${word}: x`)?.signal.toLowerCase();
      expect(coloured(`> **${word}: x.**`)).toContain(`${word} -> keyword.other.signal.${signal}`);
    }
  });

  test("are seen in GitHub's alerts that warn", () => {
    expect(coloured("> [!WARNING]\n> Hot.")).toEqual(["WARNING -> keyword.other.signal.alert"]);
    expect(coloured("> [!NOTE]\n> Nice.")).toEqual([]);
  });

  test("are not seen outside quotes", () => {
    expect(coloured("**WARNING: hot.**")).toEqual([]);
  });
});

describe("comments for the checker", () => {
  test("show what is allowed and why", () => {
    expect(coloured("<!-- allow height-order: the LEDs sit level with Q5 -->")).toEqual([
      "allow -> keyword.control.directive.allow",
      "height-order -> support.constant.check",
      "the LEDs sit level with Q5 -> string.unquoted.reason",
    ]);
  });

  test("are seen in a list item and after text", () => {
    expect(coloured("1. Fit\n   <!-- board relay -->")).toEqual([
      "board -> keyword.control.directive.board",
      "relay -> entity.name.namespace.board",
    ]);
    expect(coloured("1. Fit <!-- takes 1 h 30 min -->")).toEqual([
      "takes -> keyword.control.directive.takes",
      "1 h 30 min -> constant.numeric.time",
    ]);
    expect(coloured("Now <!-- power on --> wait")).toEqual([
      "power on -> keyword.control.directive",
    ]);
  });

  test("leave other comments alone", () => {
    expect(coloured("<!-- remember to allow time: an hour -->")).toEqual([]);
  });

  test("stay comments", () => {
    expect(scopesOf("<!-- parts table -->", "parts table")).toContain("comment.block.html");
  });
});
