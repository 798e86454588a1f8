/** The recipes are guides without any finding. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { checkFiles } from "../fixture.ts";
import { fencedBlocks } from "./page.ts";

const PAGE = readFileSync("server/docs/recipes.md", "utf8");

/** A guide with the lists that stand before it on the page. */
function recipes(): { title: string; files: Map<string, string> }[] {
  const found: { title: string; files: Map<string, string> }[] = [];
  let files = new Map<string, string>();
  for (const { language, name, text } of fencedBlocks(PAGE)) {
    files.set(name ?? (language === "csv" ? "parts.csv" : "guide.md"), text);
    if (language !== "markdown") continue;
    found.push({ title: /^title: (.+)$/m.exec(text)![1]!, files });
    files = new Map();
  }
  return found;
}

test("there are six recipes", () => expect(recipes()).toHaveLength(6));

test.each(recipes())("the recipe $title has no finding", async ({ files }) => {
  const { found } = await checkFiles(files);
  expect(
    found.map(({ file, line, code, message }) => `${file}:${line} ${code} ${message}`),
  ).toEqual([]);
});
