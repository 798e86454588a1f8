/**
 * Small guides in four languages, all of one kit: what is right gives no finding, and what is wrong
 * gives the same findings in each.
 */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { checkFiles } from "../../fixture.ts";

const read = (name: string) => readFileSync(new URL(name, import.meta.url), "utf8");

async function findings(name: string): Promise<string[]> {
  const files = new Map([
    ["guide.md", read(name)],
    ["parts.csv", read("parts.csv")],
  ]);
  const { found } = await checkFiles(files);
  return found.map(({ line, code, message }) => `${line} ${code}${hazardIn(message)}`).sort();
}

/** The hazard that a note is owed on. */
function hazardIn(message: string): string {
  const hazard = /(?:speaks of|the note on) ([a-z ]+?)(?:, which| comes)/.exec(message);
  return hazard ? `: ${hazard[1]}` : "";
}

describe.each(["de", "fr", "nl", "es"])("In the language %s", (language) => {
  test("a guide that is right has no finding", async () => {
    expect(await findings(`${language}-right.md`)).toEqual([]);
  });

  test("a guide that is wrong has those of its faults", async () => {
    const found = await findings(`${language}-wrong.md`);
    expect(found.filter((one) => !one.includes("unlisted"))).toEqual([
      "13 hazard-missing: fumes",
      "13 hazard-missing: hot surface",
      "13 polarity-note",
      "14 hazard-missing: eye injury",
      "15 hazard-missing: static discharge",
      "15 polarity-note",
      "16 polarity-note",
      "20 hazard-late: eye injury",
      "20 hazard-late: moving parts",
      "27 hazard-word",
      "29 hazard-missing: fire",
      "29 hazard-missing: fumes",
      "29 hazard-missing: sharp edge",
      "29 several-actions",
      "33 power-up-missing",
      "33 power-up-order",
      "33 reading-remedy",
    ]);
  });
});
