import { describe, expect, test } from "vitest";
import {
  headDiameter,
  hexKey,
  nutHeight,
  nutWidth,
  washerDiameter,
  washerThickness,
} from "../../../server/src/trade/fasteners/hardware.ts";
import { lengthInThread, lengthWithNut } from "../../../server/src/trade/fasteners/screwLength.ts";
import { threadIn } from "../../../server/src/trade/fasteners/threads.ts";

const thread = (name: string) => threadIn(name)!;
const mm = (metres: number) => Number((metres * 1000).toFixed(6));

describe("A thread is read from", () => {
  test.each([
    ["M3", "M3"],
    ["m3", "M3"],
    ["M3x10", "M3"],
    ["M3 × 0.5", "M3"],
    ["M 2,5x4", "M2.5"],
    ["M2.5", "M2.5"],
    ["screw M1.6, pan head", "M1.6"],
    ["standoff M3, 8 mm, steel", "M3"],
    ["M12", "M12"],
    ["#4-40", "4-40"],
    ["4-40 UNC", "4-40"],
    ["1/4-20", "1/4-20"],
  ])("%s", (text, name) => {
    expect(threadIn(text)?.name).toBe(name);
  });

  test.each(["M7", "MM3", "RM3", "1M3", "M3.75", "4-41", "14-40", "M", "", "LM358", "3M 1210"])(
    "no thread: %s",
    (text) => {
      expect(threadIn(text)).toBeUndefined();
    },
  );
});

describe("Unified threads", () => {
  // ASME B1.1 as read in FreeCAD's FeatureHole.cpp.
  test.each([
    ["2-56", 2.184, 0.454],
    ["4-40", 2.845, 0.635],
    ["6-32", 3.505, 0.794],
    ["8-32", 4.166, 0.794],
    ["10-24", 4.826, 1.058],
    ["1/4-20", 6.35, 1.27],
  ])("%s is %d mm thick with a pitch of %d mm", (name, diameter, pitch) => {
    expect(mm(thread(name).diameter)).toBeCloseTo(diameter, 3);
    expect(mm(thread(name).pitch)).toBeCloseTo(pitch, 3);
  });
});

describe("Sizes by thread", () => {
  // ISO 4032, ISO 7089 and ISO 4762 as read in the tables of FreeCAD's Fasteners workbench.
  test.each([
    ["M2", 4, 1.6, 5, 0.3],
    ["M2.5", 5, 2, 6, 0.5],
    ["M3", 5.5, 2.4, 7, 0.5],
    ["M4", 7, 3.2, 9, 0.8],
    ["M5", 8, 4.7, 10, 1],
    ["M6", 10, 5.2, 12, 1.6],
  ])("nut and washer of %s", (name, ...expected) => {
    const sizes = [nutWidth, nutHeight, washerDiameter, washerThickness];
    expect(sizes.map((size) => mm(size(thread(name))))).toEqual(expected);
  });

  // ISO 4762: a 2.5 mm key fits M3 socket heads. ISO 10642 for countersunk heads.
  test.each([
    ["M3", 2.5, 5.5, 2],
    ["M4", 3, 7, 2.5],
    ["M5", 4, 8.5, 3],
    ["M6", 5, 10, 4],
  ])("key and head of %s", (name, key, head, countersunk) => {
    expect(mm(hexKey(thread(name), "socket"))).toBe(key);
    expect(mm(headDiameter(thread(name)))).toBe(head);
    expect(mm(hexKey(thread(name), "countersunk"))).toBe(countersunk);
  });

  test("are unknown where the standard has no such size", () => {
    expect(hexKey(thread("M1.6"), "countersunk")).toBeNaN();
    expect(nutWidth(thread("4-40"))).toBeNaN();
  });
});

describe("The length of a screw", () => {
  // Common practice: 3 mm wall, 1.3 mm tab, two washers, nut and two pitches make 8.7 mm.
  test("with a nut", () => {
    expect(mm(lengthWithNut(thread("M3"), (3 + 1.3 + 2 * 0.5) / 1000))).toBe(8.7);
  });

  // Common practice: one diameter in steel, one and a half in brass, two in aluminium.
  test("in a tapped hole", () => {
    expect(mm(lengthInThread(thread("M3"), 0.002, "steel"))).toBe(5);
    expect(mm(lengthInThread(thread("M3"), 0.002, "brass"))).toBe(6.5);
    expect(mm(lengthInThread(thread("M3"), 0.002, "aluminium"))).toBe(8);
  });
});
