import { describe, expect, test } from "vitest";
import { shopNote } from "../../server/src/features/figure/shopNotes.ts";
import { hoverInGuide } from "../../server/src/features/hover.ts";
import { guideOf } from "../model/guides.ts";

const LIST = `Designator,Quantity,Value,Power,Voltage,Package,Description
R1,1,4k7,0.25 W,,,metal film
Q1,1,IRF510,,100 V,TO-220,
,1,M3x10,,,,"pan head screw, steel 4.6"
`;

function note(figure: string, marks = ""): string {
  const guide = guideOf(`## A\n\n1. Do {${figure}}. ${marks}\n`, LIST);
  return shopNote(guide.figures.all()[0]!, guide).replaceAll("\u00a0", " ");
}

describe("The hover on a figure of the shop", () => {
  // T = 0.2 d F (Shigley): 0.55 N·m on M3 clamp with 917 N, 81 % of the proof load of class 4.6.
  // STMicroelectronics TN1225: a TO-220 stands 0.7 N·m.
  test("tells the clamp force of a torque and the margin", () => {
    expect(note("torque(Q1) = 0.55 N·m", "[Q1, 1 × M3x10]")).toBe(
      "M3x10 clamps with about 917 N, dry. That is 81 % of its proof load (class 4.6). 81 % of what M3x10 of class 4.6 stands, 0.679 N·m (proof load, ISO 898-1, dry thread).",
    );
    expect(note("torque(Q1) = 0.55 N·m")).toBe(
      "79 % of what a TO-220 stands, 0.7 N·m (STMicroelectronics TN1225).",
    );
  });

  // ISO 273: M3 3.2, 3.4 and 3.6 mm.
  test("names the class of a hole", () => {
    expect(note("hole(M3) = 3.5 mm")).toBe(
      "ISO 273 for M3: between medium and coarse (fine 3.2 mm, medium 3.4 mm, coarse 3.6 mm).",
    );
    expect(note("hole(M3) = 3.2 mm")).toContain("ISO 273 for M3: fine");
  });

  test("says nothing of others", () => {
    expect(note("V(R1) = 5 V")).toBe("");
  });
});

test("The hover on a part tells the loads that figures declare, with their share of the rating", () => {
  const body = "## A\n\n1. Fit [R1]. It bears {P(R1) = 0.1 W ± 10 %} and {V(R1) = 20 V}.\n";
  const guide = guideOf(body, LIST);
  const text = guide.pages[0]!.text.toString();
  const found = hoverInGuide(guide, "file:///g.md", text.indexOf("[R1]") + 1);
  const shown = found!.markdown.replaceAll("\\", "").replaceAll("\u00a0", " ");
  expect(shown).toContain("Bears P up to 0.11 W, 44 % of 0.25 W; V up to 20 V, 58 % of 34.3 V.");
});
