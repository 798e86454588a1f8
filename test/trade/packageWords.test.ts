/** Footprints' names in a builder's words. The names follow the KiCad libraries' naming. */
import { describe, expect, test } from "vitest";
import { packageWords } from "../../server/src/trade/packageWords.ts";

describe("a footprint's name in words", () => {
  test.each([
    [
      "R_Axial_DIN0207_L6.3mm_D2.5mm_P10.16mm_Horizontal",
      "axial, lying, 6.3 mm long, 2.5 mm thick, leads 10.16 mm apart",
    ],
    [
      "Capacitor_THT:CP_Radial_D8.0mm_H11.5mm_P3.50mm",
      "radial, 8 mm across, 11.5 mm high, leads 3.5 mm apart",
    ],
    ["C_Disc_D5.0mm_W2.5mm_P5.00mm", "disc, 5 mm across, 2.5 mm thick, leads 5 mm apart"],
    ["C_Rect_L7.2mm_W2.5mm_P5.00mm", "box, 7.2 × 2.5 mm, leads 5 mm apart"],
    ["D_DO-35_SOD27_P7.62mm_Horizontal", "DO-35, lying, leads 7.62 mm apart"],
    ["D_DO-201AD_P15.24mm_Horizontal", "DO-201AD, lying, leads 15.24 mm apart"],
    ["TO-220-3_Vertical", "TO-220-3, upright"],
    ["DIP-8_W7.62mm", "DIP-8, rows 7.62 mm apart"],
    ["SOIC-8_3.9x4.9mm_P1.27mm", "SOIC-8, 3.9 × 4.9 mm, leads 1.27 mm apart"],
    ["PinHeader_2x05_P2.54mm_Vertical", "pin header, upright, 2 × 5 pins, 2.54 mm apart"],
    ["C_0805_2012Metric_Pad1.15x1.40mm_HandSolder", "chip size 0805"],
    ["R0603", "chip size 0603"],
    ["LED_D3.0mm", "3 mm across"],
    ["Potentiometer_Trimmer_6mm_Horizontal", "potentiometer, trimmer, 6 mm, lying"],
  ])("%s", (name, words) => {
    expect(packageWords(name)).toBe(words);
  });

  test.each(["TO-92", "panel", "0207", "RM5", "C-US/5X8", "a remark of several words", ""])(
    "`%s` stays, since there is nothing better",
    (name) => {
      expect(packageWords(name)).toBe(name);
    },
  );
});
