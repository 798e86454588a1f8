/** `kitquill list parts LIST`: hardware is told by its name, which may stand in any column. */
import { expect, test } from "vitest";
import { partsOfList } from "../../server/src/cli/listParts.ts";
import type { Terminal } from "../../server/src/cli/terminal.ts";
import { readList } from "../list/reading.ts";

test("hardware has its name where parts have their value", () => {
  const list = readList(
    "Ref,Qty,Value,Description,MPN\nR1,1,1k,film,\n,4,,Screw M3x6,\n,4,M3,,N3\n,2,,,FEET\nJ1,1,,header,\n",
  );
  const rows = JSON.parse(partsOfList(list, "json", {} as Terminal));
  expect(rows.map(({ value }: { value: string }) => value)).toEqual([
    "1k",
    "Screw M3x6",
    "M3",
    "FEET",
    null,
  ]);
});

test("what is supplied by length has it for its quantity, and as metres in data", () => {
  const list = readList("Ref,Qty,Value\nR1,1,1k\n,300 mm,Hookup wire\n");
  const terminal = { paint: (_: string, text: string) => text } as unknown as Terminal;
  expect(partsOfList(list, "text", terminal)).toMatch(/^ +300 mm +Hookup wire/m);
  const rows = JSON.parse(partsOfList(list, "json", terminal));
  expect(rows.map(({ quantity, metres }: Record<string, unknown>) => [quantity, metres])).toEqual([
    [1, null],
    [null, 0.3],
  ]);
});
