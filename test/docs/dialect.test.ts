/** Each construct on the page of the dialect does what the page says. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { printValue } from "../../server/src/quantity/printRange.ts";
import { checkFiles } from "../fixture.ts";
import { guideOf } from "../model/guides.ts";
import { blocksOf, type Row, rowsOf } from "./page.ts";

const PAGE = readFileSync("server/docs/dialect.md", "utf8");
const LIST = blocksOf(PAGE, "csv")[0]!;
const RAIL = "supply: { VCC: 12 V ± 5 % }\n";

/** The written form without its code marks, and the cell that says what it does. */
const pairs = (rows: readonly Row[], column: string) =>
  rows.flatMap((row) => {
    const says = row[column];
    if (says === undefined || row.Written === undefined) return [];
    return [
      { written: [...row.Written.matchAll(/`([^`]+)`/g)].map((one) => one[1]).join(" "), says },
    ];
  });

describe("the marks on the page", () => {
  const marks = pairs(rowsOf(PAGE), "Does");

  test("are all read from it", () => expect(marks.length).toBeGreaterThan(30));

  test.each(marks)("$written does: $says", ({ written, says }) => {
    const guide = guideOf(`## A\n\n1. Take ${written}\n`, LIST);
    const uses = guide.stages.flatMap((stage) =>
      stage.steps.flatMap((step) => step.piece.uses.filter((use) => use.step === step)),
    );
    const named = uses.map(({ supply }) => supply.name);
    const role = uses[0]?.role === "fit" ? "fits" : uses[0]?.role;
    expect(new Set(uses.map((use) => use.role)).size).toBeLessThanOrEqual(1);
    expect(uses.length === 0 ? "nothing" : `${role} ${named.join(", ")}`).toBe(says);
  });
});

describe("the figures on the page", () => {
  const figures = pairs(rowsOf(PAGE), "Value");

  test("are all read from it", () => expect(figures.length).toBeGreaterThan(10));

  test.each(figures)("$written shows $says", ({ written, says }) => {
    const guide = guideOf(`## A\n\n1. Take ${written}\n`, LIST, RAIL);
    const last = guide.figures.all().at(-1)!;
    const shown = last.evaluation?.value && printValue(last.evaluation.value);
    expect(shown?.replaceAll(/[\u00a0\u202f]/g, " ")).toBe(says);
  });
});

describe("the pieces of guides on the page", () => {
  const pieces = blocksOf(PAGE, "markdown").map((body) => ({ body }));

  test.each(pieces)("are without slips: %#", async ({ body }) => {
    const guide = body.startsWith("---") ? body : `---\nparts: parts.csv\n---\n\n${body}`;
    const files = new Map([
      ["guide.md", guide],
      ["parts.csv", LIST],
    ]);
    const { found } = await checkFiles(files);
    // A piece of a guide fits some parts and has no power-up: only its form is judged.
    const form = [
      "mark-syntax",
      "figure-syntax",
      "front-matter",
      "unknown-part",
      "hazard-incomplete",
    ];
    const slips = found.filter(({ code }) => form.includes(code));
    expect(slips).toEqual([]);
  });
});
