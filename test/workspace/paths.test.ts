import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  canonicalUri,
  isInside,
  missingFile,
  resolveReference,
} from "../../server/src/workspace/paths.ts";

const guide = "file:///home/ada/kits/heron/guide/guide.md";
const kits = { folders: ["file:///home/ada/kits"], outsideAllowed: false };

function uriOf(reference: string, reach = kits, base = guide): string {
  const resolved = resolveReference(base, reference, reach);
  return "uri" in resolved ? resolved.uri : `refused: ${resolved.problem}`;
}

describe("a reference is a path from the guide's folder", () => {
  test.each([
    ["list.csv", "file:///home/ada/kits/heron/guide/list.csv"],
    ["./list.csv", "file:///home/ada/kits/heron/guide/list.csv"],
    ["../list.csv", "file:///home/ada/kits/heron/list.csv"],
    ["a/../b/list.csv", "file:///home/ada/kits/heron/guide/b/list.csv"],
    ["/home/ada/kits/list.csv", "file:///home/ada/kits/list.csv"],
    ["my list.csv", "file:///home/ada/kits/heron/guide/my%20list.csv"],
    ["my%20list.csv", "file:///home/ada/kits/heron/guide/my%2520list.csv"],
    ["50%.csv", "file:///home/ada/kits/heron/guide/50%25.csv"],
    ["rev#2?.csv", "file:///home/ada/kits/heron/guide/rev%232%3F.csv"],
    ["Stückliste.csv", "file:///home/ada/kits/heron/guide/St%C3%BCckliste.csv"],
  ])("%s", (reference, uri) => {
    expect(uriOf(reference)).toBe(uri);
  });

  test("on a drive, with its letter in either case", () => {
    const reach = { folders: ["file:///C:/kits"], outsideAllowed: false };
    expect(uriOf("list.csv", reach, "file:///c%3A/kits/guide.md")).toBe(
      "file:///c%3A/kits/list.csv",
    );
    expect(uriOf("C:/kits/list.csv", reach, "file:///c%3A/kits/guide.md")).toBe(
      "file:///c%3A/kits/list.csv",
    );
    expect(uriOf("D:/list.csv", reach, "file:///c%3A/kits/guide.md")).toMatch(/^refused/);
  });

  test("in a workspace that is not on disk", () => {
    const reach = { folders: ["vscode-vfs://github/ada/kits"], outsideAllowed: false };
    const base = "vscode-vfs://github/ada/kits/guide.md";
    expect(uriOf("../kits/list.csv", reach, base)).toBe("vscode-vfs://github/ada/kits/list.csv");
    expect(uriOf("../other/list.csv", reach, base)).toMatch(/^refused/);
  });
});

describe("a reference that leads out is refused", () => {
  test.each([
    "../../../outside.csv",
    "/etc/passwd",
    "../../../kits2/list.csv",
    "../../../../../../../x",
  ])("%s", (reference) => {
    expect(uriOf(reference)).toMatch(/^refused: .* lies outside the folder that is open/);
    expect(uriOf(reference, { ...kits, outsideAllowed: true })).toMatch(/^file:/);
  });

  test("where no folder is open, out of the guide's own folder", () => {
    const none = { folders: [], outsideAllowed: false };
    expect(uriOf("sub/list.csv", none)).toMatch(/^file:/);
    expect(uriOf("../list.csv", none)).toMatch(/^refused/);
  });

  test("an encoded way out is no way out", () => {
    expect(uriOf("%2e%2e/%2e%2e/%2e%2e/x.csv")).toBe(
      "file:///home/ada/kits/heron/guide/%252e%252e/%252e%252e/%252e%252e/x.csv",
    );
  });

  test("whatever the reference, the file lies inside or is refused", () => {
    const piece = fc.constantFrom(
      "..",
      ".",
      "a",
      "/",
      "//",
      "\\",
      "%2e",
      "C:",
      " ",
      "#",
      "?",
      "é",
      "\0",
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 12 }), (pieces) => {
        const resolved = resolveReference(guide, pieces.join(""), kits);
        if ("uri" in resolved) {
          expect(isInside(resolved.uri, kits.folders[0]!)).toBe(true);
          // Outside source: the WHATWG URL parser sees the same path.
          expect(new URL(resolved.uri).pathname).toMatch(/^\/home\/ada\/kits\//);
        } else expect(resolved.problem).not.toBe("");
      }),
      { numRuns: 1000 },
    );
  });
});

describe("a reference that is no path is explained", () => {
  test.each([
    "https://example.org/list.csv",
    "file:///etc/passwd",
    "data:text/csv,R1",
    "HTTP://X/y",
  ])("%s is an address", (reference) => {
    expect(uriOf(reference, { ...kits, outsideAllowed: true })).toMatch(/is an address/);
  });

  test("backslashes, with what to write instead", () => {
    expect(resolveReference(guide, "..\\lists\\a.csv", kits)).toEqual({
      problem: expect.stringContaining("backslashes"),
      suggestion: "../lists/a.csv",
    });
  });

  test.each(["", " ", ".", "..", "lists/", "a\0b", "a\nb", "a\ud83d.csv"])(
    "%j names no file",
    (reference) => {
      expect(uriOf(reference)).toMatch(/^refused: /);
    },
  );
});

test("a missing file's message offers the space for %20", () => {
  expect(missingFile("my%20list.csv")).toContain("`my list.csv`");
  expect(missingFile("list.csv")).not.toContain("space");
});

test("URIs are spelt one way, whatever the editor sent", () => {
  expect(canonicalUri("file:///C:/a b/ü.md")).toBe(canonicalUri("file:///c%3A/a%20b/%C3%BC.md"));
});
