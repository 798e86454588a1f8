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
