import { describe, expect, test } from "vitest";
import { kit, messages } from "./kit.ts";

const CODE = "overload";
const LIST = `Designator,Quantity,Value,Power,Voltage,Description
R1,1,4k7,0.25 W,,metal film
R2,1,1M,0.25 W,,metal film
R3,1,1k,,,
C1,1,100u,,63 V,electrolytic
D1,1,1N5819,,40 V,"Schottky diode, 1 A"
F1,1,2 A slow,,,fuse link
Q1,1,BD139,,80 V,"NPN transistor, 12.5 W"
Q2,1,2SC5200,,230 V,"NPN, 150 W, 175 °C"`;

function found(figure: string): Promise<string[]> {
  return messages(kit(`## A\n\n1. It bears {${figure}}.`, LIST), CODE);
}

describe("A load within the rating and its share", () => {
  // 0.25 W and 4.7 kΩ: 34.3 V, 7.29 mA (Ohm's law); 60 % of power and 80 % of voltage are common
  // practice; 250 V is the working voltage of quarter-watt film resistors.
  test.each([
    "P(R1) = 0.15 W",
    "V(R1) = 27 V",
    "I(R1) = 5.8 mA",
    "V(R2) = 200 V",
    "V(C1) = 50 V",
    "V(C1) = -50 V",
    "I(D1) = 0.8 A",
    "I(F1) = 1.5 A",
    "P(Q1) = 7 W",
    "Tj(Q1) = 150 °C",
    "Tj(Q2) = 170 °C",
    // Nothing is known, or something else is declared.
    "P(R3) = 5 W",
    "V(R1) = 50 W",
    "Q(R1) = 50 W",
    "V(TP1) = 500 V",
    "read V(C1) > 100 V",
  ])("%s", async (figure) => {
    expect(await found(figure)).toEqual([]);
  });
});

describe("A load above the share", () => {
  test.each([
    ["P(R1) = 0.16 W", "64 % of what R1 stands (0.25 W, its rating in the parts list)"],
    ["V(R1) = 30 V", "88 % of what R1 stands (34.3 V, the voltage at its rated power)"],
    ["V(R2) = 220 V", "(250 V, the working voltage of such resistors)"],
    ["V(C1) = 55 V", "87 % of what C1 stands (63 V, its rating in the parts list)"],
    ["V(C1) = 48 V ± 10 %", "may come to 52.8 V"],
    ["I(D1) = 0.9 A", "90 %"],
  ])("%s", async (figure, says) => {
    const [message, ...more] = await found(figure);
    expect(message).toMatch(/^warning: /);
    expect(message).toContain(says);
    expect(more).toEqual([]);
  });
});

describe("The shares of the guide's front matter", () => {
  const share = (derating: string, figure: string) =>
    messages(kit(`## A\n\n1. It bears {${figure}}.`, LIST, `derating: ${derating}\n`), CODE);

  test.each([
    ["{ power: 50 % }", "P(R1) = 0.13 W", "Above 50 % a part"],
    ["{ voltage: 70 }", "V(C1) = 45 V", "Above 70 % a part"],
    ["{ voltage: 70 % }", "I(D1) = 0.75 A", "Above 70 % a part"],
  ])("%s, lower than usual: %s", async (derating, figure, says) => {
    expect(await found(figure)).toEqual([]);
    expect((await share(derating, figure))[0]).toContain(says);
  });

  test("higher than usual", async () => {
    expect(await share("{ voltage: 95 % }", "V(C1) = 55 V")).toEqual([]);
  });

  test("100 % at most", async () => {
    expect((await share("{ power: 100 % }", "P(R1) = 0.3 W"))[0]).toMatch(/^error: /);
  });
});

describe("A load above the rating", () => {
  test.each([
    [
      "P(R1) = 0.3 W",
      "P(R1) may come to 0.3 W, but R1 stands 0.25 W, its rating in the parts list.",
    ],
    ["V(R1) = 40 V", "but R1 stands 34.3 V"],
    ["I(R1) = 10 mA", "but R1 stands 7.29 mA"],
    ["V(C1) = 70 V", "but C1 stands 63 V"],
    ["I(F1) = 3 A", "but F1 stands 2 A"],
    ["P(Q1) = 20 W", "but Q1 stands 12.5 W"],
    ["Tj(Q1) = 160 °C", "but Q1 stands 150 °C, the usual limit of silicon"],
    ["Tj(Q2) = 180 °C", "but Q2 stands 175 °C, its limit in the parts list"],
    ["read V(C1) = 70 V ± 5 %", "may come to 73.5 V"],
  ])("%s", async (figure, says) => {
    const [message] = await found(figure);
    expect(message).toMatch(/^error: /);
    expect(message).toContain(says);
  });

  test("follows the values of the list", async () => {
    expect(await found("P(R1) = (40 V)^2 / R1")).toHaveLength(1);
  });
});
