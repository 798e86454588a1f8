/** The checks of figures beyond the examples on their pages. */
import { describe, expect, test } from "vitest";
import { applyFix, checkFixture, fixture } from "../fixture.ts";
import { kit, messages } from "./kit.ts";

const LIST = `
Designator,Quantity,Value,Tolerance
"R1, R2",2,10k,1 %
Q1,1,BC547,`;

const HEAD = "supply: { VCC: 13.8 V ± 10 % }\nfigures: { Iq: 45 mA ± 10 % }\n";

const found = (body: string, code: string, head = HEAD) => messages(kit(body, LIST, head), code);

/** The body after the first fix of each finding of the check. */
async function fixedBody(body: string, code: string, head = HEAD): Promise<string> {
  const text = kit(body, LIST, head);
  let { files } = fixture(text);
  const { diagnoses } = await checkFixture(text, code);
  for (const diagnosis of [...diagnoses].reverse()) {
    const [fix] = diagnosis.fixes();
    if (fix) files = applyFix(files, fix);
  }
  return files.get("guide.md")!.split("---\n\n")[1]!.trim();
}

describe("stale figures", () => {
  test("are written anew in the style of the author", async () => {
    const body = "1. {VCC * Iq = 0,54 W} {Iq * R1 = 1.2 kV} {2 * VCC * Iq = 9.99 W} {R1 / 2 = 4k7}";
    expect(await fixedBody(body, "stale-figure")).toBe(
      "1. {VCC * Iq = 0,62 W} {Iq * R1 = 0.45 kV} {2 * VCC * Iq = 1.24 W} {R1 / 2 = 5k0}",
    );
  });

  test("hold in quotes and behind escapes, at their own place", async () => {
    const body = "> The {VCC *\n> 1 A = 12 W} and {2 &#42; VCC = 20 V}.";
    expect(await fixedBody(body, "stale-figure")).toBe(
      "> The {VCC *\n> 1 A = 14 W} and {2 &#42; VCC = 28 V}.",
    );
  });

  test("in the front matter are fixed there", async () => {
    const other = kit("1. Solder.", LIST, 'figures: { P(R1): "(20 V)^2 / R1 = 3 mW" }\n');
    const stale = await checkFixture(other, "stale-figure");
    const after = applyFix(stale.files, stale.diagnoses[0]!.fixes()[0]!);
    expect(after.get("guide.md")).toContain('"(20 V)^2 / R1 = 40 mW"');
  });

  test("are safe to fix against an expression or the front matter, not among equals", async () => {
    const safe = async (body: string) => {
      const { diagnoses } = await checkFixture(kit(body, LIST, HEAD), "stale-figure");
      return diagnoses.flatMap((one) => one.fixes().map((fix) => fix.safe));
    };
    expect(await safe("1. {VCC = 12 V}")).toEqual([true]);
    expect(await safe("1. {2 * VCC = 24 V}")).toEqual([true]);
    expect(await safe("1. {x = 2 * 6 V} {x = 11 V}")).toEqual([true]);
    expect(await safe("1. {x = 12 V} {x = 11 V}")).toEqual([false]);
    expect(await safe("1. {R1 = 12k}")).toEqual([false]);
  });

  test("are none where nothing is known, or no digits are written", async () => {
    expect(
      await found("1. {2 * nothing = 4 V} {VCC = 6.9 V * 2} {R1 = VCC / Iq}", "stale-figure"),
    ).toEqual([]);
    expect(await found("1. {VCC = 7 V * 2}", "duplicate-figure")).toHaveLength(1);
  });

  test("are told in the author's unit as well, where the result is shown in another", async () => {
    const messages = await found(
      "1. {0.5 A * 1 h / 6 mA = 70 h} {3 * 25 mm = 70 mm}",
      "stale-figure",
    );
    expect(messages.map((one) => /comes to (.*?)\. Write/.exec(one)?.[1])).toEqual([
      "300\u202f000 s, or 83 h",
      "75 mm",
    ]);
  });

  test("of gauges are told by the gauge", async () => {
    expect(await found("1. {wire(L9) = AWG 24} {wire(L9) = 0.51 mm}", "stale-figure")).toEqual([]);
    expect(await fixedBody("1. {wire(L9) = 0.4 mm * 1} {wire(L9) = AWG 24}", "stale-figure")).toBe(
      "1. {wire(L9) = 0.4 mm * 1} {wire(L9) = AWG 26}",
    );
  });
});

