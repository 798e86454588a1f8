import { describe, expect, test } from "vitest";
import { readFastener } from "../../../server/src/trade/fasteners/fastener.ts";

/** Kind, thread and length in mm. */
function brief(text: string): string {
  const found = readFastener(text);
  if (!found) return "none";
  const length = found.length === undefined ? "" : ` ${Number((found.length * 1000).toFixed(3))}`;
  return `${found.kind} ${found.thread?.name ?? "?"}${length}`;
}

// Names and descriptions as parts lists have them, in five languages (common practice).
describe("Hardware is read from its words", () => {
  test.each([
    ["M3x10", "screw M3 10"],
    ["M3x6 pan head screw, steel 4.8, zinc plated", "screw M3 6"],
    ["M3 × 10 mm Zylinderschraube", "screw M3 10"],
    ["vis M3x8", "screw M3 8"],
    ["schroef M2,5x4", "screw M2.5 4"],
    ["tornillo M3 x 12", "screw M3 12"],
    ['4-40 x 1/4" screw', "screw 4-40 6.35"],
    ["screw M3 × 0.5 × 10", "screw M3 10"],
    ["M3 nut hexagon nut, steel", "nut M3"],
    ["Mutter M3", "nut M3"],
    ["écrou M3", "nut M3"],
    ["moer M3", "nut M3"],
    ["tuerca M3", "nut M3"],
    ["M3 washer plain washer, steel", "washer M3"],
    ["Unterlegscheibe M3", "washer M3"],
    ["sluitring M3", "washer M3"],
    ["standoff M3, 8 mm, steel, two inner threads", "standoff M3 8"],
    ["Abstandsbolzen M3x10", "standoff M3 10"],
    ["insulating bush for M3 and TO-220, flange 1 mm", "bush M3"],
    ["mica disc insulator for TO-220, 0.05 mm", "insulator ?"],
    ["Isolierscheibe TO-220", "insulator ?"],
    ["knob 15 mm", "none"],
    ["solder tag M3", "none"],
    ["front panel aluminium", "none"],
    ["hook-up wire 0.5 mm²", "none"],
  ])("%s: %s", (text, expected) => {
    expect(brief(text)).toBe(expected);
  });

  test("with what it is made of", () => {
    expect(readFastener("pan head screw M3x6, steel 4.8")?.propertyClass).toBe("4.8");
    expect(readFastener("screw M3x6, nylon")?.soft).toBe(true);
    expect(readFastener("screw M3x6, brass")?.soft).toBe(true);
    expect(readFastener("countersunk screw M3x6")?.countersunk).toBe(true);
    expect(readFastener("Senkkopfschraube M3x6")?.countersunk).toBe(true);
    expect(readFastener("M3x6")).toMatchObject({ soft: false, countersunk: false });
  });
});
