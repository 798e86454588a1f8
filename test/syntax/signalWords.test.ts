import { describe, expect, test } from "vitest";
import { parseMarkdown } from "../../server/src/syntax/markdown.ts";
import { readSignal } from "../../server/src/syntax/signalWords.ts";
import { NO_LABELS } from "./markdownTrees.ts";

describe("The bold opening of a hazard note", () => {
  // Signal words after ANSI Z535.6 and ISO 3864-2; the other languages' are common practice.
  test.each([
    ["WARNING: electric shock.", "WARNING", "electric shock"],
    ["DANGER – mains voltage!", "DANGER", "mains voltage"],
    ["  CAUTION :  hot surface", "CAUTION", "hot surface"],
    ["NOTICE. static: discharge..", "NOTICE", "static: discharge"],
    ["LET OP: verkeerde polariteit", "NOTICE", "verkeerde polariteit"],
    ["WARNING", "WARNING", ""],
    ["WARNING:", "WARNING", ""],
  ])("%j is %s, of %j", (opening, signal, hazard) => {
    expect(readSignal(opening)).toMatchObject({ signal, hazard });
  });

  test.each(["", "Warning: x", "WARNING electric shock", "READ THIS: first", "WARNINGS: x"])(
    "%j is none",
    (opening) => {
      expect(readSignal(opening)).toBeUndefined();
    },
  );
});

describe("Floods take no time", () => {
  const cost = (work: () => void) => {
    const start = process.cpuUsage();
    work();
    return process.cpuUsage(start).user / 1000;
  };

  // Linear work takes a few milliseconds; expressions that read on from each sign took minutes.
  test.each([
    ["blanks", `${" ".repeat(50_000)}x`],
    ["blanks behind a signal word", `WARNING${" ".repeat(50_000)}x`],
    ["stops", `WARNING: ${".".repeat(50_000)}x`],
  ])("of %s in an opening", (_, opening) => {
    expect(cost(() => readSignal(opening))).toBeLessThan(1000);
  });

  test("of letters in brackets", () => {
    const text = `[${"Ω".repeat(1900)}\u00a7]\n\n`.repeat(200);
    expect(cost(() => parseMarkdown(text, NO_LABELS))).toBeLessThan(4000);
  });
});
