import { describe, expect, test } from "vitest";
import { tally } from "../../server/src/checks/tally.ts";
import type { Use } from "../../server/src/model/guide.ts";
import type { Role } from "../../server/src/syntax/dialect.ts";

/** Uses in the order of the steps; the count looks at nothing but role and number. */
function uses(...list: readonly (readonly [Role, number])[]): Use[] {
  return list.map(([role, count]) => ({ role, count }) as Use);
}

describe("Hardware in use", () => {
  test("adds up what is fitted and names the use that exceeds the supply", () => {
    const all = uses(["fit", 4], ["fit", 4], ["fit", 1]);
    const sum = tally(all, 8);
    expect(sum.used).toBe(9);
    expect(sum.over).toBe(all[2]);
    expect(sum.out).toBe(9);
  });

  test("comes back from a trial", () => {
    const sum = tally(uses(["try", 4], ["remove", 4], ["fit", 4]), 4);
    expect(sum.over).toBeUndefined();
    expect(sum.used).toBe(4);
    expect(sum.open).toEqual([]);
  });

  test("is out twice while lent pieces are taken back only later", () => {
    const all = uses(["try", 4], ["fit", 4], ["remove", 4]);
    expect(tally(all, 4).over).toBe(all[1]);
    expect(tally(all, 8).used).toBe(4);
  });

  test("of a trial that is never taken back is taken up by the plain mark that follows", () => {
    const sum = tally(uses(["try", 4], ["fit", 4]), 4);
    expect(sum.over).toBeUndefined();
    expect(sum.open).toEqual([]);
  });

  test("stays open where fewer are taken back than lent", () => {
    const all = uses(["try", 4], ["remove", 3]);
    const sum = tally(all, 4);
    expect(sum.open).toEqual([all[0]]);
    expect(sum.used).toBe(1);
  });

  test("gives fitted pieces back when they are removed", () => {
    const sum = tally(uses(["fit", 4], ["remove", 4], ["fit", 4]), 4);
    expect(sum.over).toBeUndefined();
    expect(sum.used).toBe(4);
  });

  test("counts materials of a make mark only where nothing else uses the line", () => {
    expect(tally(uses(["make", 1], ["make", 1]), 2).used).toBe(2);
    expect(tally(uses(["make", 1], ["fit", 1]), 1).used).toBe(1);
  });

  test("does not count what is put aside or matched", () => {
    expect(tally(uses(["later", 2], ["match", 2], ["fit", 2]), 2).used).toBe(2);
  });
});
