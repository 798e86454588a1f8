import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type PartClass, type PartHints, partClass } from "../../server/src/trade/partClass.ts";

describe("class letters alone", () => {
  // IEEE 315-1975 clause 22 / ASME Y14.44-2008.
  test.each<[string, PartClass]>([
    ["R", "resistor"],
    ["C", "capacitor"],
    ["L", "inductor"],
    ["D", "diode"],
    ["DS", "led"],
    ["Q", "transistor"],
    ["U", "ic"],
    ["Y", "crystal"],
    ["K", "relay"],
    ["F", "fuse"],
    ["J", "connector"],
    ["P", "connector"],
    ["S", "switch"],
    ["T", "transformer"],
    ["TP", "test point"],
    ["BT", "battery"],
    ["LS", "speaker"],
    ["MK", "microphone"],
    ["H", "hardware"],
    ["V", "tube"],
    // XU3 is the socket of U3, XF1 the holder of F1.
    ["XU", "socket"],
    ["XF", "fuse holder"],
  ])("%s", (letters, expected) => {
    expect(partClass(letters, {})).toBe(expected);
    expect(partClass(letters.toLowerCase(), {})).toBe(expected);
  });

  // Deviations that are met: appendix of a tutorial series on designators; RV and IC are common.
  test.each<[string, PartClass]>([
    ["FB", "inductor"],
    ["RN", "resistor"],
    ["IC", "ic"],
    ["HS", "heat sink"],
    ["JP", "jumper"],
    ["RV", "potentiometer"],
    ["CR", "diode"],
    ["SW", "switch"],
    ["LED", "led"],
    ["BUZZER", "speaker"],
    ["U$", "unknown"],
  ])("%s", (letters, expected) => {
    expect(partClass(letters, {})).toBe(expected);
  });
});

