import { describe, expect, test } from "vitest";
import { kit, messages } from "./kit.ts";

const OWN = "Designator,Value\nU1,TL072\nXU1,socket DIP-8";
const SHARED = "Designator,Value\nU1,TL072\nU1,socket DIP-8";

async function found(steps: string, list: string, code = "socket-first"): Promise<string[]> {
  return messages(kit(`## Board\n\n${steps}`, list), code);
}

describe("The socket of a chip", () => {
  test("may be soldered in the step that inserts the chip", async () => {
    expect(await found("1. Push [insert: U1] into [XU1].", OWN)).toEqual([]);
  });

  test("that no step solders is told of once", async () => {
    expect(await found("1. Push in [insert: U1].", OWN)).toHaveLength(1);
    expect(await found("1. Push in [insert: U1].", OWN, "missing-part")).toEqual([]);
  });

  test("may share the chip's designator", async () => {
    expect(await found("1. Solder [U1].\n2. Push in [insert: U1].", SHARED)).toEqual([]);
    expect(await found("1. Push in [insert: U1].\n2. Solder [U1].", SHARED)).toHaveLength(1);
    expect(await found("1. Push in [insert: U1].", SHARED)).toEqual([
      expect.stringContaining("no step solders its socket"),
    ]);
  });

  test("may be none that the list tells of", async () => {
    expect(await found("1. Push in [insert: U1].", "Designator,Value\nU1,TL072")).toEqual([]);
  });

  test("is not needed where the chip is soldered", async () => {
    expect(await found("1. Solder [U1].\n2. Solder [XU1].", OWN)).toEqual([]);
  });
});
