/** The status bar entry: what it says, and what a click on it opens. */
import { expect, test } from "vitest";
import { progressOf } from "../../client/src/views/progress.ts";

const guide = (listed: number, fitted: number, errors = 0, warnings = 0) =>
  progressOf({ uri: "", left: [], listed, fitted, errors, warnings });

test("parts that are left come first", () => {
  expect(guide(14, 12, 1, 8)).toEqual({
    text: "$(checklist) 12 of 14 fitted  $(error) 1  $(warning) 8",
    tooltip: "2 parts are fitted in no step yet. Click to see what is left.",
    command: "kitquill.partsLeft.focus",
  });
  expect(guide(14, 13).tooltip).toMatch(/^1 part is fitted in no step yet/);
});

test("then a click opens what is found wrong", () => {
  expect(guide(14, 14, 0, 8)).toMatchObject({
    tooltip: "Every part of the list is fitted in a step. Click to see what is found wrong.",
    command: "workbench.panel.markers.view.focus",
  });
  expect(guide(14, 14)).toMatchObject({
    tooltip: "Every part of the list is fitted in a step.",
    command: "kitquill.partsLeft.focus",
  });
});

test("without a parts list nothing counts as fitted", () => {
  expect(guide(0, 0)).toMatchObject({
    text: "$(checklist) no parts listed",
    tooltip: "The guide names no parts list that lists a part.",
  });
});
