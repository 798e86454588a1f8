import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bodyHeight, type DescribedPart } from "../../server/src/trade/bodyHeight.ts";

const height = (letters: string, name: string) => bodyHeight({ letters, package: name })?.mm;

describe("figures in the footprint's name", () => {
  // Naming of the KiCad libraries; body sizes as in the generator parameters of
  // kicad-3d-models-in-freecad (K3D).
  test.each<[string, string, number]>([
    ["R", "R_Axial_DIN0204_L3.6mm_D1.6mm_P7.62mm_Horizontal", 1.6],
    ["R", "Resistor_THT:R_Axial_DIN0207_L6.3mm_D2.5mm_P10.16mm_Horizontal", 2.5],
    ["R", "R_Axial_DIN0309_L9.0mm_D3.2mm_P12.70mm_Horizontal", 3.2],
    ["R", "R_Axial_DIN0617_L17.0mm_D6.0mm_P20.32mm_Horizontal", 6],
    ["R", "R_Axial_Power_L20.0mm_W6.4mm_P22.40mm", 6.4],
    ["C", "CP_Axial_L10.0mm_D4.5mm_P15.00mm_Horizontal", 4.5],
    ["C", "CP_Radial_D8.0mm_H11.5mm_P3.50mm", 11.5],
    ["C", "Capacitor_THT:CP_Radial_D10.0mm_H17.5mm_P5.00mm", 17.5],
    ["C", "CAPAE-4.3x4.3h5.4", 5.4],
    ["C", "CP_Elec_6.3x5.3", 5.3],
    ["SW", "SW-SMD_4PIN-L12.0-W12.0-H6.0", 6],
    ["SW", "SW_PUSH_6mm_H5mm", 5],
    // EIA-535BAAC names tantalum chips by length, width and height.
    ["C", "CP_EIA-3216-18_Kemet-A", 1.8],
    // IPC-7351 names, in hundredths of a millimetre (letters from memory).
    ["U", "DIP254P1524X393-32", 3.93],
    ["U", "SOIC127P600X175-8N", 1.75],
    ["R", "RESC1608X55N", 0.55],
    ["D", "DIOAD1055W87L533D272", 2.72],
    ["C", "CAPPRD250W60D500H1100B", 11],
    ["D", "LEDRD254W57D500H1070", 10.7],
  ])("%s %s is %d mm", (letters, name, mm) => {
    expect(height(letters, name)).toBe(mm);
  });

  test("an upright part is as high as it is long, and about 1 mm of lead (common practice)", () => {
    expect(
      bodyHeight({ letters: "R", package: "R_Axial_DIN0207_L6.3mm_D2.5mm_P2.54mm_Vertical" }),
    ).toEqual({
      mm: 7.3,
      from: "length 6.3 mm, standing, and about 1 mm of lead, in the footprint name R_Axial_DIN0207_L6.3mm_D2.5mm_P2.54mm_Vertical",
    });
  });

  test("a disc is its diameter and 1 to 2 mm (diameter K3D, rule common practice)", () => {
    const mm = height("C", "C_Disc_D5.0mm_W2.5mm_P5.00mm")!;
    expect(mm).toBeGreaterThanOrEqual(6);
    expect(mm).toBeLessThanOrEqual(7);
  });

  test("says where the figure stands, without the library", () => {
    expect(bodyHeight({ letters: "C", package: "Capacitor_THT:CP_Radial_D8.0mm_H11.5mm" })).toEqual(
      {
        mm: 11.5,
        from: "height 11.5 mm in the footprint name CP_Radial_D8.0mm_H11.5mm",
      },
    );
  });

  test("other figures are no heights", () => {
    expect(height("J", "CONN02X08")).toBeUndefined();
    expect(height("J", "Molex_KK-254_AE-6410-03A_1x03_P2.54mm_Vertical")).toBeUndefined();
    expect(height("U", "ESP32-WROOM-32")).toBeUndefined();
    expect(height("H", "MountingHole_2.2mm_M2_DIN965")).toBeUndefined();
  });
});

