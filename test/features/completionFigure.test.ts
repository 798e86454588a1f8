import { describe, expect, test } from "vitest";
import { signatureAt } from "../../server/src/features/signature.ts";
import { chosen, offered } from "./completing.ts";
import { atCursor } from "./cursor.ts";

const LIST = "--- file: parts.csv\nDesignator,Value\nR50,0R22\nR51,1k\nQ1,BC547";

function kit(body: string): string {
  const head = "parts: parts.csv\nsupply: { VCC: 13.8 V ± 10 % }";
  return `---\n${head}\n---\n\n## A\n\n1. Set {Iq = 45 mA ± 10 %}.\n2. ${body}\n${LIST}`;
}

describe("offered in a figure are", () => {
  test("first the names in scope, with what is written of them and where", async () => {
    const { found } = await offered(kit("Take {¦}."));
    expect(found!.items.slice(0, 3)).toMatchObject([
      { label: "VCC", detail: "13.8 V ± 10 %" },
      { label: "Iq", detail: "45 mA ± 10 %", description: "step 1.1" },
      { label: "read", text: "read " },
    ]);
  });

  test("readings with their limits", async () => {
    const readings = "{read V(A) = 1 V … 2 V} {read V(B) < 3 V} {read V(C) = 4 V ± 5 %}";
    const { found } = await offered(kit(`Read ${readings}, take {¦}.`));
    expect(found!.items.filter(({ label }) => /^V\(.\)/.test(label))).toMatchObject([
      { label: "V(A)", detail: "1 V … 2 V" },
      { label: "V(B)", detail: "< 3 V" },
      { label: "V(C)", detail: "4 V ± 5 %" },
    ]);
  });

  test.each([
    ["a name that is not closed", "Take {2 * V¦ and go on.", "VCC", "2. Take {2 * VCC and go on."],
    ["in the middle of a name", "Take {V¦X * 2}.", "VCC", "2. Take {VCC * 2}."],
    ["a unit, with its space", "Set {V1 = 13.8¦}.", "V", "2. Set {V1 = 13.8 V}."],
    ["a unit behind the space", "Set {V1 = 13.8 ¦}.", "mV", "2. Set {V1 = 13.8 mV}."],
    ["a unit half typed", "Set {V1 = 13.8 m¦}.", "mV", "2. Set {V1 = 13.8 mV}."],
    ["a part", "Take {Iq * R5¦}.", "R50", "2. Take {Iq * R50}."],
    ["the subject of a name", "Take {P(R¦) = 1 W}.", "R50", "2. Take {P(R50) = 1 W}."],
    ["a thread", "Drill {clearanceHole(¦)}.", "M3", "2. Drill {clearanceHole(M3)}."],
    [
      "the next word",
      "Drill {clearanceHole(M3; ¦)}.",
      "fine",
      "2. Drill {clearanceHole(M3; fine)}.",
    ],
    ["in a sum", "Take {sqrt(¦)}.", "Iq", "2. Take {sqrt(Iq)}."],
  ])("%s", async (_, body, label, line) => {
    const result = await offered(kit(body));
    expect(result.labels).toContain(label);
    expect(chosen(result, label)).toBe(line);
  });

  test("trade functions with places for what they need", async () => {
    const { found } = await offered(kit("Drill {¦}."));
    const hole = found!.items.find(({ label }) => label === "clearanceHole")!;
    expect(hole).toMatchObject({ isSnippet: true, text: `clearanceHole(${"$"}{1:thread})$0` });
    expect(hole.documentation!()).toContain("ISO 273");
  });

  test("no units behind a name that ends in a digit", async () => {
    expect((await offered(kit("Take {R50 ¦}."))).labels).not.toContain("mV");
  });

  test.each([
    ["in a template's braces", "Use {{¦}}"],
    ["behind a dollar", "Use \u0024{¦}"],
    ["in code", "Use `{¦`"],
    ["behind the figure", "Use {VCC}¦"],
  ])("nothing %s", async (_, body) => {
    expect((await offered(kit(body))).found).toBeUndefined();
  });
});

describe("while a call is written", () => {
  async function signature(body: string) {
    const at = await atCursor(kit(body));
    return signatureAt(at.guide, at.uri, at.offset);
  }

  test("its parameters are shown, and which one comes", async () => {
    const first = await signature("Drill {clearanceHole(¦");
    expect(first).toMatchObject({ label: "clearanceHole(thread; fit = medium)", active: 0 });
    const second = await signature("Drill {2 * clearanceHole(M3; f¦) + 1 mm}.");
    expect(second!.active).toBe(1);
    const { span, documentation } = second!.parameters[1]!;
    expect(second!.label.slice(span.start, span.end)).toBe("fit = medium");
    expect(documentation).toContain("one of fine, medium, coarse; medium if left out");
  });

  test("nothing outside, in a function of arithmetic, or in a name", async () => {
    expect(await signature("Drill {clearanceHole(M3)¦}.")).toBeUndefined();
    expect(await signature("Take {sqrt(¦)}.")).toBeUndefined();
    expect(await signature("Take {P(¦) = 1 W}.")).toBeUndefined();
    expect(await signature("Take clearanceHole(¦).")).toBeUndefined();
  });
});
