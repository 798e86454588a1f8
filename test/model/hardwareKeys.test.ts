import { describe, expect, test } from "vitest";
import { guideOf } from "./guides.ts";

const LIST = [
  "Designator,Quantity,Value,Description",
  ",6,M3x10,pan head screw",
  ",4,M3,nut",
  ",4,M3,washer",
  ",1,M3 × 30,screw with a nut",
  "",
].join("\n");

function found(key: string): string[] {
  return guideOf("1. Done", LIST)
    .kit.findHardware(key)
    .map(({ line }) => `${line.cells.value!.text} ${line.cells.description!.text}`);
}

describe("A line without designators is found by", () => {
  test.each([
    ["a whole cell, case and spaces aside", "m3 x 10", ["M3x10 pan head screw"]],
    ["a cell before its words elsewhere", "nut", ["M3 nut"]],
    ["whole words of one cell", "pan head", ["M3x10 pan head screw"]],
    ["words of two cells, in any order", "M3 washer", ["M3 washer"]],
    ["words of two cells, in any order", "screw M3x10", ["M3x10 pan head screw"]],
    ["nothing less than whole words", "M3x1", []],
    ["nothing where one of its words stands nowhere", "M3 spacer", []],
  ])("%s: %s", (_, key, lines) => {
    expect(found(key)).toEqual(lines);
  });

  test("all that fit equally well are given", () => {
    expect(found("M3")).toEqual(["M3 nut", "M3 washer"]);
  });
});
