import { expect, test } from "vitest";
import { hoverInGuide } from "../../server/src/features/hover.ts";
import { guideOf } from "../model/guides.ts";

function hoverAt(body: string, at: string): string | undefined {
  const guide = guideOf(body);
  const text = guide.pages[0]!.text.toString();
  return hoverInGuide(guide, "file:///g.md", text.indexOf(at) + 1)?.markdown;
}

const NOTE = "> **WARNING: electric shock.** Mains kills. Pull the plug first.";

test("Pointing at the opening of a hazard note shows its sign and what the words mean", () => {
  const [picture, ...rest] = hoverAt(NOTE, "WARNING")!.split("\n\n");
  const [, data] = /^!\[W012\]\(data:image\/svg\+xml;base64,([\w+/=]+)\)$/.exec(picture!)!;
  expect(atob(data!)).toContain("<title>W012: electricity</title>");
  expect(rest).toEqual([
    "**electric shock** · sign W012 of ISO 7010: electricity",
    "It can kill; fitting signal words: WARNING, DANGER.",
    "WARNING stands for what can kill or gravely injure (ANSI Z535.6).",
  ]);
});

test("Behind the opening nothing is shown", () => {
  expect(hoverAt(NOTE, "Mains")).toBeUndefined();
});

test("A hazard that no list knows has the general sign", () => {
  const text = hoverAt("> **CAUTION: angry cat.** It bites. Feed it.", "CAUTION");
  expect(text).toContain("**angry cat** · sign W001");
});

test("The rank of an alert is not spoken of", () => {
  const text = hoverAt("> [!CAUTION]\n> The iron burns. Put it in its stand.", "[!CAUTION]");
  expect(text).toContain("W001");
  expect(text).not.toContain("ANSI");
});
