import { describe, expect, test } from "vitest";
import { chosen, offered } from "./completing.ts";

const LIST = "--- file: parts.csv\nDesignator,Value\nR1,1k";

function kit(body: string, head = ""): string {
  return `---\nparts: parts.csv\n${head}---\n\n## A\n\n${body}\n\n1. Fit [R1].\n${LIST}`;
}

describe("in a hazard note", () => {
  test("signal words come first, the gravest first", async () => {
    const result = await offered(kit("> **¦"));
    expect(result.labels.slice(0, 4)).toEqual(["DANGER", "WARNING", "CAUTION", "NOTICE"]);
    expect(chosen(result, "WARNING")).toBe("> **WARNING: ");
  });

  test("in the guide's language", async () => {
    const result = await offered(kit("> **W¦", "language: de\n"));
    expect(result.labels.slice(0, 4)).toEqual(["GEFAHR", "WARNUNG", "VORSICHT", "HINWEIS"]);
    expect(result.labels).toContain("WARNUNG: Stromschlag …");
  });

  test("then hazards, those that the signal word fits first", async () => {
    const caution = await offered(kit("> **CAUTION: ¦"));
    expect(caution.labels.indexOf("fumes")).toBeLessThan(
      caution.labels.indexOf("static discharge"),
    );
    const notice = await offered(kit("> **NOTICE: ¦"));
    expect(notice.labels[0]).toBe("static discharge");
    expect(chosen(caution, "fumes")).toBe("> **CAUTION: fumes.** ");
  });

  test("and a whole note to begin with, to be completed by the author", async () => {
    const first = await offered(kit("   > **¦"));
    expect(chosen(first, "WARNING: electric shock …")).toMatch(
      /^ {3}> \*\*WARNING: electric shock\.\*\* Touching .* practice/,
    );
    const note = first.found!.items.find(({ label }) => label === "WARNING: electric shock …")!;
    expect(note.text!.split("\n")[1]).toMatch(/^ {3}> <!-- .* -->$/);
    const second = await offered(kit("> **WARNING: ¦"));
    expect(chosen(second, "WARNING: electric shock …")).toMatch(
      /^> \*\*WARNING: electric shock\.\*\* T/,
    );
    const closed = await offered(kit("> **WARNING: ¦** It kills."));
    expect(closed.labels).not.toContain("WARNING: electric shock …");
  });

  test.each([
    ["> **WARN¦ING: fumes.** It burns.", "> **DANGER: fumes.** It burns."],
    ["> **WARNING¦: fumes.** It burns.", "> **DANGER: fumes.** It burns."],
    ["> **W¦** It burns.", "> **DANGER: ** It burns."],
  ])("in the place of a signal word that stands there: %s", async (before, after) => {
    expect(chosen(await offered(kit(before)), "DANGER")).toBe(after);
  });

  test("in the place of a hazard that stands there", async () => {
    const result = await offered(kit("> **CAUTION: fu¦me.** It burns."));
    expect(chosen(result, "fumes")).toBe("> **CAUTION: fumes.** It burns.");
  });

  test.each([
    ["outside a quote", "**¦"],
    ["in bold words further on", "> Mind the **¦"],
    ["behind a word that is no signal", "> **Tip: ¦"],
    ["behind the bold words", "> **CAUTION: fumes.** ¦"],
  ])("nothing %s", async (_, body) => {
    expect((await offered(kit(body))).found).toBeUndefined();
  });
});