describe("usual heights by package", () => {
  // K3D.
  test.each<[string, string, number]>([
    ["R", "0207/10", 2.5],
    ["R", "R_Axial_DIN0411", 3.6],
    ["U", "DIP-8_W7.62mm", 3.7],
    ["IC", "DIL14", 3.7],
    ["XU", "DIP-8_W7.62mm", 4],
    ["U", "DIP-8_W7.62mm_Socket", 7.6],
    ["C", "C_Rect_L10.0mm_W3.0mm_P7.50mm_FKS3_FKP3", 8.5],
    ["C", "C_Rect_L13.0mm_W4.0mm_P10.00mm", 10],
    ["C", "C_Rect_L18.0mm_W6.0mm_P15.00mm", 15],
    ["C", "C_Rect_L26.5mm_W7.0mm_P22.50mm", 21],
    // K3D draws names without a height as high as wide; 5 × 11 is the usual size there.
    ["C", "CP_Radial_D5.0mm_P2.00mm", 11],
    ["C", "CP_Radial_D6.3mm_P2.50mm", 11],
    ["C", "CP_Radial_D8.0mm_P3.50mm", 11.5],
    ["C", "CP_Radial_D10.0mm_P5.00mm", 16],
    ["C", "CP_Radial_D16.0mm_P7.50mm", 25],
    ["J", "TerminalBlock_Phoenix_PT-1,5-2-5.0-H_1x02_P5.00mm_Horizontal", 11.4],
    ["J", "TerminalBlock_Phoenix_PT-1,5-2-3.5-H_1x02_P3.50mm_Horizontal", 9.2],
    ["J", "TerminalBlock_Phoenix_MKDS-1,5-2-5.08_1x02_P5.08mm_Horizontal", 13.8],
    ["K", "Relay_SPDT_SRD_Series_Form_C", 15.5],
    ["K", "Relay_SPDT_G5LE-1", 19],
    ["SW", "SW_DIP_SPSTx04_Slide_9.78x12.34mm_W7.62mm_P2.54mm", 5.9],
    ["SW", "SW_DIP_SPSTx04_Piano_10.8x11.72mm_W7.62mm_P2.54mm", 10.2],
  ])("%s %s is %d mm", (letters, name, mm) => {
    expect(height(letters, name)).toBe(mm);
  });

  // From memory of makers' drawings and JEDEC outlines.
  test.each<[string, string, number]>([
    ["D", "DO-35", 1.9],
    ["D", "D_DO-41_SOD81_P10.16mm_Horizontal", 2.7],
    ["D", "D_DO-41_SOD81_P3.81mm_Vertical_AnodeUp", 6.2],
    ["Q", "TO-92_Inline", 8],
    ["Q", "TO126", 14.5],
    ["Q", "TO-220-3_Vertical", 19],
    ["Q", "TO-220-3_Horizontal_TabDown", 4.5],
    ["C", "C_Rect_L7.2mm_W2.5mm_P5.00mm", 6.5],
    ["D", "LED_D3.0mm", 5.3],
    ["D", "LED_D5.0mm", 8.7],
    ["Y", "Crystal_HC49-U_Vertical", 13.5],
    ["Y", "Crystal_HC49-4H_Vertical", 3.7],
    ["Y", "HC49/S", 3.7],
    ["J", "PinHeader_1x04_P2.54mm_Vertical", 8.5],
    ["U", "SOIC-8_3.9x4.9mm_P1.27mm", 1.75],
    ["U", "TSSOP-16_4.4x5mm_P0.65mm", 1.2],
    ["R", "R_0805_2012Metric", 0.5],
    ["C", "0603", 0.8],
    ["C", "603", 0.8],
    ["R", "AXIAL-0.4", 2.5],
  ])("%s %s is %d mm", (letters, name, mm) => {
    expect(height(letters, name)).toBe(mm);
  });

  test("names what they are the height of", () => {
    expect(bodyHeight({ letters: "D", package: "DO-35" })?.from).toBe(
      "usual height of a DO-35 diode",
    );
    expect(bodyHeight({ letters: "C", package: "CP_Radial_D10.0mm_P5.00mm" })?.from).toBe(
      "usual height of a radial electrolytic of 10 mm (12.5 to 20 mm are made)",
    );
  });
});

