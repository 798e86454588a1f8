/** Power is applied: what must come before, and what is but a remedy after. */
import { expect, test } from "vitest";
import { kit, messages } from "./kit.ts";

const LIST = `Designator,Quantity,Value,Height
J1,1,socket,11
`;

/** A first power-up with a remedy that looks for faults; `before` is a step of its own. */
const POWER_UP = {
  en: (before: string) => `## First power

${before}1. Set the current limit to 50 mA and fit [J1].
2. Switch the supply on.
3. Measure {read V(TP1) = 5 V ± 5 %}. If it is lower, switch off and look for a short circuit.`,
  fr: (before: string) => `## Première mise sous tension

${before}1. Réglez la limite de courant à 50 mA et soudez [J1].
2. Mettez l'alimentation sous tension.
3. Mesurez {read V(TP1) = 5 V ± 5 %}. S'il y a moins, coupez et cherchez un court-circuit.`,
};
const INSPECT = {
  en: "1. Look for solder bridges between the tracks.\n",
  fr: "1. Cherchez un court-circuit entre les pistes.\n",
};

test.each(["en", "fr"] as const)(
  "in %s, a look for faults if a reading is off is no inspection that comes too late",
  async (language) => {
    const found = (before: string, code: string) =>
      messages(kit(POWER_UP[language](before), LIST, `language: ${language}\n`), code);
    // Nothing is in the wrong order, but the inspection is missing.
    expect(await found("", "power-up-order")).toEqual([]);
    expect(await found("", "power-up-missing")).toMatchObject([
      expect.stringContaining("look for faults before it"),
    ]);
    expect(await found(INSPECT[language], "power-up-missing")).toEqual([]);
    expect(await found(INSPECT[language], "reading-remedy")).toEqual([]);
  },
);

test.each([
  ["en", "4. Look for solder bridges between the tracks.\n"],
  ["fr", "4. Cherchez un court-circuit entre les pistes.\n"],
] as const)("in %s, one that is asked for after the power is too late", async (language, late) => {
  const body = `${POWER_UP[language]("")}\n${late}`;
  expect(
    await messages(kit(body, LIST, `language: ${language}\n`), "power-up-order"),
  ).toMatchObject([expect.stringContaining("looks for faults")]);
});
