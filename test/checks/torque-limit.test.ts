import { describe, expect, test } from "vitest";
import { kit, messages } from "./kit.ts";

const CODE = "torque-limit";
const LIST = `Designator,Quantity,Value,Package,Description
Q1,1,IRF510,TO-220,
Q2,1,IRFP240,TO-247,
HS1,1,8 K/W,,heat sink
,9,M3x10,,"pan head screw, steel 4.6"
,9,M3x8,,"socket head cap screw"
,9,M4x10,,"hexagon screw 8.8"
,9,M3x6,,"pan head screw, nylon"
,9,M2.5x6,,"pan head screw, steel"`;

function found(step: string): Promise<string[]> {
  return messages(kit(`## Sink\n\n1. ${step}`, LIST, "off-board: [HS1]\n"), CODE);
}

describe("A torque is within the limits", () => {
  test.each([
    // STMicroelectronics TN1225: TO-220 0.55, at most 0.70 N·m; TO-247 at most 1.00 N·m.
    "[Q1, 1 × M3x8] {torque(Q1) = 0.55 N·m}",
    "[Q1, 1 × M3x8] {torque(Q1) = 0.7 N·m}",
    "[Q2, 1 × M3x8] {torque(Q2) = 1 N·m}",
    // A 4.6 screw of M3 at 0.55 N·m bears 81 % of its proof load.
    "[Q1, 1 × M3x10] {torque(Q1) = 0.55 N·m}",
    "[Q1, 1 × M3x10] {5 kgf·cm}",
    // 8.8 by its head: 1.31 N·m are 75 % of proof.
    "[1 × M3x8] {torque(M3) = 1.3 N·m}",
    // No strength of nylon is known here.
    "[1 × M3x6] {torque(HS1) = 3 N·m}",
    "[HS1] {torque(HS1) = 3 N·m}",
    "[Q1] The coil holds {E(Q1) = 5 J}.",
  ])("%s", async (step) => {
    expect(await found(step)).toEqual([]);
  });
});

describe("A torque is above the limit", () => {
  test("of the package", async () => {
    expect(await found("[Q1, 1 × M3x8] {torque(Q1) = 0.9 N·m}")).toEqual([
      "warning: 0.9 N·m is above what a TO-220 stands, 0.7 N·m (STMicroelectronics TN1225): the tab bends or the chip cracks. Makers recommend 0.55 N·m; the part's own data sheet comes first.",
    ]);
  });

  test("of the screw, where that is lower", async () => {
    const [message] = await found("[Q2, 1 × M3x10] {torque(Q2) = 0.9 N·m}");
    expect(message).toContain(
      "above what M3x10 of class 4.6 stands, 0.679 N·m (proof load, ISO 898-1",
    );
  });

  test("of a screw whose class is not given", async () => {
    const [message] = await found("[1 × M2.5x6] {0.8 N·m}");
    expect(message).toContain("M2.5x6 of class 4.8 (the list gives none)");
  });

  test("of the screws of the list, for a thread without a mark", async () => {
    expect(await found("Tighten all screws to {torque(M4) = 9 N·m}. [Q1]")).toHaveLength(1);
  });

  test("in other units", async () => {
    expect(await found("[Q1, 1 × M3x8] {torque(Q1) = 9 kgf·cm}")).toHaveLength(1);
    expect(await found("[Q1, 1 × M3x8] {torque(Q1) = 10 lbf·in}")).toHaveLength(1);
  });

  test("at the upper end of its tolerance", async () => {
    const [message] = await found("[Q1, 1 × M3x8] {torque(Q1) = 0.65 N·m ± 0.1 N·m}");
    expect(message).toContain("0.65 N·m may come to 0.75 N·m, which is above");
  });

  test("for the package that stands least", async () => {
    const [message] = await found("[Q1, Q2, 2 × M3x8] {torque(Q1, Q2) = 0.8 N·m}");
    expect(message).toContain("a TO-220");
  });
});
