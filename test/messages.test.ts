/** All that Kitquill says speaks one language: what `npm run messages` prints, held to its rules. */
import { describe, expect, test } from "vitest";
import { collectMessages } from "../scripts/messages.mjs";
import { sayingsIn } from "../scripts/sayings.mjs";
import { CODES } from "../server/src/checks/codes.ts";

const groups = await collectMessages();
const all = [...groups.values()].flatMap((parts) => [...parts.values()].flat());
/** Without the names of things, which follow their own rules: code, and what is quoted. */
const words = all.map((text) => text.replaceAll(/`[^`]*`|"[^"]*"/g, "`…`"));

/** What no message says, and what it says instead. */
const RULES: readonly (readonly [string, RegExp])[] = [
  ["cries out", /\p{L}!(?: |$)/u],
  ["begs or is sorry", /\b(?:please(?! report)|sorry|oops)\b/i],
  ["blames: what is wrong is said in plain words", /\b(?:invalid|illegal|fatal|forbidden)\b/i],
  ["shortens a verb", /\b(?:can't|don't|doesn't|isn't|won't|it's|you're)\b/i],
  ["says behind for after", /\bbehind\b/],
  ["says mend for correct", /\bmend\b/i],
  ["says change for write, where a fix replaces a text", /^Change to\b/],
  ["calls the parts list something else", /\b(?:BOM|bill of materials)\b/i],
  ["calls a designator something else", /\b(?:refdes|reference designators?)\b/i],
  ["calls a finding something else", /\b(?:lint|diagnostics?|rule violation)\b/i],
  ["calls the builder something else", /\b(?:assemblers?|operators?|end users?)\b/i],
  ["spells as Americans do", /\b(?:color|center|gray|recogniz\w+|organiz\w+|polariz\w+)\b/i],
  ["writes three dots for an ellipsis", /\.\.\.(?!\.)/],
  ["has two blanks in a row", /\p{L} {2,}\p{L}/u],
];

describe("no message", () => {
  test.each(RULES)("%s", (_what, pattern) => {
    // What the help lays out in columns has blanks on purpose.
    const prose = words.filter((text) => !text.includes("\n"));
    expect(prose.filter((text) => pattern.test(text))).toEqual([]);
  });
});

test("a message of two sentences ends as a sentence does", () => {
  const sentences = words.filter((text) => /^[\p{Lu}…`].*\p{L}{3}\. \p{Lu}\p{L}+ /u.test(text));
  const open = sentences.filter((text) => !/[.:?)…`>]\s*$/.test(text));
  expect(sentences.length).toBeGreaterThan(150);
  expect(open).toEqual([]);
});

test("every check is in the list, at least with its summary", () => {
  const checks = groups.get("Findings, by check")!;
  expect(CODES.filter((code) => !checks.get(code)?.some((text) => text.endsWith(".")))).toEqual([]);
});

describe("a text is collected", () => {
  test.each([
    ["from a template, what is put in being left out", "Step § fits R1.", "Step … fits R1."],
    ["with both sides of a choice", '§{x ? "One" : "Two"} of them', "(One | Two) of them"],
    ["from within what is put in", '§{g("Read it again.")}:', "Read it again."],
  ])("%s", async (_how, written, text) => {
    const template = written.replaceAll(/§(?!\{)/g, "§{n}").replaceAll("§", "$");
    expect(await sayingsIn(`f(\`${template}\`)`)).toContain(text);
  });

  test("from a sum", async () => {
    expect(await sayingsIn('f("A list " + name)')).toEqual(["A list …"]);
  });

  test("but no path of an import, no word alone, no list of words and no markup", async () => {
    const source = `import x from "a file"; f("fitted", "a bc de".split(" "), "<p class='x'>a b</p>");`;
    expect(await sayingsIn(source)).toEqual([]);
  });
});
