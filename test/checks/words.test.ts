import { describe, expect, test } from "vitest";
import { joinWords, lengthText, listNames } from "../../server/src/checks/words.ts";

const named = (...names: string[]) => names.map((name) => ({ name }));
const numbered = (letters: string, count: number) =>
  named(...Array.from({ length: count }, (_, i) => `${letters}${i * 2 + 1}`));

describe("Lists of parts in messages", () => {
  test("are sorted, and three in a row become a range", () => {
    expect(listNames(named("R7", "C3", "R2", "R1", "R3", "R4"))).toBe("C3, R1–R4 and R7");
  });

  test("keep two in a row apart", () => {
    expect(listNames(named("R2", "R1"))).toBe("R1 and R2");
  });

  test("keep boards, suffixes and odd names apart", () => {
    const parts = [
      { name: "R1", board: "main" },
      { name: "R2", board: "relay" },
      { name: "R3", board: "relay" },
      { name: "R4", board: "relay" },
      { name: "USB", board: "main" },
      { name: "Q1A", board: "main" },
    ];
    expect(listNames(parts)).toBe("main/Q1A, main/R1, main/USB and relay/R2–R4");
  });

  test("count what is beyond ten entries", () => {
    expect(listNames(numbered("R", 13))).toBe(
      "R1, R3, R5, R7, R9, R11, R13, R15, R17, R19 and 3 more",
    );
  });

  test("count every part, however many there are", () => {
    expect(listNames(numbered("C", 50_000))).toMatch(/^C1, .* and 49990 more$/);
  });
});

describe("Words", () => {
  test("are joined as in a sentence", () => {
    expect(joinWords(["R1"], "or")).toBe("R1");
    expect(joinWords(["R1", "R2", "R3"], "or")).toBe("R1, R2 or R3");
  });

  test("give lengths without rounding dirt", () => {
    expect(lengthText(0.1 + 0.2)).toBe("300 mm");
    expect(lengthText(0.8 + 0.8)).toBe("1.6 m");
  });
});
