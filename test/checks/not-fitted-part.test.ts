import { expect, test } from "vitest";
import { kit, messages } from "./kit.ts";

const CODE = "not-fitted-part";
const LIST = "Designator,Quantity,Value,DNP\nR1,1,10k,\nR2,1,0R,DNP\n,2,foot,\n,2,lug,DNP";

async function found(steps: string): Promise<string[]> {
  return messages(kit(`## Board\n\n${steps}`, LIST), CODE);
}

test("A part marked do-not-fit may be one of a choice or be declared empty", async () => {
  expect(await found("1. Solder [R1 or R2].")).toEqual([]);
  expect(await found("1. Leave [empty: R2] free.")).toEqual([]);
});

test("A part marked do-not-fit is not placed, inserted or fitted", async () => {
  expect(await found("1. Put in [place: R2].")).toHaveLength(1);
  expect(await found("1. Push in [insert: R2].")).toHaveLength(1);
});

test("A set leaves out what is marked do-not-fit", async () => {
  expect(await found("1. Solder [all R].")).toEqual([]);
});

test("A part that one option fits may be empty in another", async () => {
  expect(await found("1. For 12 V solder [R1].\n2. For 24 V leave [empty: R1] free.")).toEqual([]);
});

test("Hardware marked do-not-fit is not used", async () => {
  expect(await found("1. Screw on [2 × foot, 2 × lug].")).toEqual([
    expect.stringContaining("lug is fitted in step 1.1, but the parts list marks it do-not-fit"),
  ]);
});