describe("the list's own words come before the letters", () => {
  // Regional habits, common practice: T is a transistor in Germany, Q a crystal, P a potentiometer,
  // X a connector, K a connector.
  test.each<[string, PartHints, PartClass]>([
    ["T", { value: "BC547" }, "transistor"],
    ["T", { value: "BS170", package: "TO-92" }, "transistor"],
    ["T", { description: "Netztransformator 2 × 12 V" }, "transformer"],
    ["TR", { value: "2SC1815" }, "transistor"],
    ["V", { value: "1N4148" }, "diode"],
    ["Q", { value: "8 MHz", package: "HC49/S" }, "crystal"],
    ["X", { value: "16MHz" }, "crystal"],
    ["X", { description: "Stiftleiste 2x5" }, "connector"],
    ["K", { package: "Wannenstecker 10-polig" }, "connector"],
    ["P", { value: "10k lin" }, "potentiometer"],
    ["RV", { value: "10k" }, "potentiometer"],
    ["VR", { value: "47K preset" }, "potentiometer"],
    ["R", { value: "2k2 preset" }, "potentiometer"],
    ["RV", { value: "10k", description: "variable resistor" }, "potentiometer"],
    ["R", { value: "B10k", description: "Potentiometer, 9 mm" }, "potentiometer"],
    ["R", { value: "10kB", package: "POT_VERTICAL_9MM" }, "potentiometer"],
    ["L", { value: "LED", description: "Light emitting diode, 5 mm" }, "led"],
    ["D", { value: "red", package: "LED_D5.0mm" }, "led"],
    ["C", { value: "10u", package: "Capacitor_THT:CP_Radial_D6.3mm_P2.50mm" }, "electrolytic"],
    ["C", { value: "100µ", description: "Elko radial" }, "electrolytic"],
    ["C", { value: "220uF 16V", package: "radial" }, "electrolytic"],
    ["C", { value: "10uF 25V", package: "radial" }, "electrolytic"],
    ["C", { value: "100uF 10V" }, "electrolytic"],
    ["C", { value: "10uF" }, "capacitor"],
    ["C", { value: "1uF", package: "radial" }, "capacitor"],
    ["C", { value: "100uF", package: "1210" }, "capacitor"],
    ["C", { value: "22uF", package: "axial", description: "polypropylene film" }, "capacitor"],
    ["C", { value: "1kΩ 0603", package: "0603 RES" }, "resistor"],
    ["C", { value: "100nF", package: "RES_0603" }, "capacitor"],
    ["R", { value: "330R", description: "resistor for the LED" }, "resistor"],
    ["Q", { value: "2N7000", description: "relay driver transistor" }, "transistor"],
    ["U", { description: "LED sink driver" }, "ic"],
    ["U", { value: "25MHz TCXO" }, "crystal"],
    ["U", { value: "SA612AN", description: "mixer and oscillator" }, "ic"],
    ["U", { value: "ULN2003", description: "relay driver" }, "ic"],
    ["U", { value: "12 V supply", description: "DC converter module" }, "ic"],
    ["J", { value: "SN74HC595", package: "SOIC-16_3.9x9.9mm_P1.27mm" }, "ic"],
    ["J", { value: "SPEAKER", package: "PinHeader_1x02_P2.54mm_Vertical" }, "connector"],
    ["J", { value: "solder jumper" }, "jumper"],
    ["JP", { value: "wire link" }, "wire link"],
    ["F", { value: "Polyfuse 500mA", package: "R_1210_HandSoldering" }, "fuse"],
    ["H", { value: "MountingHole_3.2mm_M3" }, "hardware"],
    ["DIS", { description: "LCD 16x2" }, "display"],
    ["FB", { value: "100R @ 100MHz" }, "inductor"],
    ["LS", { value: "8 Ω" }, "speaker"],
    ["S", { description: "Taster 6 mm" }, "switch"],
    ["ALARM", { value: "LED-TH-3mm_R" }, "led"],
    ["R", { description: "Résistance à couche" }, "resistor"],
    ["", { description: "M3x10 screw" }, "hardware"],
    ["", { description: "Knobs" }, "hardware"],
    ["", { description: "screw terminal 2-pole" }, "connector"],
  ])("%s %j", (letters, hints, expected) => {
    expect(partClass(letters, hints)).toBe(expected);
  });

  test.each<[string, PartHints, PartClass]>([
    ["", { description: "8 pin DIP socket" }, "socket"],
    ["U", { value: "40 pin DIP", description: "Zócalo CI" }, "socket"],
    ["U", { description: "IC-Fassung 14-polig" }, "socket"],
    ["IC", { description: "turned-pin socket, 8 pins" }, "socket"],
    ["BT", { value: "Coin cell holder" }, "battery holder"],
    ["F", { description: "fuse holder 5 × 20" }, "fuse holder"],
    // These are not sockets of chips.
    ["J", { description: "Pin socket, 2.54 mm, 1x10" }, "connector"],
    ["U", { value: "NE555", package: "DIP-8_W7.62mm_Socket" }, "ic"],
    ["U", { value: "NE555", description: "timer, with DIP-8 socket" }, "ic"],
    ["U", { value: "LM358", package: "DIP-8", description: "in a socket" }, "ic"],
    ["U", { value: "LM358", description: "im Sockel" }, "ic"],
    ["U", { description: "8 pin plug-in socket" }, "connector"],
  ])("sockets and holders: %s %j", (letters, hints, expected) => {
    expect(partClass(letters, hints)).toBe(expected);
  });
});

test("any text gives some class, in no time", () => {
  const text = fc.oneof(
    fc.string({ unit: "binary", maxLength: 200 }),
    fc.constantFrom("dip ", "+ ", "socket", " 1", "-", "with ").map((one) => one.repeat(5_000)),
  );
  const began = process.cpuUsage().user;
  fc.assert(
    fc.property(text, text, text, fc.string(), (value, name, description, letters) => {
      expect(partClass(letters, { value, package: name, description })).toEqual(expect.any(String));
    }),
    { numRuns: 100 },
  );
  expect((process.cpuUsage().user - began) / 1000).toBeLessThan(10_000);
});
