/** What the extension tells the editor of itself. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";

const { capabilities } = JSON.parse(
  readFileSync(join(import.meta.dirname, "../../package.json"), "utf8"),
);

test("a folder that is not trusted cannot have files outside it read", () => {
  const { supported, restrictedConfigurations } = capabilities.untrustedWorkspaces;
  expect(restrictedConfigurations).toContain("kitquill.listsOutsideWorkspace");
  // The editor heeds the restrictions of a limited extension only.
  expect(supported).toBe("limited");
});
