/** The figures of a guide as a whole: names, definitions, parts, boards, circles, and edits. */
import { describe, expect, test } from "vitest";
import { Followed } from "./sheet.ts";

describe("names", () => {
  test("mean the front matter first, then an expression, then a plain quantity, then a reading", async () => {
    const one = await Followed.open(
      "1. {a = 5 V} {a = 2 * 3 V} {VCC = 5 V} {b = 1 V} {b = 2 V} {read c = 1 V ± 50 %} {c}",
      "supply: { VCC: 12 V ± 10 % }\n",
    );
    expect(one.figures()).toEqual([
      "VCC: 12 V [10.8 V … 13.2 V] definition",
      "a: 5 V [5 V] stated",
      "a: 6 V [6 V] definition",
      "VCC: 5 V [5 V] stated",
      "b: 1 V [1 V] definition",
      "b: 2 V [2 V] stated",
      "c: 1 V [0.5 V … 1.5 V] reading",
      "-: 1 V [0.5 V … 1.5 V] sum",
    ]);
  });

  test("are the same however their subjects are written", async () => {
    const one = await Followed.open(
      "1. {P(R3) = 1 W} {2 * P( r3 )} {x(somewhere) = 2} {x( SOMEWHERE )}",
    );
    expect(one.figures().slice(1)).toEqual([
      "-: 2 W [2 W] sum",
      "x(somewhere): 2 [2] definition",
      "-: 2 [2] sum",
    ]);
  });

  test("are listed parts, constants and units where no figure has them", async () => {
    const one = await Followed.open(
      "1. {R1 + R2} {R3} {C1} {C2} {R(R3)} {C(C1)} {L(L1)} {2 * pi} {10 V / A} {Q1} {L(R1)}",
    );
    expect(one.figures()).toEqual([
      "-: 20 kΩ [19.8 kΩ … 20.2 kΩ] sum",
      "-: 4.7 kΩ [4.7 kΩ] sum",
      "-: 100 µF [80 µF … 180 µF] sum",
      "-: 4.7 pF [4.45 pF … 4.95 pF] sum",
      "-: 4.7 kΩ [4.7 kΩ] sum",
      "-: 100 µF [80 µF … 180 µF] sum",
      "-: 2.5 µH [2.25 µH … 2.75 µH] sum",
      "-: 6.28319 [6.28319] sum",
      "-: 10 Ω [10 Ω] sum",
      "-: ! form sum",
      "-: ! name sum",
    ]);
  });

  test("mean the part of the board in force", async () => {
    const one = await Followed.open(
      "## A\n\n1. {R1} {relay/R1} {P(R1) = 1 W}\n\n## B\n\n<!-- board relay -->\n\n1. {R1} {main/R1} {P(R1)} {P(main/R1)} {P(R1) = 2 * 1 W}",
    );
    expect(one.figures()).toEqual([
      "-: 10 kΩ [9.9 kΩ … 10.1 kΩ] sum",
      "-: 470 Ω [446.5 Ω … 493.5 Ω] sum",
      "P(R1): 1 W [1 W] definition",
      "-: 470 Ω [446.5 Ω … 493.5 Ω] sum",
      "-: 10 kΩ [9.9 kΩ … 10.1 kΩ] sum",
      "-: 2 W [2 W] sum",
      "-: 1 W [1 W] sum",
      "P(R1): 2 W [2 W] definition",
    ]);
  });

  test("of functions are calls with what they should give", async () => {
    const one = await Followed.open("1. {clearanceHole(M3) = 3.4 mm} {hole(M3) = 3.5 mm}");
    expect(one.figures()).toEqual([
      "-: 3.4 mm [3.4 mm] sum",
      "hole(M3): 3.5 mm [3.5 mm] definition",
    ]);
    const [call] = one.guide.figures.all();
    expect(call!.stated!.value!.nominal).toBeCloseTo(3.4e-3);
  });

  test("give an input once, whoever uses it", async () => {
    const one = await Followed.open(
      "1. {a = R1 * 1 mA} {b = R1 * 1 mA} {a - b} {R1 - R1} {VCC - VCC} {x = 5 V ± 1 V} {y = 5 V ± 1 V} {x - y}",
      "supply: { VCC: 12 V ± 10 % }\n",
    );
    expect(one.figures().filter((line) => line.startsWith("-"))).toEqual([
      "-: 0 V [0 V] sum",
      "-: 0 Ω [0 Ω] sum",
      "-: 0 V [0 V] sum",
      "-: 0 V [−2 V … 2 V] sum",
    ]);
  });
});

describe("circles", () => {
  test("are told apart from what only depends on them", async () => {
    const one = await Followed.open("1. {a = b + 1} {b = c * 2} {c = a / 3} {d = a} {e = e}");
    expect(one.figures()).toEqual([
      "a: ! circle definition",
      "b: ! circle definition",
      "c: ! circle definition",
      "d: ! waits definition",
      "e: ! circle definition",
    ]);
    const way = (name: string) =>
      one.guide.figures
        .circle(one.guide.figures.named(name)!)
        .map((figure) => figure.figure.name!.text)
        .join(" ");
    expect(way("a")).toBe("a b c a");
    expect(way("c")).toBe("c a b c");
    expect(way("e")).toBe("e e");
    await one.replace("{c = a / 3}", "{c = 1}");
    expect(one.figures().slice(0, 4)).toEqual([
      "a: 3 [3] definition",
      "b: 2 [2] definition",
      "c: 1 [1] definition",
      "d: 3 [3] definition",
    ]);
  });
});

