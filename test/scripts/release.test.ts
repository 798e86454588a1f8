/** What `npm run release` checks before a version goes out. */
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import {
  changeLogFaults,
  iconFaults,
  licenceFaults,
  lockFaults,
  manifestFaults,
  ownersFaults,
} from "../../scripts/releaseChecks.mjs";

const ROOT = join(import.meta.dirname, "../..");
const text = (path: string) => readFileSync(join(ROOT, path), "utf8");
const MANIFEST = JSON.parse(text("package.json"));
const isThere = (path: string) => existsSync(join(ROOT, path));

describe("the manifest", () => {
  test("of this version is in order", () => {
    expect(manifestFaults(MANIFEST, isThere)).toEqual([]);
  });

  test.each([
    ["a version of two numbers", { version: "1.0" }, "version `1.0`"],
    ["no name to show", { displayName: "" }, "displayName"],
    ["no description", { description: undefined }, "description"],
    ["no publisher", { publisher: undefined }, "publisher"],
    ["no licence", { license: undefined }, "licence"],
    ["no categories", { categories: [] }, "categories"],
    ["a category of its own making", { categories: ["Kits"] }, "category Kits"],
    ["no keywords", { keywords: undefined }, "keywords"],
    ["too many keywords", { keywords: new Array(31).fill("kit") }, "more than 30 keywords"],
    ["no walkthrough", { contributes: {} }, "walkthrough"],
    [
      "a walkthrough without its page",
      { contributes: { walkthroughs: [{ steps: [{ media: { markdown: "media/gone.md" } }] }] } },
      "media/gone.md",
    ],
  ])("with %s is not", (_what, change, fault) => {
    expect(manifestFaults({ ...MANIFEST, ...change }, isThere)).toEqual([
      expect.stringContaining(fault),
    ]);
  });

  test("must say where the sources are before it goes out", () => {
    const url = "git+https://example.org/kitquill.git";
    expect(ownersFaults({ repository: { type: "git", url } })).toEqual([]);
    expect(ownersFaults({ repository: "https://example.org/kitquill" })).toEqual([]);
    expect(ownersFaults({})).toEqual([expect.stringContaining("repository")]);
    expect(ownersFaults({ repository: "kitquill" })).toHaveLength(1);
  });
});

describe("the icon", () => {
  const icon = readFileSync(join(ROOT, MANIFEST.icon));

  test("of this version is in order", () => expect(iconFaults(icon)).toEqual([]));

  test("is a PNG", () => {
    expect(iconFaults(Buffer.from("<svg/>"))).toEqual(["the icon is no PNG"]);
  });

  test.each([
    ["square", 256, 255],
    ["large enough", 96, 96],
  ])("is %s", (_what, width, height) => {
    const other = Buffer.from(icon);
    other.writeUInt32BE(width, 16);
    other.writeUInt32BE(height, 20);
    expect(iconFaults(other)).toEqual([expect.stringContaining(`${width} × ${height}`)]);
  });
});

describe("the change log", () => {
  test("of this version is in order", () => {
    expect(changeLogFaults(text("CHANGELOG.md"), MANIFEST.version)).toEqual([]);
  });

  test.each([
    ["begins with another version", "# Changes\n\n## 0.2.0\n\n- Much.\n", "`0.2.0`"],
    ["has a version that only begins alike", "# Changes\n\n## 0.1.01\n\n- Much.\n", "`0.1.01`"],
    ["has no version", "# Changes\n", "not with 0.1.0"],
    ["says nothing of the version", "# Changes\n\n## 0.1.0\n\n## 0.0.9\n\n- Much.\n", "nothing"],
  ])("is not when it %s", (_what, log, fault) => {
    expect(changeLogFaults(log, "0.1.0")).toEqual([expect.stringContaining(fault)]);
  });

  test("may give the day behind the version", () => {
    expect(changeLogFaults("# Changes\n\n## 0.1.0 (2030-01-31)\n\n- Much.\n", "0.1.0")).toEqual([]);
  });
});

describe("the lock file", () => {
  test("is of the manifest's version", () => {
    expect(lockFaults(JSON.parse(text("package-lock.json")), MANIFEST.version)).toEqual([]);
    expect(
      lockFaults({ version: "0.0.9", packages: { "": { version: "0.1.0" } } }, "0.1.0"),
    ).toEqual([expect.stringContaining("0.0.9 and 0.1.0")]);
  });
});

describe("the list of licences", () => {
  const list = "These packages.\n\nsaxes 6.0.0\n\nISC License\n";
  const saxes = { name: "saxes", version: "6.0.0", license: "ISC" };

  test("holds every package whose code is packed", () => {
    expect(licenceFaults(list, [saxes])).toEqual([]);
    expect(licenceFaults(list, [saxes, { ...saxes, version: "6.0.1" }])).toEqual([
      "saxes 6.0.1 is not in the list of licences",
    ]);
  });

  test.each(["GPL-3.0", "SEE LICENSE IN FILE", undefined])("lets no %s pass unseen", (license) => {
    expect(licenceFaults(list, [{ ...saxes, license }])).toEqual([
      expect.stringContaining("must be looked at"),
    ]);
  });
});
