import { describe, expect, test } from "vitest";
import { kit, messages } from "./kit.ts";

const LIST = "Designator,Quantity,Value,Fitted\nK1,1,relay,yes\nK2,1,relay,optional\n,4,M3x10,yes";

async function found(steps: string, code = "held-back-part"): Promise<string[]> {
  return messages(kit(`## Board\n\n${steps}`, LIST), code);
}

describe("A part put aside", () => {
  test("after it was fitted is an error that names both steps", async () => {
    expect(await found("1. Solder [K1].\n2. Keep [later: K1].")).toEqual([
      "error: K1 is put aside in step 1.2, but step 1.1 has fitted it already. Move this mark before that step, or take one of the two out.",
    ]);
  });

  test("twice before it is fitted is right", async () => {
    expect(await found("1. Keep [later: K1].\n2. Keep [later: K1].\n3. Solder [K1].")).toEqual([]);
  });

  test("and only tried since is told of as a trial, not twice", async () => {
    const steps = "1. Keep [later: K1].\n2. Hold [try: K1].";
    expect(await found(steps)).toEqual([]);
    expect(await found(steps, "trial-left")).toHaveLength(1);
  });

  test("tried and taken out is still owed", async () => {
    const steps = "1. Keep [later: K1].\n2. Hold [try: K1].\n3. Off [remove: K1].";
    expect(await found(steps)).toHaveLength(1);
  });

  test("may stay out where the list calls it optional", async () => {
    expect(await found("1. Keep [later: K2].")).toEqual([]);
  });

  test("may turn out to stay empty", async () => {
    expect(await found("1. Keep [later: K1].\n2. Leave [empty: K1] free.")).toEqual([]);
  });
});

describe("Hardware put aside or placed", () => {
  test("must be fitted later", async () => {
    expect(await found("1. Keep [later: 2 × M3x10].")).toHaveLength(1);
    expect(await found("1. Lay in [place: 2 × M3x10].")).toHaveLength(1);
    expect(await found("1. Keep [later: 4 × M3x10].\n2. Fix [4 × M3x10].")).toEqual([]);
  });

  test("is told in its number, wire by its length", async () => {
    expect(await found("1. Keep [later: 1 × M3x10].")).toEqual([
      expect.stringContaining(
        "1 × M3x10 put aside in step 1.1, and no later step fits it. Name it",
      ),
    ]);
    const wire = "Designator,Quantity,Value\n,1 m,CuL 0.4";
    const text = kit("## A\n\n1. Keep [later: 0.3 m × CuL 0.4].", wire);
    expect(await messages(text, "held-back-part")).toEqual([
      expect.stringContaining(
        "300 mm of CuL 0.4 put aside in step 1.1, and no later step fits it.",
      ),
    ]);
  });

  test("lent to a trial must be taken back", async () => {
    expect(
      await found("1. Hold [try: 4 × M3x10].\n2. Off [remove: 3 × M3x10].", "trial-left"),
    ).toEqual([
      expect.stringContaining("4 × M3x10 are lent to a trial in step 1.1 and not all are"),
    ]);
    expect(await found("1. Hold [try: 1 × M3x10].", "trial-left")).toEqual([
      expect.stringContaining("1 × M3x10 is lent to a trial in step 1.1 and not taken back"),
    ]);
  });
});
