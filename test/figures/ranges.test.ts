/** Readings between two ends, as people write them: one unit for both, or one each. */
import { describe, expect, test } from "vitest";
import { Followed } from "./sheet.ts";

async function read(range: string): Promise<string> {
  const one = await Followed.open(`1. {read x(TP1) = ${range}}`, "supply: { VCC: 12 V ± 10 % }\n");
  return one.figures().at(-1)!;
}

async function refused(range: string): Promise<string> {
  const one = await Followed.open(`1. {read x(TP1) = ${range}}`);
  return one.guide.figures.all()[0]!.evaluation!.problem!.message.replaceAll("\u00a0", " ");
}

describe("A range is read as it is meant", () => {
  // NIST SP 811 (2008), 7.7, writes the unit with both ends; workshops write it once, behind.
  test.each([
    ["5 … 6 V", "5 V … 6 V"],
    ["5 V … 6 V", "5 V … 6 V"],
    ["500 mV … 1.2 V", "0.5 V … 1.2 V"],
    ["5,8 … 6,6 V", "5.8 V … 6.6 V"],
    ["5,8 V … 6,6 V", "5.8 V … 6.6 V"],
    ["0,5 … 1,2 mV", "0.5 mV … 1.2 mV"],
    ["5.8–6.6 V", "5.8 V … 6.6 V"],
    ["-5 … 5 V", "−5 V … 5 V"],
    ["\u22125 … 5 V", "−5 V … 5 V"],
    ["0 … VCC", "0 V … 12 V"],
    ["0 … 5 V", "0 V … 5 V"],
    ["1 … 2 mA", "1 mA … 2 mA"],
    ["900 Ω … 1.1 kΩ", "0.9 kΩ … 1.1 kΩ"],
    ["1k … 2k2", "1 kΩ … 2.2 kΩ"],
    ["20 … 25 °C", "20 °C … 25 °C"],
    ["40 … 60 %", "40 % … 60 %"],
    ["3 … 5", "3 … 5"],
    ["1 200 … 1 300 kHz", "1.2 MHz … 1.3 MHz"],
    ["VCC / 2 … 8 V", "6 V … 8 V"],
  ])("%s", async (range, limits) => {
    expect((await read(range)).replaceAll("\u202f", "")).toContain(`[${limits}] reading`);
  });
});

describe("A range that cannot be meant is refused", () => {
  test.each([
    ["4 V … 6", "The lower end is in V, but the upper one has no unit."],
    ["4 V … 6 A", "The lower end is in V, but the upper one is in A."],
    ["2 * 2 … 6 V", "The lower end has no unit, but the upper one is in V."],
    ["0 … 20 °C + 5 K", "The lower end has no unit, but the upper one is in °C."],
    ["6 … 5 V", "From 6 V to 5 V it goes down"],
    ["900 … 1.1 kΩ", "From 900 kΩ to 1.1 kΩ it goes down"],
  ])("%s", async (range, message) => {
    expect(await refused(range)).toContain(message);
  });
});
