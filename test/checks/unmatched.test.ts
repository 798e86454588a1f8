import { describe, expect, test } from "vitest";
import { kit, messages } from "./kit.ts";

async function found(row: string, steps = "1. Solder [all Q]."): Promise<string[]> {
  const list = `Designator,Quantity,Spare,Value,Notes\n${row}`;
  return messages(kit(`## Board\n\n${steps}`, list), "unmatched");
}

describe("Parts to pick from", () => {
  test("are supplied where a line has more pieces than places and spares", async () => {
    expect(await found('"Q1, Q2",10,,BC547B,')).toEqual([
      expect.stringContaining("information: The list supplies 10 for the 2 places Q1 and Q2."),
    ]);
    expect(await found('"Q1, Q2",10,8,BC547B,')).toEqual([]);
    expect(await found("Q1,10,,BC547B,")).toEqual([]);
  });

  // Words as parts lists use them, in five languages; from common practice.
  test.each([
    "matched pair",
    "Matched for hFE",
    "hand-picked",
    "gepaart",
    "ausgesucht nach UBE",
    "appariés",
    "emparejados",
    "selected for low noise",
  ])("are told of by the note %s", async (note) => {
    expect(await found(`"Q1, Q2",2,,BC547B,${note}`)).toHaveLength(1);
  });

  test.each(["impedance matching", "matching network", "matched impedance", "match the colours"])(
    "are not meant by the note %s",
    async (note) => {
      expect(await found(`"Q1, Q2",2,,BC547B,${note}`)).toEqual([]);
    },
  );

  test("are no finding once a step matches them, or before any is fitted", async () => {
    const row = '"Q1, Q2",10,,BC547B,matched';
    expect(await found(row, "1. Pick [match: Q1+Q2].\n2. Solder [Q1+Q2].")).toEqual([]);
    expect(await found(row, "1. Read on.")).toEqual([]);
  });
});
