/** Signal words and signs of hazards, and the words by which notes are known. */
import { describe, expect, test } from "vitest";
import { readWords } from "../../../server/src/model/wordReader.ts";
import { LANGUAGES } from "../../../server/src/text/language.ts";
import {
  HAZARDS,
  type Hazard,
  harmOf,
  signalsFor,
  signOf,
} from "../../../server/src/trade/hazards/hazards.ts";
import {
  hazardLexicon,
  hazardName,
  hazardNamed,
} from "../../../server/src/trade/hazards/lexicon.ts";
import { PRODUCT_STANDARDS } from "../../../server/src/trade/hazards/voltageLimits.ts";

// ANSI Z535.6 as a sign maker explains it, and ISO 3864-2 with its three levels: NOTICE is for
// damage without injury, CAUTION for minor or moderate, WARNING and DANGER for grave injury.
test("Signal words follow from what the hazard does", () => {
  expect(signalsFor("damage")).toEqual(["NOTICE"]);
  expect(signalsFor("injury")).toEqual(["CAUTION", "WARNING", "DANGER"]);
  expect(signalsFor("death")).toEqual(["WARNING", "DANGER"]);
});

// Referents of ISO 7010 as icon lists and their picture names give them.
test.each<[Hazard, string]>([
  ["electric shock", "W012"],
  ["hot surface", "W017"],
  ["fire", "W021"],
  ["optical radiation", "W027"],
  ["eye injury", "M004"],
])("%s has the sign %s", (hazard, code) => {
  expect(signOf(hazard, "WARNING")).toBe(code);
});

test("What is not in the list takes the general sign for its signal word", () => {
  expect(signOf(undefined, "WARNING")).toBe("W001");
  expect(signOf(undefined, "NOTICE")).toBe("M001");
});

// Shape and letter agree (ISO 7010): a mandatory sign orders, a warning warns of injury.
test("No hazard to things alone has a warning triangle", () => {
  for (const hazard of HAZARDS) {
    if (harmOf(hazard) === "damage") expect(signOf(hazard, "NOTICE")).toMatch(/^M/);
  }
});

describe.each([...LANGUAGES])("The words of %s", (language) => {
  test.each([...HAZARDS])("know %s by the name they write for it", (hazard) => {
    const words = readWords(hazardName(hazard, language), 0);
    expect(hazardName(hazard, language)).not.toContain("*");
    expect(hazardNamed(words, language)).toBe(hazard);
    expect([...hazardLexicon(language).hazardsIn(words)]).toEqual([hazard]);
  });
});

test("A name in another language than the guide's is known, too", () => {
  expect(hazardNamed(readWords("Stromschlag", 0), "en")).toBe("electric shock");
});

// IEC 62368-1 tables 4 and 5 (ES1) and IEC 61010-1 6.3 from memory of them; IEC 60335-1 8.1.4 as
// quoted in test reports; IEC 60065 as a maker's test instruction gives it.
test("Voltages that may be touched are those of the product standards", () => {
  expect(PRODUCT_STANDARDS["IEC 62368-1"]).toEqual({ dc: 60, acPeak: 42.4 });
  expect(PRODUCT_STANDARDS["IEC 61010-1"]).toEqual({ dc: 60, acPeak: 42.4 });
  expect(PRODUCT_STANDARDS["IEC 60335-1"]).toEqual({ dc: 42.4, acPeak: 42.4 });
  expect(PRODUCT_STANDARDS["IEC 60065"]).toEqual({ dc: 60, acPeak: 35 });
  // 30 V rms, the other figure of ES1, is the same limit.
  expect(30 * Math.SQRT2).toBeCloseTo(42.4, 1);
});
