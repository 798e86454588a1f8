/** Names one slip away, held against the distance that counts slips. */
import { describe, expect, test } from "vitest";
import { Slips } from "../../server/src/model/slips.ts";
import { slips as distance } from "../../server/src/text/nearest.ts";

function found(known: readonly string[], name: string): string[] {
  const names = new Set(known);
  return [...new Set([...new Slips(known).of(name)].filter((slip) => names.has(slip)))];
}

describe("slips", () => {
  test("come likeliest first: swapped, changed, left out, doubled in", () => {
    const known = ["R21", "R13", "C12", "R120", "RV12", "R1", "U3A"];
    expect(found(known, "R12")).toEqual(["R21", "R13", "C12", "R120", "RV12", "R1"]);
    expect(found(known, "U3B")).toEqual(["U3A"]);
    expect(found(["U3A"], "U3")).toEqual([]);
  });

  test("are those that the distance gives, kinds of characters kept", () => {
    const heads = ["R", "C", "RV", "IC", "U"];
    const names = heads.flatMap((head) =>
      ["1", "2", "12", "21", "102", "120", "1200"].map((number) => head + number),
    );
    const headOf = (name: string) => name.replace(/\d+$/, "");
    for (const name of names) {
      const known = names.filter((one) => one !== name);
      const expected = known.filter((one) => {
        const isCrossed = one.length === name.length && headOf(one).length !== headOf(name).length;
        return distance(one, name) === 1 && !isCrossed && one.slice(1) !== name;
      });
      expect(found(known, name).sort()).toEqual(expected.sort());
    }
  });

  test("of 10,000 names take less than a tenth of a second of the processor", () => {
    const slips = new Slips(Array.from({ length: 60_000 }, (_, i) => `R${i}`));
    const start = process.cpuUsage().user;
    let count = 0;
    for (let i = 0; i < 10_000; i++) for (const _ of slips.of(`X${70_000 + i}`)) count++;
    expect((process.cpuUsage().user - start) / 1000).toBeLessThan(100);
    expect(count).toBe(10_000);
  });
});
