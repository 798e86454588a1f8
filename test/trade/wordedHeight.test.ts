/** Heights in the remarks of parts lists. The phrases are our own, as people write them (common practice). */
import { describe, expect, test } from "vitest";
import { wordedHeight } from "../../server/src/trade/wordedHeight.ts";

describe("A remark tells the height", () => {
  test.each([
    ["11 mm high", 11],
    ["electrolytic, 11mm high", 11],
    ["11.5 mm tall, radial", 11.5],
    ["10-11 mm high", 11],
    ["10 x 11 mm high", 11],
    ["12 mm max. high", 12],
    ["15 mm in height", 15],
    ["H=11mm", 11],
    ["D=8 mm, H = 11,5 mm", 11.5],
    ["8 mm dia, h 11 mm", 11],
    ["H: 11 mm", 11],
    ["Hmax 11 mm", 11],
    ["height 11.5mm", 11.5],
    ["Height: max. 11.5 mm", 11.5],
    ["body height 7 mm", 7],
    ["height (max) 7.0 mm", 7],
    ["height of 7 mm", 7],
    ["height 11 ± 0.5 mm", 11],
    ["height 10-11 mm", 11],
    ["11 mm hoch", 11],
    ["Elko stehend, 11,5 mm hoch", 11.5],
    ["Höhe 11 mm", 11],
    ["Bauhöhe max. 11 mm", 11],
    ["Hoehe: 11 mm", 11],
    ["hauteur 11 mm", 11],
    ["hauteur : 11,5 mm", 11.5],
    ["relais, hauteur de 15 mm", 15],
    ["11 mm de haut", 11],
    ["11 mm de hauteur", 11],
    ["altura 11 mm", 11],
    ["altura máx. 11 mm", 11],
    ["11 mm de alto", 11],
    ["hoogte 11 mm", 11],
    ["bouwhoogte 11 mm", 11],
    ["11 mm hoog", 11],
    ["lies flat, 3 mm", 3],
    ["lying flat 3.5 mm", 3.5],
    ["liegend, 3 mm", 3],
    ["couché, 3 mm", 3],
    ["tumbado, 3 mm", 3],
    ["liggend, 3 mm", 3],
    ["fit last. 11 mm high", 11],
    ["from the old stock; 11 mm high", 11],
  ])("%s", (text, mm) => {
    expect(wordedHeight([text])?.mm).toBe(mm);
  });
});

describe("A remark tells no height where it speaks of something else", () => {
  test.each([
    "M3 x 11 mm",
    "lead spacing 5.08 mm",
    "RM 5 mm",
    "pitch 2.54 mm",
    "cable, 820 mm",
    "LED 5 mm, high brightness",
    "5 mm high-brightness LED",
    "5 mm high efficiency",
    "with a 25 mm high heat sink",
    "with heat sink, 25 mm high",
    "mit Kühlkörper, 25 mm hoch",
    "fit at a height of 15 mm",
    "auf Höhe 15 mm setzen",
    "digit height 14.2 mm",
    "Ziffernhöhe 14 mm",
    "stacking height 11 mm",
    "3 mm above the board",
    "10 mH, 11 mm",
    "H11",
    "CP_Radial_D8.0mm_H11.5mm",
    "height 0.45 in",
    "axial, liegend, 10 mm",
    "lies flat, 10 mm",
    "lying, 3 mm lead spacing",
    "11 ± 0.5 mm",
    "0.5 mm highest",
    "11 mm high (12 mm high with socket), 12 mm high",
    "height 1000 mm",
    "height 0 mm",
    "",
  ])("%s", (text) => {
    expect(wordedHeight([text])).toBeUndefined();
  });

  test("or where two columns differ", () => {
    expect(wordedHeight(["11 mm high", "H=11mm"])?.words).toBe("11 mm high");
    expect(wordedHeight(["11 mm high", "H=12mm"])).toBeUndefined();
  });
});

test("Hostile remarks are read quickly", () => {
  const start = process.cpuUsage();
  for (const piece of ["height max ", "1 mm ", "11", "h ", "lies flat, ", "11 ± ", " - "]) {
    wordedHeight([piece.repeat(100_000)]);
  }
  expect(process.cpuUsage(start).user).toBeLessThan(500_000);
});
