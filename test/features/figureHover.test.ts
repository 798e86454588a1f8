/** What pointing at a figure shows, and the hints behind formulas. */
import { describe, expect, test } from "vitest";
import { figureHints } from "../../server/src/features/figure/hints.ts";
import { hoverInGuide } from "../../server/src/features/hover.ts";
import { guideOf } from "../model/guides.ts";

const LIST = "Designator,Value,Tolerance\nR1,10k,1 %\nR2,4k7,\n";
const HEAD = "supply: { VCC: 13.8 V ± 10 % }\nfigures: { Iq: 45 mA ± 10 %, P(R1): Iq^2 * R1 }\n";

/** Paragraphs of the hover at the first `|` of the body or the front matter. */
function hover(body: string, head = HEAD): readonly string[] {
  const cursor = (text: string) => text.replace("|", "");
  const guide = guideOf(cursor(body), LIST, cursor(head));
  const whole = `---\nparts: p.csv\n${head}---\n\n${body}`;
  const found = hoverInGuide(guide, "file:///g.md", whole.indexOf("|"));
  return (found?.markdown ?? "").replaceAll("\\", "").replaceAll("\u00a0", " ").split("\n\n");
}

describe("pointing at a figure shows", () => {
  test("value, worst case, root sum square, the formula with numbers, and where they come from", () => {
    expect(hover("1. {|P = VCC * Iq}")).toEqual([
      "**P** = 0.621 W",
      "Worst case 0.503 W … 0.752 W; root sum square 0.533 W … 0.709 W.",
      "`VCC * Iq` = `13.8 V * 45 mA`",
      "- VCC: 13.8 V (12.42 V … 15.18 V), from the [front matter](file:///g.md#L3)\n" +
        "- Iq: 45 mA (40.5 mA … 49.5 mA), from the [front matter](file:///g.md#L4)",
    ]);
  });

  test("brackets where a number is raised, and parts with their line", () => {
    const shown = hover("1. |{Iq^2 * R1}");
    expect(shown).toContain("`Iq^2 * R1` = `(45 mA)^2 * 10 kΩ`");
    expect(shown.at(-1)).toContain("- R1: 10 kΩ ± 1 %, listed in [line 2](file:///p.csv#L2)");
  });

  test("what a name in it means", () => {
    expect(hover("1. {2 * V|CC}")[0]).toBe("**VCC** = 13.8 V");
    expect(hover("1. {2 * P(R|1)}")[0]).toBe("**P(R1)** = 20.3 W, a power");
    expect(hover("1. {2 * R|2}")[0]).toMatch(/^\*\*R2\*\* 4k7/);
    expect(hover("1. {coilInduc|tance(12; 10 mm; 15 mm)}")[0]).toContain("Inductance of a single");
  });

  test("what a function means inside another, behind a sign, too", () => {
    const inner = "coilInduc|tance(12; 10 mm; 15 mm) / 1 H";
    expect(hover(`1. {-max(2; ${inner})}`)[0]).toContain("Inductance of a single");
  });

  test("a dozen names at most, each once, and where they stand outside the steps", () => {
    const names = Array.from({ length: 14 }, (_, i) => `x${String.fromCharCode(97 + i)}`);
    const defined = names.map((name, i) => `{${name} = ${i} V}`).join(" ");
    const lines = hover(`${defined}\n\n1. |{${names.join(" + ")} + xa}`)
      .at(-1)!
      .split("\n");
    expect(lines).toHaveLength(13);
    expect(lines[0]).toBe("- xa: 0 V, defined in [line 7](file:///g.md#L7)");
    expect(lines.at(-1)).toBe("- … and 2 more");
  });

  test("where a stated value is defined", () => {
    expect(hover("## A\n\n1. {x = 2 V * 3}\n2. Then {|x = 6 V}.").at(-1)).toBe(
      "x is defined in [step 1.1](file:///g.md#L9).",
    );
  });

  test("why it has no value", () => {
    expect(hover("1. {|1 V / 0}")).toEqual([
      "**1 V / 0** has no value: This divides by zero, which has no result.",
    ]);
  });

  test("what a reading expects", () => {
    expect(hover("1. {read| V(TP1) < 50 mV}")[0]).toBe("**V(TP1)** reads below 50 mV, a voltage");
    expect(hover("1. {read| V(TP1) > 10 V}")[0]).toBe("**V(TP1)** reads above 10 V, a voltage");
    expect(hover("1. {read| V(TP1) = 5 V ± 10 %}")[0]).toContain("reads 4.5 V … 5.5 V");
  });

  test("on a rail, the currents and powers declared on it", () => {
    const body = "1. {I(VCC, R1) = 5 mA ± 1 mA} {I(VCC, R2) = 2 mA} {P(VCC) = VCC * 7 mA}";
    const lines = hover(body, HEAD.replace("VCC", "V|CC")).at(-1)!;
    expect(lines).toBe(
      "- Currents on it: 7 mA (6 mA … 8 mA), from I(VCC, R1), I(VCC, R2)\n" +
        "- P(VCC): 96.6 mW (86.94 mW … 106.26 mW)",
    );
  });

  test("in the front matter too", () => {
    expect(hover("1. Text.", HEAD.replace("Iq^2", "I|q^2"))[0]).toBe("**Iq** = 45 mA");
    expect(hover("1. Text.", HEAD.replace("P(R1)", "P|(R1)"))[0]).toBe(
      "**P(R1)** = 20.3 W, a power",
    );
  });
});

