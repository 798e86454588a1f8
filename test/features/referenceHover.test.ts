/** Pointing at a reference to a step. */
import { expect, test } from "vitest";
import { hoverInGuide } from "../../server/src/features/hover.ts";
import { atCursor } from "./cursor.ts";

async function hoverAt(body: string) {
  const at = await atCursor(`---\nparts: parts.csv\n---\n\n## A\n\n${body}\n${LIST}`);
  return hoverInGuide(at.guide, at.uri, at.offset);
}

const LIST = "--- file: parts.csv\nDesignator,Value\nR1,1k";
const STEP = "1. Solder the *long* wire. [#wire]";

test("tells which step it leads to, and what is done there", async () => {
  const hover = await hoverAt(`${STEP}\n2. Look at [see: wi¦re].`);
  expect(hover!.markdown).toBe("**Step 1.1**\n\nSolder the \\*long\\* wire.");
});

test("nothing where no step has the label", async () => {
  expect(await hoverAt(`${STEP}\n2. Look at [see: wo¦od].`)).toBeUndefined();
});
