import { describe, expect, test } from "vitest";
import { kit, messages } from "./kit.ts";

const CODE = "coil-wire";
const LIST = `Designator,Quantity,Value,Description
L1,1,0.7uH,coil
R1,1,1k,
,900 mm,CuL 1.0,enamelled copper wire`;

function found(step: string, figures: string): Promise<string[]> {
  return messages(kit(`## Coil\n\n1. ${step}`, LIST, `figures: { ${figures} }\n`), CODE);
}

describe("The wire of a coil", () => {
  // 12 turns on 12 mm mean diameter take 452 mm: turns × π × diameter.
  test.each([
    ["{turns(L1) = 12} turns of [460 mm × CuL 1.0]", "wire(L1): 1 mm, former(L1): 11 mm"],
    [
      "{turns(L1) = 12} turns of [520 mm × CuL 1.0]",
      "wire(L1): 1 mm, former(L1): 11 mm, leads(L1): 60 mm",
    ],
    ["{turns(L1) = 12} turns", "wire(L1): 1 mm, former(L1): 11 mm"],
    ["{turns(L1) = 12} turns of [100 mm × CuL 1.0]", "wire(L1): 1 mm"],
    ["{turns(L1) = 12} turns over {length(L1) = 12 mm}", "wire(L1): 1 mm"],
    ["{turns(R1) = 12} turns of [100 mm × CuL 1.0]", "wire(R1): 1 mm, former(R1): 11 mm"],
  ])("is enough: %s, %s", async (step, figures) => {
    expect(await found(step, figures)).toEqual([]);
  });

  test("is too short", async () => {
    const step = "{turns(L1) = 12} turns of [440 mm × CuL 1.0]";
    expect(await found(step, "wire(L1): 1 mm, former(L1): 11 mm")).toEqual([
      "warning: L1 takes 453 mm of wire, without leads, but this step gives 440 mm. The builder comes up short with the coil half wound: give more, and list it.",
    ]);
  });

  const HEAD = "figures: { wire(L1): 1 mm, former(L1): 11 mm, turns(L1): 12 }\n";
  const LISTED = `${LIST}\nL2,1,0.7uH,coil\n`;
  const inSteps = (steps: string, list = LISTED) =>
    messages(kit(`## Coil\n\n${steps}`, list, HEAD), CODE);

  test.each([
    ["the step that makes it", "1. Take [440 mm × CuL 1.0]. [make: L1]", "step 1.1 gives 440 mm"],
    [
      "its sub-steps",
      "1. Make the coil. [make: L1]\n   1. Cut [200 mm × CuL 1.0].\n   2. Cut [240 mm × CuL 1.0].",
      "steps 1.1.1 and 1.1.2 give 440 mm",
    ],
    [
      "a step that names it",
      "1. Cut [440 mm × CuL 1.0] for L1.\n2. Wind it. [make: L1]",
      "step 1.1",
    ],
  ])("is too short in %s", async (_, steps, says) => {
    const [message, ...more] = await inSteps(steps);
    expect(message).toContain(`but ${says}`);
    expect(more).toEqual([]);
  });

  test.each([
    [
      "in two steps together",
      "1. Take [260 mm × CuL 1.0] for L1, and [200 mm × CuL 1.0]. [make: L1]",
    ],
    ["unknown: for two coils", "1. Take [440 mm × CuL 1.0]. [make: L1, L2]"],
    ["unknown: for another", "1. Take [440 mm × CuL 1.0] for L2.\n2. Wind L1. [make: L1]"],
    ["unknown: for both", "1. Take [440 mm × CuL 1.0] for L1 and L2.\n2. Wind L1. [make: L1]"],
    ["unknown: for nothing said", "1. Take [440 mm × CuL 1.0].\n2. Wind it. [make: L1]"],
  ])("is %s", async (_, steps) => {
    expect(await inSteps(steps)).toEqual([]);
  });

  test("in a sub-step beside that with the turns is seen", async () => {
    const steps =
      "1. Make the coil. [make: L1]\n   1. Cut [440 mm × CuL 1.0].\n   2. Wind {turns(L1) = 12} turns.";
    const head = "figures: { wire(L1): 1 mm, former(L1): 11 mm }\n";
    const [message] = await messages(kit(`## Coil\n\n${steps}`, LISTED, head), CODE);
    expect(message).toContain("step 1.1.1 gives 440 mm");
  });

  test("is too short for the leads", async () => {
    const step = "{turns(L1) = 12} turns of [460 mm × CuL 1.0]";
    const figures = "wire(L1): 1 mm, former(L1): 11 mm, leads(L1): 60 mm";
    expect((await found(step, figures))[0]).toContain(
      "takes 513 mm of wire, 60 mm of leads included",
    );
  });

  test("does not fit side by side", async () => {
    const step = "{turns(L1) = 12} turns over {length(L1) = 10 mm}";
    expect(await found(step, "wire(L1): 1 mm")).toEqual([
      "warning: 12 turns of 1 mm wire side by side take 12 mm, but L1 is to be 10 mm long. Lengthen the winding, or take thinner wire.",
    ]);
  });
});
