/** The notes that fixes insert pass the checks of notes in each language, and leave room for the author. */
import { describe, expect, test } from "vitest";
import { LANGUAGES } from "../../../server/src/text/language.ts";
import { HAZARDS } from "../../../server/src/trade/hazards/hazards.ts";
import { noteTemplate } from "../../../server/src/trade/hazards/templates.ts";
import { checkFiles } from "../../fixture.ts";

/** Hazards that steps of ours bring. */
const BROUGHT = HAZARDS.filter((hazard) => noteTemplate(hazard, "en"));

test("There is a note for each of eleven hazards, in each language", () => {
  expect(BROUGHT).toHaveLength(11);
  for (const language of LANGUAGES) {
    for (const hazard of BROUGHT) expect(noteTemplate(hazard, language)).toHaveLength(2);
  }
});

describe.each([...LANGUAGES])("In the language %s", (language) => {
  test.each(BROUGHT)("the note on %s is complete and has the right word", async (hazard) => {
    const note = noteTemplate(hazard, language)!.join("\n");
    const guide = `---\nparts: parts.csv\nlanguage: ${language}\n---\n\n## A\n\n${note}\n\n1. [R1]\n`;
    const files = new Map([
      ["guide.md", guide],
      ["parts.csv", "Designator,Value\nR1,10k\n"],
    ]);
    const { found } = await checkFiles(files);
    const notes = ["hazard-incomplete", "hazard-word", "repeated-word", "number-unit"];
    expect(found.filter(({ code }) => notes.includes(code))).toEqual([]);
  });
});
