import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { CHECKS } from "../../server/src/checks/all.ts";
import { CODES, LIMITED } from "../../server/src/checks/codes.ts";

const FOLDER = "server/src/checks";

test("The codes are those of the checks, each in a file of its name", () => {
  const files = readdirSync(FOLDER).filter((name) =>
    /^export const check: Check = /m.test(
      name.endsWith(".ts") ? readFileSync(`${FOLDER}/${name}`, "utf8") : "",
    ),
  );
  expect(files.map((name) => name.slice(0, -3)).sort()).toEqual([...CODES].sort());
  expect(CHECKS.map((check) => check.meta.code).sort()).toEqual([...CODES].sort());
});

test("Those with a limit are told", () => {
  const limited = CHECKS.filter(({ meta }) => meta.limit).map(({ meta }) => meta.code);
  expect(limited.sort()).toEqual([...LIMITED].sort());
});
