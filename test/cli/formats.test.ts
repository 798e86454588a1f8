import { createRequire } from "node:module";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { formatGithub } from "../../server/src/cli/formats/github.ts";
import { formatJson } from "../../server/src/cli/formats/json.ts";
import { formatSarif } from "../../server/src/cli/formats/sarif.ts";
import { formatText } from "../../server/src/cli/formats/text.ts";
import type { ReportedFinding } from "../../server/src/cli/report.ts";
import { finding, painted, plain, report } from "./reports.ts";

const related = {
  message: "It is fitted here first.",
  file: "kits/heron/page 2.md",
  line: 3,
  column: 4,
  endLine: 3,
  endColumn: 6,
};

describe("text", () => {
  test("shows place, severity, code, message, the source line with carets, and a summary", () => {
    const text = formatText(
      report(
        finding({ column: 8, endColumn: 15, related: [related] }),
        finding({ severity: "warning", line: 14, sourceLine: "" }),
        finding({
          file: "kits/heron/list.csv",
          severity: "information",
          line: 2,
          endLine: 2,
          column: 1,
          endColumn: 3,
          sourceLine: "R7,10k",
        }),
      ),
      plain,
    );
    expect(text).toBe(
      `kits/heron/guide.md:12:8 error duplicate-part R7 is fitted twice.
  12 | 1. Fit [R5–R8] flat.
     |        ^^^^^^^
  see kits/heron/page 2.md:3:4 It is fitted here first.
kits/heron/guide.md:14:9 warning duplicate-part R7 is fitted twice.

kits/heron/list.csv:2:1 info duplicate-part R7 is fitted twice.
  2 | R7,10k
    | ^^

1 guide checked, 5 steps: 1 error, 1 warning, 1 note.
`,
    );
  });

  test("says so when nothing is found, and how many were fixed", () => {
    expect(formatText(report(), plain)).toBe("1 guide checked, 5 steps: nothing found.\n");
    expect(formatText({ ...report(), fixed: 2 }, plain)).toBe(
      "1 guide checked, 5 steps: nothing found. 2 fixed.\n",
    );
    expect(formatText({ guides: [], problems: ["x"], fixed: undefined }, plain)).toBe("");
  });

  test("paints severities", () => {
    expect(formatText(report(finding()), painted)).toContain("<red:error>");
  });

  test("places carets under tabs, wide letters and pictographs", () => {
    const carets = (sourceLine: string, column: number, endColumn: number) =>
      formatText(report(finding({ line: 1, endLine: 1, column, endColumn, sourceLine })), plain)
        .split("\n")[2]!
        .slice("    | ".length);
    expect(carets("\t1. [R1]", 5, 9)).toBe("\t   ^^^^");
    expect(carets("部品 [R1]", 4, 8)).toBe("     ^^^^");
    expect(carets("🔧 [R1]", 4, 8)).toBe("   ^^^^");
    expect(carets("e\u0301 [R1]", 4, 8)).toBe("  ^^^^");
    expect(carets("[R1]", 5, 5)).toBe("    ^");
  });

  test("cuts a long line to the part around the place", () => {
    const sourceLine = `${"x".repeat(500)}[R1]${"y".repeat(500)}`;
    const text = formatText(report(finding({ column: 501, endColumn: 505, sourceLine })), plain);
    const [, source, carets] = text.split("\n");
    expect(source!.length).toBeLessThan(120);
    expect(source!.slice(carets!.indexOf("^"), carets!.lastIndexOf("^") + 1)).toBe("[R1]");
  });

  test("lets no file command the terminal", () => {
    const text = formatText(
      report(finding({ message: "\u001b[2J", sourceLine: "\u001b]0;x\u0007", file: "\u009b1m" })),
      plain,
    );
    expect(text).not.toMatch(/[\u001b\u0007\u009b]/);
  });

  test("tells what two guides share once", () => {
    const twice = report(finding());
    const both = { ...twice, guides: [...twice.guides, ...twice.guides] };
    expect(formatText(both, plain).match(/duplicate-part/g)).toHaveLength(1);
    expect(formatText(both, plain)).toContain("2 guides checked, 10 steps: 1 error.");
  });
});

