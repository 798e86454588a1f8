import { describe, expect, test } from "vitest";
import { drawn, kit, messages } from "./kit.ts";

const LIST = `
Designator,Quantity,Value,Height
R1-R14,14,10k,2.5
"C12, C101",2,100n,6
"D1, D12, D14",3,1N4148,2
Q1,1,BC547B,8
"CR1, CR203",2,1N4007,3
"T1, T11",2,transformer,20
M1,1,meter,10
"U1, U2",2,TL072,4
"JP1, JP2",2,header,8
"J1, J103",2,BNC jack,12
Q2,1,"J113, FET",8`;

function found(text: string): Promise<string[]> {
  return messages(kit(`## Board\n\n1. ${text}`, LIST), "doubtful-mention");
}

describe("A designator in the text", () => {
  test("is a hint at its place when it is one slip away from a listed one", async () => {
    const { found, expected } = await drawn(
      kit(
        `## Board

1. See **R41**, *R140* and 🔧 C11.
         ^^^ doubtful-mention
                 ^^^^ doubtful-mention
                              ^^^ doubtful-mention`,
        LIST,
      ),
      "doubtful-mention",
    );
    expect(found).toEqual(expected);
  });

  test("is told of with the names that may be meant", async () => {
    expect(await found("See R41.")).toEqual([
      expect.stringMatching(/^hint: The parts list has no R41\. Did you mean R14(?:, | or )/),
    ]);
  });

  test.each([
    ["swapped", "R41"],
    ["changed", "C102"],
    ["missing", "C10"],
    ["too many", "R144"],
  ])("with a character %s is doubtful", async (_, name) => {
    expect(await found(`See ${name}.`)).toHaveLength(1);
  });

  test.each([
    ["listed", "R14, r14 and U1A"],
    ["more than a slip away", "R555 and C55"],
    ["of a class that the list does not use", "L1, K2, V3"],
    ["a type number", "P8088, BC547, LM317T, NE5532 and 2N3904"],
    ["a type that the list names", "J113, which looks like a J310"],
    ["an interface or a connector", "RS232, USB2, RJ45, DB9 and DE9"],
    ["a cell", "AA, CR2032, LR44"],
    ["a screw", "M3 screws, M2.5 and M4x10"],
    ["a package", "TO92, DIP8 and SOT23"],
    ["called a pin", "pin D13, pins D2, D3 and D4 of the board"],
    ["called a version", "version D2 or revision R16"],
    ["called a tool", "a Torx T10 driver, a T12 bit and a T15 screw"],
    ["a pin of a part", "U1-8, D1.2"],
    ["in code", "`R41`"],
    ["closed as a bridge", "[bridge: JP3]; JP3 joins the grounds"],
    ["in a link's address", "[this](R41.jpg)"],
  ])("that is %s gives no hint", async (_, text) => {
    expect(await found(`Look at ${text}.`)).toEqual([]);
  });

  test("is left alone where the list cannot be read", async () => {
    expect(await messages(kit("1. See R41.", "nothing here"), "doubtful-mention")).toEqual([]);
  });
});