describe("after an edit", () => {
  const chain = Array.from({ length: 20 }, (_, i) => `{s${i + 1} = s${i} * 2}`).join("\n\n1. ");
  const others = Array.from({ length: 30 }, (_, i) => `{o${i} = 2 * ${i} V}`).join("\n\n1. ");

  test("all follows that uses what has changed, through any number of figures", async () => {
    const one = await Followed.open(`1. {s0 = 1 mV}\n\n1. ${chain}\n\n1. ${others}`);
    expect(one.value("s20")).toBe("1.05 kV");
    await one.replace("1 mV", "2 mV ± 10 %");
    expect(one.value("s20")).toBe("1.88 kV … 2.31 kV");
    await one.replace("{s10 = s9 * 2}", "{s10 = s9 * 1}");
    expect(one.value("s20")).toBe("0.943 kV … 1.154 kV");
    await one.replace("{s0 = 2 mV ± 10 %}", "");
    expect(one.figures().filter((line) => line.includes("! waits"))).toHaveLength(19);
    expect(one.value("o3")).toBe("6 V");
  });

  test("nothing else is computed", async () => {
    const one = await Followed.open(`1. {s0 = 1 mV}\n\n1. ${chain}\n\n1. ${others}`);
    const before = new Map(
      one.guide.figures.all().map((figure) => [figure.key, figure.evaluation] as const),
    );
    const computed = () =>
      one.guide.figures
        .all()
        .filter(({ key, evaluation }) => before.get(key) !== evaluation)
        .map(({ key }) => key);
    // Words in the step that defines what all others use.
    await one.replace("1. {s0", "1. Some words and {s0");
    expect(computed()).toEqual([]);
    await one.replace("{s18 = s17 * 2}", "{s18 = s17 * 3}");
    expect(computed()).toEqual(["s18", "s19", "s20"]);
    await one.replace("{o7 = 2 * 7 V}", "{o7 = 2 * 8 V}");
    expect(computed()).toEqual(["s18", "s19", "s20", "o7"]);
  });

  test("a name that is defined later is found, and lost again", async () => {
    const one = await Followed.open("1. {2 * later}\n\n1. Text.");
    expect(one.figures()).toEqual(["-: ! name sum"]);
    await one.replace("Text.", "{later = 4 V}");
    expect(one.figures()[0]).toBe("-: 8 V [8 V] sum");
    await one.replace("{later = 4 V}", "");
    expect(one.figures()).toEqual(["-: ! name sum"]);
  });

  test("a rail in the front matter reaches all pages", async () => {
    const one = await Followed.open("1. {2 * VCC}", "supply: { VCC: 12 V }\n");
    await one.replace("VCC: 12 V", "VCC: 15 V");
    expect(one.figures()).toEqual(["VCC: 15 V [15 V] definition", "-: 30 V [30 V] sum"]);
    await one.replace("supply: { VCC: 15 V }\n", "");
    expect(one.figures()).toEqual(["-: ! name sum"]);
  });
});

test("a selection by symbol follows the order of the front matter", async () => {
  const isVoltage = (symbol: string) => symbol === "V";
  const head = "figures:\n  V(R1): 1 V\n  V(R2): 2 V\n  Iq: 1 A\n";
  const one = await Followed.open("1. {V(R3) = 3 V}", head);
  const names = () =>
    one.guide.figures.withSymbol(isVoltage).map(({ figure }) => figure.name!.text);
  expect(names()).toEqual(["V(R1)", "V(R2)", "V(R3)"]);
  const before = one.guide.figures.withSymbol(isVoltage);
  await one.replace("Iq: 1 A", "Iq: 2 A");
  expect(one.guide.figures.withSymbol(isVoltage)).toBe(before);
  await one.replace("V(R1): 1 V\n  V(R2): 2 V", "V(R2): 2 V\n  V(R1): 1 V");
  expect(names()).toEqual(["V(R2)", "V(R1)", "V(R3)"]);
});

test("a value that hangs on very many inputs is used as one, and only gets wider", async () => {
  const sums = Array.from({ length: 40 }, (_, i) => {
    const terms = Array.from({ length: 20 }, (_, j) => `x${i}_${j}`);
    const inputs = terms.map((name) => `{${name} = 1 V ± 10 %}`).join(" ");
    const before = i === 0 ? "" : `t${i - 1} + `;
    return `1. ${inputs} {t${i} = ${before}${terms.join(" + ")}}`;
  });
  const one = await Followed.open(`${sums.join("\n\n")}\n\n1. {t39 - t39} {t39}`);
  expect(one.figures().slice(-2)).toEqual(["-: 0 V [0 V] sum", "-: 800 V [720 V … 880 V] sum"]);
});

test("the rails, the parts and the texts of names lead to their figures", async () => {
  const one = await Followed.open(
    "1. {I(VCC, R1) = 5 mA} {I(VCC, R2) = 2 mA} {P(R1) = 1 W}",
    "supply: { VCC: 12 V }\n",
  );
  const { figures } = one.guide;
  expect(figures.named("VCC")!.isRail).toBe(true);
  expect(figures.about("I", "VCC").map((one) => one.figure.name!.text)).toEqual([
    "I(VCC, R1)",
    "I(VCC, R2)",
  ]);
  expect(figures.about("P", one.guide.find("R1")!)).toHaveLength(1);
  expect([...figures.names()].sort()).toEqual(["I(VCC, R1)", "I(VCC, R2)", "P(R1)", "VCC"]);
});
