import { execFileSync } from "node:child_process";
import { expect, test } from "vitest";

test("The index, the README's table and the settings tell what the checks tell of themselves", () => {
  const said = execFileSync(process.execPath, ["scripts/docs.mjs", "--check"], {
    encoding: "utf8",
  });
  expect(said).toContain("up to date");
});
