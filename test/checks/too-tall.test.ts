import { describe, expect, test } from "vitest";
import { kit, messages } from "./kit.ts";

const LIST = `
Designator,Quantity,Value,Height,Board,Side
"C1, C2",2,470u,20,main,top
R1,1,10k,2.5,main,top
C3,1,470u,20,main,bottom
K1,1,relay,15.5,relay,top
XU1,1,socket,4,main,top
U1,1,TL072,4,main,top
A1,1,module,,main,top`;

async function found(steps: string, clearance: string, more = ""): Promise<string[]> {
  const notes = `clearance: ${clearance}\n${more}`;
  return messages(kit(`## Board\n\n${steps}`, LIST, notes), "too-tall");
}

describe("A part above the clearance of its board", () => {
  test("is an error that names its height, the height's origin and the room", async () => {
    expect(await found("1. [C1, R1]", "{ main: 18 mm }")).toEqual([
      "error: main/C1 is 20 mm high (by the parts list), but only 18 mm fit above the board main. The lid or the next board will not go on. Choose a lower part, lay it flat and give its height under `heights`, or correct `clearance`.",
    ]);
  });

  test("is reported once for a range", async () => {
    const [message, ...more] = await found("1. [C1–C2]", "{ main: 18 mm }");
    expect(message).toContain("main/C1 and main/C2 are up to 20 mm high");
    expect(more).toEqual([]);
  });

  test("is measured against its own board's room", async () => {
    expect(await found("1. [C1] [K1]", "{ main: 20 mm, relay: 15 mm }")).toHaveLength(1);
    expect(await found("1. [C1] [K1]", "{ main: 20 mm }")).toEqual([]);
    expect(await found("1. [C1] [K1]", "15 mm")).toHaveLength(2);
    expect(await found("1. [C1] [K1]", "{ Main: 15 mm }")).toHaveLength(1);
  });

  test("may be exactly as tall as the room", async () => {
    expect(await found("1. [C1]", "20 mm")).toEqual([]);
  });

  test("stands on its socket", async () => {
    expect(await found("1. [XU1]\n2. [insert: U1]", "8 mm")).toEqual([]);
    const [message] = await found("1. [XU1]\n2. [insert: U1]", "7 mm");
    expect(message).toContain("main/U1 is 8 mm high (by the parts list and its socket main/XU1)");
  });

  test("is left alone off the board, on the rear side, placed only, or of unknown height", async () => {
    expect(await found("1. [C1]", "5 mm", "off-board: [C1]\n")).toEqual([]);
    expect(await found("1. [C3] [A1] [place: C2] [later: C1]", "5 mm")).toEqual([]);
  });
});