test("JSON has the agreed fields in the agreed order", () => {
  const json = formatJson(report(finding({ fixable: true, related: [related] })));
  expect(JSON.parse(json)).toEqual({
    files: [
      {
        file: "kits/heron/guide.md",
        steps: 5,
        parts: { listed: 3, fitted: 2, missing: 1 },
        findings: [
          {
            code: "duplicate-part",
            severity: "error",
            message: "R7 is fitted twice.",
            file: "kits/heron/guide.md",
            line: 12,
            column: 9,
            endLine: 12,
            endColumn: 16,
            fixable: true,
            related: [related],
          },
        ],
      },
    ],
    summary: { files: 1, errors: 1, warnings: 0 },
  });
  expect(Object.keys(JSON.parse(json).files[0].findings[0])).toEqual(
    "code severity message file line column endLine endColumn fixable related".split(" "),
  );
});

describe("GitHub workflow commands", () => {
  test("name place, title and message", () => {
    expect(formatGithub(report(finding()))).toBe(
      "::error file=kits/heron/guide.md,line=12,endLine=12,col=9,endColumn=16,title=duplicate-part::R7 is fitted twice.\n" +
        "1 guide checked, 5 steps: 1 error.\n",
    );
  });

  // Source of the escapes: actions/toolkit, packages/core/src/command.ts (escapeData, escapeProperty).
  test("escape what would end them", () => {
    const [line] = formatGithub(
      report(
        finding({ severity: "hint", file: "a,b:c%.md", endLine: 13, message: "50 %\r\nnext::x" }),
      ),
    ).split("\n");
    expect(line).toBe(
      "::notice file=a%2Cb%3Ac%25.md,line=12,endLine=13,title=duplicate-part::50 %25%0Anext::x",
    );
  });

  test("are one line each, whatever the message", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), fc.string(), (message, file) => {
        const lines = formatGithub(report(finding({ message, file })))
          .trimEnd()
          .split(/\r\n|\n|\r/);
        expect(lines).toHaveLength(2);
        expect(lines[0]!.split("::").length).toBeGreaterThanOrEqual(3);
      }),
    );
  });
});

describe("SARIF", () => {
  // Outside source: the SARIF 2.1.0 schema (draft 04) as Microsoft publishes it with its own validator.
  const require = createRequire(
    createRequire(import.meta.url).resolve("@microsoft/jest-sarif/package.json"),
  );
  const ajv = new (require("ajv"))({ schemaId: "auto", allErrors: true });
  ajv.addMetaSchema(require("ajv/lib/refs/json-schema-draft-04.json"));
  const validate = ajv.compile(require("@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json"));

  function valid(sarif: string) {
    const log = JSON.parse(sarif);
    validate(log);
    expect(validate.errors ?? []).toEqual([]);
    return log.runs[0];
  }

  test("is valid, with rules, places and related places", () => {
    const run = valid(
      formatSarif({
        ...report(
          finding({ related: [related] }),
          finding({ code: "more-findings", severity: "information" }),
        ),
        problems: ["There is no file."],
      }),
    );
    expect(run.columnKind).toBe("utf16CodeUnits");
    expect(run.invocations[0].executionSuccessful).toBe(false);
    const [first, second] = run.results;
    expect(first.level).toBe("error");
    expect(first.locations[0].physicalLocation).toEqual({
      artifactLocation: { uri: "kits/heron/guide.md" },
      region: { startLine: 12, startColumn: 9, endLine: 12, endColumn: 16 },
    });
    expect(first.relatedLocations[0].physicalLocation.artifactLocation.uri).toBe(
      "kits/heron/page%202.md",
    );
    expect(second.level).toBe("note");
    for (const one of run.results) {
      const rule = run.tool.driver.rules[one.ruleIndex];
      expect(rule.id).toBe(one.ruleId);
      expect(rule.help.text).not.toBe("");
    }
  });

  test("is valid when nothing is found", () => {
    expect(valid(formatSarif(report())).results).toEqual([]);
  });

  test("stays valid for any names and messages", () => {
    const place = fc.record({
      file: fc
        .string({ unit: "binary", minLength: 1 })
        .map((name) => name.replace(/[\uD800-\uDFFF]/gu, "?")),
      message: fc.string({ unit: "binary", minLength: 1 }),
      code: fc.constantFrom("duplicate-part", "unknown-part", "more-findings"),
      severity: fc.constantFrom("error", "warning", "information", "hint"),
    });
    fc.assert(
      fc.property(fc.array(place, { maxLength: 3 }), (places) => {
        valid(
          formatSarif(report(...places.map((one) => finding(one as Partial<ReportedFinding>)))),
        );
      }),
      { numRuns: 50 },
    );
  });
});