describe("names that nothing defines", () => {
  test("are told with what is near, as the guide stands", async () => {
    expect(await found("1. {2 * VC} {R22} {P(R1)} {wibble} {squirt(4)}", "unknown-name")).toEqual([
      "error: VC is no figure, no part of the list and no unit. Did you mean VCC?",
      "error: R22 is no figure, no part of the list and no unit. Did you mean R2?",
      expect.stringContaining("No figure gives P(R1). Define it: {P(R1) = …}"),
      expect.stringContaining("wibble is no figure, no part of the list and no unit. Define it"),
      expect.stringContaining("No figure gives squirt(4)"),
    ]);
  });

  test("are never taken for the figure's own name", async () => {
    const [message] = await found("1. {VCA = 2 * VC}", "unknown-name");
    expect(message).toContain("Did you mean VCC?");
    const [alone] = await found("1. {wibbles = 2 * wibble}", "unknown-name");
    expect(alone).toContain("Define it: {wibble = …}");
  });

  test("are replaced by the nearest", async () => {
    expect(await fixedBody("1. {2 * VC} {P(R1) = 1 W} {2 * P(R3)}", "unknown-name")).toBe(
      "1. {2 * VCC} {P(R1) = 1 W} {2 * P(R1)}",
    );
  });

  test("say nothing where a parts list could not be read", async () => {
    const text = kit("1. {2 * R77}", LIST).replace(
      "parts: parts.csv",
      "parts: [parts.csv, no.csv]",
    );
    expect(await messages(text, "unknown-name")).toEqual([]);
  });
});

describe("units", () => {
  test("belong to what a name is for", async () => {
    const body =
      "1. {P(R1) = 2 V} {V(Q1) = 3} {Tj(Q1) = 40 K} {torque(M3) = 5 N} {turns(L9) = 3 mm} {read I(Q1) < 2 V}";
    const clashes = await found(body, "unit-clash");
    expect(clashes).toHaveLength(6);
    expect(clashes[2]).toContain("Tj(Q1) is a junction temperature, so it is in °C; this is in K.");
    expect(
      await found("1. {torque(M3) = 5 kgf·cm} {P(R1) = 2 V·A} {hole(M3) = 0.13 in}", "unit-clash"),
    ).toEqual([]);
  });

  test("agree between a name's places and with the list", async () => {
    expect(await found("1. {VCC = 12 A} {R1 = 5 V} {read VCC = 3 A ± 5 %}", "unit-clash")).toEqual([
      "error: VCC is in V where it is defined, and in A here.",
      "error: The list gives R1 in Ω, and this is in V. Correct the one that is wrong.",
      "error: VCC is in V where it is defined, and in A here.",
    ]);
  });

  test("of the ends of a reading agree", async () => {
    expect(await found("1. {read V(Q1) = 5 V … 6 A}", "unit-clash")).toEqual([
      expect.stringContaining("The lower end is in V, but the upper one is in A"),
    ]);
    expect(await found("1. {read V(Q1) = 6 V … 5 V}", "figure-syntax")).toEqual([
      expect.stringContaining("From 6 V to 5 V it goes down".replaceAll(" V", "\u00a0V")),
    ]);
  });
});

describe("readings", () => {
  const divider = "{V(TP1) = VCC / 2}";

  test.each([
    ["{read V(TP1) = 6.9 V ± 5 %}", 0],
    ["{read V(TP1) = 7.5 V ± 5 %}", 1],
    ["{read V(TP1) = 9 V ± 5 %}", 1],
    ["{read V(TP1) < 7 V}", 0],
    ["{read V(TP1) < 6.5 V}", 1],
    ["{read V(TP1) > 8 V}", 1],
    ["{read V(TP1) > 6.9 V}", 0],
    ["{read V(TP1) = 5 V … 6.5 V}", 1],
    ["{read V(TP1) = VCC / 2 ± 0.1 V}", 0],
    ["{read V(TP2) = 1 V ± 5 %}", 0],
  ])("%s has %d findings where V(TP1) is computed", async (reading, count) => {
    expect(await found(`1. ${divider} ${reading}`, "reading-outside")).toHaveLength(count);
  });
});

test("a circle is told at each of its figures, with the way round", async () => {
  const fixtureText = kit("1. {a = b + 1}\n2. {b = 2 * c}\n3. {c = a / 3} {d = a}", LIST);
  const { found: all, diagnoses } = await checkFixture(fixtureText, "circular-figure");
  expect(all.map((one) => one.message.split(".")[0])).toEqual([
    "a depends on itself: a → b → c → a",
    "b depends on itself: b → c → a → b",
    "c depends on itself: c → a → b → c",
  ]);
  expect(diagnoses[0]!.related.map((one) => one.message)).toEqual([
    "b uses c here.",
    "c uses a here.",
  ]);
});

test("entries of the front matter that are no figures are told there", async () => {
  const head = 'figures: { "my power": 3 W, x: 1 = 2 = 3, y: 2 * (3, z: 1e400 V }\n';
  expect(await found("1. Solder.", "figure-syntax", head)).toEqual([
    expect.stringContaining("`my power` is no name of a figure"),
    expect.stringContaining("one = too many"),
    expect.stringContaining("A closing bracket is missing"),
    expect.stringContaining("too large"),
  ]);
});

test("what a wrong figure breaks elsewhere is not told again", async () => {
  const body = "1. {a = 1 V / 0} {b = 2 * a} {c = b + a}";
  expect(await found(body, "figure-syntax")).toHaveLength(1);
  expect(await found(body, "unknown-name")).toEqual([]);
  expect(await found(body, "unit-clash")).toEqual([]);
});