describe("pointing at a figure converts", () => {
  // NIST SP 811 appendix B: 0.5 N·m is 5.1 kgf·cm and 4.43 lbf·in; an inch is 25.4 mm; ASTM B258.
  test.each([
    ["0.5 N·m", "= 5.1 kgf·cm = 4.43 lbf·in"],
    ["7 lbf·in", "= 8.06 kgf·cm = 7 lbf·in"],
    ["25.4 mm", "= 1 in"],
    ["AWG 24", "= 20.1 mil = AWG 24"],
    ["AWG 2/0", "= 0.365 in = AWG 2/0"],
    ["10.4 mm", "= 0.409 in = AWG 3/0"],
    ["25 °C", "= 77 °F"],
    ["5 N", "= 0.51 kgf = 1.12 lbf"],
    ["3600 C", "= 1 Ah"],
  ])("%s", (text, shown) => {
    expect(hover(`1. {|${text}}`)).toContain(shown);
  });

  test("nothing where the trade has one unit only", () => {
    expect(hover("1. {|5 V}")).toEqual(["**5 V** = 5 V"]);
  });
});

describe("hints", () => {
  const hints = (body: string, head = HEAD) => {
    const guide = guideOf(body, LIST, head);
    const text = guide.pages[0]!.text.toString();
    return figureHints(guide, "file:///g.md", { start: 0, end: text.length }).map(
      ({ at, text: hint }) => text.slice(0, at).split("\n").at(-1) + hint.replaceAll("\u00a0", " "),
    );
  };

  test("stand behind formulas without a stated value", () => {
    expect(
      hints(
        "1. {VCC * Iq} {P2 = 2 * P(R1)}\n2. {VCC * Iq = 0.6 W} {5 V} {read V(TP1) < VCC} {1/0}",
        "",
      ),
    ).toEqual([]);
    expect(hints("1. {VCC * Iq}\n2. {P2 = 2 * P(R1)} {VCC * Iq = 0.6 W} {5 V} {1 / 0}")).toEqual([
      "figures: { Iq: 45 mA ± 10 %, P(R1): Iq^2 * R1 = 20.3 W",
      "1. {VCC * Iq = 0.621 W",
      "2. {P2 = 2 * P(R1) = 40.5 W",
    ]);
  });

  test("are given for the stretch that is asked for", () => {
    const guide = guideOf("1. {2 * 3 V}\n2. {2 * 4 V}", LIST);
    const text = guide.pages[0]!.text.toString();
    const start = text.indexOf("2. ");
    const asked = figureHints(guide, "file:///g.md", { start, end: text.length });
    expect(asked.map((one) => one.text)).toEqual([" = 8\u00a0V"]);
  });
});
