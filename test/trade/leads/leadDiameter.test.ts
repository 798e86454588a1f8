import { describe, expect, test } from "vitest";
import { isGlassDiode, leadDiameter } from "../../../server/src/trade/leads/leadDiameter.ts";

describe("The usual diameter of a lead", () => {
  // Makers' outlines, from memory: DO-35 0.5 mm, DO-41 0.8 mm, LEDs 0.5 mm; the axial body after
  // the generator parameters of kicad-3d-models-in-freecad.
  test.each([
    ["R_Axial_DIN0207_L6.3mm_D2.5mm_P10.16mm_Horizontal", 0.6],
    ["DO-35", 0.5],
    ["D_DO-41_SOD81_P10.16mm_Horizontal", 0.8],
    ["LED_D5.0mm", 0.5],
    ["two LEDs, green", 0.5],
  ])("of %s is %d mm", (text, mm) => {
    expect(leadDiameter(text)).toBe(mm / 1000);
  });

  test("is not told by letters inside another word", () => {
    expect(leadDiameter("sealed trimmer")).toBeUndefined();
    expect(leadDiameter("voltage-controlled")).toBeUndefined();
  });
});

test("Glass bodies are known by package or words", () => {
  expect(isGlassDiode("DO-35")).toBe(true);
  expect(isGlassDiode("diode, Glasgehäuse")).toBe(true);
  expect(isGlassDiode("DO-41 1 A")).toBe(false);
});
