/** Cells that list designators, in all the ways people write them. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { isDesignatorList, readDesignatorList } from "../../server/src/syntax/designatorList.ts";
import { MAX_IN_CELL } from "../../server/src/syntax/listedNames.ts";

const names = (text: string) =>
  readDesignatorList(text)
    .names.map(({ name }) => name)
    .join(" ");
const remarks = (text: string) =>
  readDesignatorList(text).remarks.map(({ start, end }) => text.slice(start, end));
const messages = (text: string) => readDesignatorList(text).problems.map(({ message }) => message);

describe("forms of lists and ranges", () => {
  // After ASME Y14.44-2008 2.1.3 (class letters, number, suffix letter); the ways of listing them
  // are common practice.
  test.each([
    ["R1", "R1"],
    ["R1,R2, R3", "R1 R2 R3"],
    ["R1;R2 ; R3", "R1 R2 R3"],
    ["R1 R2\tR3", "R1 R2 R3"],
    ["R1\nR2\r\nR3", "R1 R2 R3"],
    ["R1 & R2", "R1 R2"],
    ["R1 and R2", "R1 R2"],
    ["R1 und R2", "R1 R2"],
    ["R1 et R2", "R1 R2"],
    ["R1 y R2", "R1 R2"],
    ["R1 en R2", "R1 R2"],
    ["Q1/Q2", "Q1 Q2"],
    ["R1-R3 / R7 / C2", "R1 R2 R3 R7 C2"],
    ["C3/5/7", "C3 C5 C7"],
    ["U3A/B", "U3A U3B"],
    ["Q1+Q2", "Q1 Q2"],
    ["Q1 + Q2, Q3+Q4", "Q1 Q2 Q3 Q4"],
    ["C1,3,6-8", "C1 C3 C6 C7 C8"],
    ["C1, 3, 6–C8", "C1 C3 C6 C7 C8"],
    ["R1, C2, 4", "R1 C2 C4"],
    ["R01-R03, 05", "R01 R02 R03 R05"],
    ["R1-R4", "R1 R2 R3 R4"],
    ["R1–4", "R1 R2 R3 R4"],
    ["R1—R4", "R1 R2 R3 R4"],
    ["R1−R4", "R1 R2 R3 R4"],
    ["R1‑R4", "R1 R2 R3 R4"],
    ["R1~R4", "R1 R2 R3 R4"],
    ["R1…R4", "R1 R2 R3 R4"],
    ["R1..R4", "R1 R2 R3 R4"],
    ["R1...R4", "R1 R2 R3 R4"],
    ["R1 - R4", "R1 R2 R3 R4"],
    ["R1 -R4", "R1 R2 R3 R4"],
    ["R1- R4", "R1 R2 R3 R4"],
    ["R1 to R4", "R1 R2 R3 R4"],
    ["R1 through R4", "R1 R2 R3 R4"],
    ["R1 thru 4", "R1 R2 R3 R4"],
    ["R1 bis R4", "R1 R2 R3 R4"],
    ["R1 t/m R4", "R1 R2 R3 R4"],
    ["R1 à R4", "R1 R2 R3 R4"],
    ["R1toR4", "R1 R2 R3 R4"],
    ["R1 R3-R5 R9", "R1 R3 R4 R5 R9"],
    ["U3A-U3D", "U3A U3B U3C U3D"],
    ["U3A-D", "U3A U3B U3C U3D"],
    ["U3A, B", "U3A U3B"],
    ["r1-r3", "r1 r2 r3"],
    ["R1, R2,", "R1 R2"],
    [",R1,,R2", "R1 R2"],
    ["(R1, R2)", "R1 R2"],
    ["R1 (R2)", "R1 R2"],
    ["R1*, R2†", "R1 R2"],
    ["R 1, R 2", "R1 R2"],
    ["C 1–3, 5", "C1 C2 C3 C5"],
    ["BCD-IN1", "BCD-IN1"],
    ["U$2, U$3", "U$2 U$3"],
    ["Conn_01x04", "Conn_01x04"],
    ["Ü1", "Ü1"],
    ["R1，R2、R3；R4", "R1 R2 R3 R4"],
  ])("%j is %s", (text, expected) => {
    expect(names(text)).toBe(expected);
    expect(remarks(text)).toEqual([]);
    expect(messages(text)).toEqual([]);
    expect(isDesignatorList(text)).toBe(true);
  });

  test.each([
    ["ALARM", "ALARM"],
    ["USB, ICSP", "USB ICSP"],
    ["!RESET!", "!RESET!"],
    ["D+, D-", "D+ D-"],
    ["IN1-", "IN1-"],
  ])("%j is a word without a number, which tells no list", (text, expected) => {
    expect(names(text)).toBe(expected);
    expect(readDesignatorList(text).words).toBe(expected.split(" ").length);
    expect(isDesignatorList(text)).toBe(false);
  });

  test.each([
    ["R5 (optional)", "R5", ["optional"]],
    ["R5 see note", "R5", ["see note"]],
    ["R5, fit last", "R5", ["fit last"]],
    ["R1 10k", "R1", ["10k"]],
    ["R1   10k   0207", "R1", ["10k   0207"]],
    ["R1/0207", "", ["R1/0207"]],
    ["Box", "", ["Box"]],
    ["REF**, REF**", "", ["REF**", "REF**"]],
    ["R?", "", ["R?"]],
    ["100n", "", ["100n"]],
  ])("%j holds a remark", (text, expected, remark) => {
    expect(names(text)).toBe(expected);
    expect(remarks(text)).toEqual(remark);
    expect(isDesignatorList(text)).toBe(false);
  });

  test("empty items are counted, and a comma at the end goes on", () => {
    expect(readDesignatorList(",,,")).toMatchObject({ names: [], empty: 4, goesOn: false });
    expect(readDesignatorList("R1, R2,")).toMatchObject({ goesOn: true });
    expect(readDesignatorList("R1, R2")).toMatchObject({ goesOn: false, empty: 0 });
  });
});

describe("problems", () => {
  test("a range of one part is read and told", () => {
    expect(names("J1-1")).toBe("J1");
    expect(messages("J1-1")).toEqual([expect.stringContaining("J1-1 is a range of one part")]);
  });

  test("a range that runs backwards is read and told", () => {
    expect(names("R7-R4")).toBe("R4 R5 R6 R7");
    expect(messages("R7-R4")).toEqual([expect.stringContaining("runs backwards")]);
  });

  test("a range of two classes is two parts and told", () => {
    expect(names("R1-C4")).toBe("R1 C4");
    expect(messages("R1-C4")).toEqual([expect.stringContaining("not of one series")]);
    // Such a number counts the units of one chip.
    expect(names("TL074-2")).toBe("TL074 TL2");
    expect(names("R010-R008")).toBe("R008 R009 R010");
  });

  test("a range beyond the limit is told and costs nothing", () => {
    expect(names("R1-R999999")).toBe("");
    expect(messages("R1-R999999")).toEqual([expect.stringContaining("names 999999 parts")]);
  });

  test("a cell beyond the limit is read that far and told once", () => {
    const text = "R1-R9000, C1-C9000, L1, L2";
    const list = readDesignatorList(text);
    expect(list.names).toHaveLength(MAX_IN_CELL);
    expect(list.problems).toHaveLength(1);
    expect(list.problems[0]!.message).toContain("Split the line into several");
  });

  test("a cell of more than 200,000 characters is not read to its end, and says so", () => {
    const list = readDesignatorList("see the note ".repeat(20_000));
    expect(list.problems).toEqual([
      { span: { start: 200_000, end: 260_000 }, message: expect.stringContaining("200000") },
    ]);
  });
});

describe("any text", () => {
  const piece = fc.constantFrom(
    ..."R1 R C3 12 007 3A B U$2 Q1/Q2 t/m REF** R? 10k ALARM D+ ( ) [ ] , ; & - – … .. / + * † ! to bis and".split(
      " ",
    ),
    " ",
    "\n",
    ", ",
    "😀",
    "R99999",
    "\u00a0",
  );
  const any = fc.array(piece, { maxLength: 14 }).map((pieces) => pieces.join(""));

  test("is read without an error, and everything stands inside it", () => {
    fc.assert(
      fc.property(any, (text) => {
        const list = readDesignatorList(text);
        const spans = [...list.names, ...list.problems].map(({ span }) => span);
        for (const { start, end } of [...spans, ...list.remarks]) {
          expect(start).toBeGreaterThanOrEqual(0);
          expect(end).toBeLessThanOrEqual(text.length);
          expect(start).toBeLessThan(end);
        }
        for (const remark of list.remarks) {
          expect(text.slice(remark.start, remark.end)).toMatch(/^\S(?:.*\S)?$/su);
        }
      }),
      { numRuns: 5_000 },
    );
  });

  test("each name ends with the number at its span, unless it is of a range", () => {
    fc.assert(
      fc.property(any, (text) => {
        for (const { name, span } of readDesignatorList(text).names) {
          const shown = text.slice(span.start, span.end);
          const isRange = /[-–…~]|\.\.|to|bis|t\/m|\s/.test(shown);
          if (!isRange) expect(name.endsWith(shown), `${text}: ${name} at ${shown}`).toBe(true);
        }
      }),
      { numRuns: 5_000 },
    );
  });

  test("designators however listed come back in order", () => {
    const designator = fc
      .tuple(fc.constantFrom("R", "C", "U", "LED"), fc.integer({ min: 1, max: 999 }))
      .map(([letters, number]) => letters + number);
    const separator = fc.constantFrom(",", ", ", " ", ";", " / ".trim(), " & ", "\n", " and ");
    fc.assert(
      fc.property(fc.array(designator, { minLength: 1 }), separator, (all, between) => {
        expect(names(all.join(between))).toBe(all.join(" "));
      }),
    );
  });
});
