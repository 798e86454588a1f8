/** How figures are spoken, and how many words that takes. */
import { describe, expect, test } from "vitest";
import { spoken, wordCount } from "../../server/src/publish/narration/speech.ts";
import { durationText, secondsToSpeak } from "../../server/src/publish/narration/time.ts";
import { narrationWords } from "../../server/src/publish/narration/words/words.ts";
import { LANGUAGES } from "../../server/src/text/language.ts";

const english = narrationWords("en");

// Names of units: NIST SP 811 (2008), tables 1, 3, 5, 6; 9.3 has kilohm and megohm.
test.each([
  ["Fit R1–R4.", "Fit R1 to R4."],
  ["C1, C3–5", "C1, C3 to 5"],
  ["relay/R1 … relay/R4", "relay/R1 … relay/R4"],
  ["4.7 kΩ", "4.7 kilohms"],
  ["1\u00a0MΩ", "1 megohm"],
  ["100 nF", "100 nanofarads"],
  ["13.8 V ± 10 %", "13.8 volts plus or minus 10 percent"],
  ["5.8 V … 6.6 V", "5.8 volts to 6.6 volts"],
  ["< 50 mV", "less than 50 millivolts"],
  ["> 10 MΩ", "more than 10 megohms"],
  ["0.55 N·m", "0.55 newton metres"],
  ["62.5 K/W", "62.5 kelvins per watt"],
  ["12 V/µs", "12 volts per microsecond"],
  ["5 m/s/s", "5 m/s/s"],
  ["−20 °C", "minus 20 degrees Celsius"],
  ["1 A", "1 ampere"],
  ["10 000 µF", "10 000 microfarads"],
  ["500 mm × CuL 0.4", "500 millimetres of CuL 0.4"],
  ["6 × M3x10", "6 M3x10"],
  ["R1 = 4k7", "R1, 4k7"],
  ["Q1 + Q2 + Q3", "Q1, Q2 and Q3"],
])("%s is said as %s", (written, said) => {
  expect(spoken(written, english)).toBe(said);
});

test.each([
  "1N4148",
  "2N3904 and 3 in a row",
  "TO-220",
  "M3",
  "row A–C",
  "a 10-turn coil",
  "band 40",
])("%s is no figure", (text) => {
  expect(spoken(text, english)).toBe(text);
});

test("each language says ranges and units in its own words", () => {
  const said = LANGUAGES.map((one) => spoken("R1–R4: 4,7 kΩ, 10 mm, 5 %", narrationWords(one)));
  expect(said).toEqual([
    "R1 to R4: 4,7 kilohms, 10 millimetres, 5 percent",
    "R1 bis R4: 4,7 Kiloohm, 10 Millimeter, 5 Prozent",
    "R1 à R4: 4,7 kiloohms, 10 millimètres, 5 pour cent",
    "R1 tot R4: 4,7 kiloohm, 10 millimeter, 5 procent",
    "R1 a R4: 4,7 kiloohmios, 10 milímetros, 5 por ciento",
  ]);
});

describe("words and times", () => {
  test.each([
    ["Solder R1 to R4.", 6],
    ["4.7 kilohms", 4],
    ["13.8 volts", 4],
    ["a flat-nose plier", 3],
    ["150", 3],
    ["47", 1],
    ["2500", 4],
  ])("%s takes %i words", (text, words) => {
    expect(wordCount(text)).toBe(words);
  });

  // 300 words at 150 a minute take 120 s, 45 at 120 take 22.5 s: division.
  test.each([
    [300, 150, 120],
    [45, 120, 22.5],
  ])("%i words at %i a minute", (count, rate, seconds) => {
    expect(secondsToSpeak(Array(count).fill("word").join(" "), rate)).toBe(seconds);
  });

  test.each([
    [8.4, "8 s"],
    [60, "1 min"],
    [200, "3 min 20 s"],
    [7500, "2 h 5 min"],
    [3600 * 3 - 1, "3 h"],
  ])("%d s is %s", (seconds, text) => {
    expect(durationText(seconds)).toBe(text);
  });
});
