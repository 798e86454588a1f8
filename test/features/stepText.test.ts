/** What a step says on one line, where steps are listed. */
import { expect, test } from "vitest";
import { stepText } from "../../server/src/features/stepText.ts";
import { guideOf } from "../model/guides.ts";

const LIST = "Designator,Value\nR1,1k\nR2,1k\n";

test.each([
  ["Solder [R1, R2 = 1k].", "Solder R1, R2."],
  ["Read {read V(TP1) = 1 V ± 5 %}.", "Read V(TP1) = 1 V ± 5 %."],
  ["Set {Iq = 45 mA ± 1 mA}.", "Set 45 mA ± 1 mA."],
  ["Take {2 * 3 V = 6 V} and {U}.", "Take 6 V and U."],
  ["[#cut] Cut it [tool: side cutters].", "Cut it side cutters."],
  ["Solder\n   both [R1].\n\n   And more.", "Solder both R1."],
  ["Solder.\n   - [R1]", "Solder."],
])("%j is %j", (step, said) => {
  const [stage] = guideOf(`## A\n\n1. ${step}`, LIST).stages;
  expect(stepText(stage!.steps[0]!)).toBe(said);
});

test("a row of a table is its cells", () => {
  const table = "| Do | With |\n|---|---|\n| Fit [R1] | {2 V} |";
  const [stage] = guideOf(`## A\n\n${table}`, LIST).stages;
  expect(stepText(stage!.steps[0]!)).toBe("Fit R1 2 V");
});