describe("lists without a package column", () => {
  test.each<[DescribedPart, number | undefined]>([
    [{ letters: "D", value: "1N4148", description: "Switching diode, DO-35" }, 1.9],
    [{ letters: "U", value: "TL074", description: "Quad operational amplifier, DIP-14" }, 3.7],
    [{ letters: "", description: "8 pin DIP socket" }, 4],
    [{ letters: "Q", value: "2N3904", description: "NPN transistor, TO-92" }, 8],
    [{ letters: "LED", description: "Red LED, 5mm" }, 8.7],
    [{ letters: "J", description: "Terminal block, 2 position, 5.08mm pitch" }, 11.4],
    [{ letters: "C", value: "100µ 25 V", description: "electrolytic 6,3 x 11 mm" }, 11],
    [{ letters: "C", value: "100u", package: "6,3x11" }, 11],
    [{ letters: "C", value: "10µ/35V", package: "5x11 RM2" }, 11],
    [{ letters: "R", value: "10k" }, 2.5],
    [{ letters: "R", value: "0R22 5W" }, 9],
    [{ letters: "R", value: "10k", description: "resistor, standing" }, undefined],
    [{ letters: "C", value: "100n" }, undefined],
    [{ letters: "K", value: "12 V" }, undefined],
    [{ letters: "J", description: "3.5mm jack" }, undefined],
    [{ letters: "HS", value: "clip", description: "heat sink clip for TO-126" }, undefined],
    [{ letters: "", value: "mica disc", description: "for TO-220" }, undefined],
    [{ letters: "JP", value: "wire link" }, 0.8],
    [{ letters: "Y", value: "4 MHz", description: "crystal HC49/S" }, 3.7],
  ])("%j", (part, mm) => {
    expect(bodyHeight(part)?.mm).toBe(mm);
  });
});

test("lowest first gives the order that a builder expects", () => {
  // Body sizes K3D; lowest first is a habit (common practice).
  const sorted: DescribedPart[] = [
    { letters: "R", package: "R_Axial_DIN0207_L6.3mm_D2.5mm_P10.16mm_Horizontal" },
    { letters: "U", package: "DIP-8_W7.62mm" },
    { letters: "XU", package: "DIP-8_W7.62mm" },
    { letters: "C", package: "C_Rect_L10.0mm_W3.0mm_P7.50mm" },
    { letters: "C", package: "C_Rect_L13.0mm_W4.0mm_P10.00mm" },
    { letters: "C", package: "CP_Radial_D5.0mm_P2.00mm" },
    { letters: "J", package: "TerminalBlock_Phoenix_PT-1,5-2-5.0-H_1x02_P5.00mm_Horizontal" },
    { letters: "C", package: "CP_Radial_D10.0mm_H12.5mm_P5.00mm" },
    { letters: "K", package: "Relay_SPDT_SRD_Series_Form_C" },
    { letters: "C", package: "CP_Radial_D10.0mm_H20.0mm_P5.00mm" },
  ];
  const heights = sorted.map((part) => bodyHeight(part)!.mm);
  expect(heights).toEqual([2.5, 3.7, 4, 8.5, 10, 11, 11.4, 12.5, 15.5, 20]);
});

test("any text gives a sensible height or none, in no time", () => {
  const text = fc.oneof(
    fc.string({ unit: "binary", maxLength: 200 }),
    fc
      .constantFrom("H1", "_D5", "1x", "X123", "P1", " vertical", "L1mm_")
      .map((one) => one.repeat(20_000)),
  );
  const began = performance.now();
  fc.assert(
    fc.property(text, text, fc.constantFrom("R", "C", "U", "J", "Q"), (name, other, letters) => {
      const found = bodyHeight({ letters, package: name, description: other, value: other });
      if (found) expect(found.mm).toBeGreaterThan(0);
    }),
    { numRuns: 100 },
  );
  expect(performance.now() - began).toBeLessThan(10_000);
});
