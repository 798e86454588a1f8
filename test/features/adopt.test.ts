/** Plain guides made into marked ones. The forms are common practice in published build guides. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { adopt } from "../../server/src/features/adopt/adopt.ts";
import { scopesAt } from "../../server/src/features/adopt/scopes.ts";
import { applyEdits } from "../../server/src/text/span.ts";
import { guideOf } from "../model/guides.ts";

const LIST = `Designator,Value,Description
"R1-R4",4k7,resistor
"R5,R6",10k,resistor
"R7-R12",1k,resistor
"C1-C3",100n,ceramic
C4,100u,electrolytic
D1,1N4148,diode
U1,TL072,op amp
XU1,DIP-8 socket,socket
Q1,BC547,transistor
J1,2-pin,connector
`;

const marks = (body: string, more = "") =>
  adopt(guideOf(body, LIST, more)).proposals.map(({ mark }) => mark);

/** The body with the marks in it. */
function marked(body: string): string {
  const guide = guideOf(body, LIST);
  const text = guide.pages[0]!.text.toString();
  const edits = adopt(guide).proposals.flatMap((one) => one.edits);
  return applyEdits(text, edits).split("---\n\n")[1]!;
}

describe("What is marked", () => {
  test.each([
    ["### Resistors (R1,2,3,4)", ["[R1,2,3,4]"]],
    ["### R1–R4, R7", ["[R1–R4, R7]"]],
    ["- R5 - 10 kOhm", ["[R5]"]],
    ["- 2x R5, R6 10k", ["[R5, R6]"]],
    ["- [ ] R5", ["[R5]"]],
    ["* 10k resistors at R5 and R6.", ["[R5]", "[R6]"]],
    ["**C1 to C3:** 100 nF", ["[C1 to C3]"]],
    ["1. Solder R1-R4.", ["[R1-R4]"]],
    ["Now solder the diode D1, band up.", ["[D1]"]],
    ["1. Insert U1.", ["[insert: U1]"]],
    ["1. Insert Q1 and J1, but do not solder them yet.", ["[place: Q1]", "[place: J1]"]],
    ["1. Insert Q1. Don't solder it yet.\n2. Solder Q1.", ["[place: Q1]", "[Q1]"]],
    ["1. Fit R5, but don't solder R6 yet.", ["[R5]"]],
    ["1. Fit R5. Do not solder R6 yet.", ["[R5]"]],
    ["1. Insert U1, but do not solder it.", ["[insert: U1]"]],
    ["1. Solder a 10 k resistor to R5.", ["[R5]"]],
    ["1. Solder two 10 k resistors to R5 and R6.", ["[R5]", "[R6]"]],
    ["1. Solder the reservoir capacitor to C4, stripe down.", ["[C4]"]],
    ["Now add the diode D1, its ring to the edge.", ["[D1]"]],
    [
      "#### Solder the resistors to the back (R5, R6). Turn the board, which stays bare.",
      ["[R5, R6]"],
    ],
    ["## Connector: J1\n\n## Cable\n\n- J1: the red wire to the left", ["[J1]"]],
    ["| Ref | Value |\n|--|--|\n| C1, C2 | 100n |\n| Q1 | BC547 |", ["[C1, C2]", "[Q1]"]],
  ])("%j", (body, expected) => {
    expect(marks(body)).toEqual(expected);
  });

  test.each([
    ["de", "1. R1–R4 einlöten.", ["[R1–R4]"]],
    ["de", "1. Löten Sie den Transistor Q1 ein.", ["[Q1]"]],
    ["fr", "1. Soudez la diode D1.", ["[D1]"]],
    ["nl", "1. Soldeer de transistor Q1.", ["[Q1]"]],
    ["es", "1. Suelde el diodo D1.", ["[D1]"]],
    ["de", "1. Löten Sie alle Widerstände außer R1-R6 ein.", ["[all R except R1-R6]"]],
    ["de", "1. Stecken Sie Q1 ein, löten Sie ihn aber noch nicht fest.", ["[place: Q1]"]],
    ["fr", "1. Insérez le transistor Q1 sans le souder.", ["[place: Q1]"]],
    ["nl", "1. Plaats Q1, maar soldeer hem nog niet.", ["[place: Q1]"]],
    ["es", "1. Coloque Q1 sin soldar.", ["[place: Q1]"]],
    ["de", "1. Löten Sie einen Widerstand 10 k an R5.", ["[R5]"]],
    ["fr", "1. Soudez une résistance de 10 k.\n2. Ajoutez la diode D1.", ["[D1]"]],
    ["fr", "1. Soudez toutes les résistances sauf R1-R6.", ["[all R except R1-R6]"]],
  ])("in %s %j", (language, body, expected) => {
    expect(marks(body, `language: ${language}\n`)).toEqual(expected);
  });

  test("all of a kind, or what is left of it", () => {
    expect(marked("1. Fit all resistors except R1-R6.")).toBe(
      "1. Fit all resistors except R1-R6 [all R except R1-R6].",
    );
    expect(marked("- R5, R6\n- R1\n\n1. Then solder the remaining resistors flat.")).toContain(
      "the remaining resistors [rest of R] flat.",
    );
  });
});

test("a set leaves out what is marked only further on", () => {
  expect(marks("1. Solder all resistors.\n2. Fit R5.\n\n| Ref |\n|--|\n| R1 |")).toEqual([
    "[rest of R except R1, R5]",
    "[R5]",
    "[R1]",
  ]);
});

test("a heading that names a part is surer than a list further on", () => {
  expect(marked("## Connector: J1\n\n## Cable\n\n- J1: the red wire to the left")).toContain(
    "## Connector: [J1]\n\n## Cable\n\n- J1:",
  );
  expect(marked("## Connector: J1\n\n- J1, flat on the board")).toContain("- [J1], flat");
});

test("a chip that shares its designator with its socket is fitted there, and inserted later", () => {
  const list = "Designator,Value,Description\nU1,TL072,op amp\nU1,DIP-8,IC socket\n";
  const body = "1. Solder the socket U1.\n2. Look.\n3. Insert U1.";
  expect(adopt(guideOf(body, list)).proposals.map(({ mark }) => mark)).toEqual([
    "[U1]",
    "[insert: U1]",
  ]);
});

test("what is placed only is left to be soldered", () => {
  const { proposals, left } = adopt(guideOf("1. Insert Q1, but do not solder it yet.", LIST));
  expect(proposals.map(({ mark }) => mark)).toEqual(["[place: Q1]"]);
  expect(left.filter(({ isPlaced }) => isPlaced).map(({ part }) => part.name)).toEqual(["Q1"]);
});

describe("What is left to the author", () => {
  test.each([
    ["a mention", "D1 protects Q1 when the supply is reversed."],
    ["what lies beside", "1. Solder the wire next to Q1, away from C4."],
    ["a wire's end", "1. Solder the wire to Q1 and J1."],
    ["what the part is soldered to", "1. Solder the diode to Q1."],
    ["what belongs to a part", "1. Solder the lead of the resistor to R5."],
    ["what is added to a part", "1. Add a drop of glue under C4."],
    ["the socket of a chip", "1. Solder the 8-pin socket, its notch up (U1)."],
    ["a condition", "1. Before you fit J1, look at D1."],
    ["what must not be done", "1. Do not solder D1 yet."],
    ["tests", "## Testing\n\n1. Solder a link across D1.\n\n### In detail\n\n- R5: 10k"],
    ["fault finding", "## Fehlersuche\n\n- R5: 10k"],
    ["a long remark", "- If nothing at all is heard from the loudspeaker, look at R5."],
    ["parts that the list does not have", "- R99 and R1-R99"],
    ["what is code", "- `R5`"],
    ["a type number that looks like one", "1. Solder the chip of type X8088."],
  ])("%s", (name, body) => {
    const more = name === "fault finding" ? "language: de\n" : "";
    expect(marks(body, more)).toEqual([]);
  });

  test("each part is marked once, where it is surest that it is fitted", () => {
    const body =
      "| Ref | Value |\n|--|--|\n| Q1 | BC547 |\n| C4 | 100u |\n\n## Board\n\n1. Solder Q1.\n2. Solder Q1 again.";
    expect(marked(body)).toContain("| Q1 | BC547 |\n| [C4] | 100u |");
    expect(marked(body)).toContain("1. Solder [Q1].\n2. Solder Q1 again.");
  });

  test("parts marked by the author stay as they are", () => {
    expect(marks("1. Solder [R1-R4] and R5.\n2. Fit R1.")).toEqual(["[R5]"]);
  });

  test("is told with the place where the guide names it", () => {
    const { left } = adopt(guideOf("Look at J1.\n\n- R1-R12\n", LIST));
    expect(left.map(({ part, named }) => [part.name, named !== undefined])).toEqual([
      ["C1", false],
      ["C2", false],
      ["C3", false],
      ["C4", false],
      ["D1", false],
      ["U1", false],
      ["XU1", false],
      ["Q1", false],
      ["J1", true],
    ]);
  });
});

test("whatever the text, each proposal becomes a mark of just those parts", () => {
  const fragment = fc.constantFrom(
    ..."R1 R2, R3-R4 R5 C1–C3 D1 Q1. U1 (J1) 1k and except all resistors Solder Fit the [ ] { } * ** _ ` | < > \\ & ~".split(
      " ",
    ),
    ...["\n", "\n\n", "\n- ", "\n1. ", "\n## ", "\n\n| Ref |\n|--|\n| R1 |\n", "\n> ", "é", "🔧"],
  );
  const body = fc.array(fragment, { maxLength: 30 }).map((words) => words.join(" "));
  fc.assert(
    fc.property(body, (text) => {
      const { proposals } = adopt(guideOf(text, LIST));
      const after = guideOf(marked(text), LIST);
      for (const { parts } of proposals) {
        for (const part of parts) {
          const same = after.kit.find(part.name).part!;
          expect(after.uses(same), `${part.name} in ${JSON.stringify(text)}`).toHaveLength(1);
        }
      }
    }),
    { numRuns: 1000 },
  );
});

describe("Of a stretch", () => {
  const body = "## Board\n\n- R1, R2 4k7\n- Solder D1.\n\nMind C4.\n\n## Case\n\n- J1\n";
  const guide = guideOf(body, LIST);
  const text = guide.pages[0]!.text.toString();
  const { uri } = guide.pages[0]!;

  test("what stands in it is marked, and what is named in it is left", () => {
    const start = text.indexOf("## Board");
    const { proposals, left } = adopt(guide, { uri, start, end: text.indexOf("## Case") });
    expect(proposals.map(({ mark }) => mark)).toEqual(["[R1, R2]", "[D1]"]);
    expect(left.map(({ part }) => part.name)).toEqual(["C4"]);
  });

  test("the step or line at the cursor, and on a heading its stage", () => {
    const marksAt = (where: string) =>
      [...scopesAt(guide, uri, text.indexOf(where))].map((scope) => [
        scope.name,
        adopt(guide, scope)
          .proposals.map(({ mark }) => mark)
          .join(" "),
      ]);
    expect(marksAt("4k7")).toEqual([["this line", "[R1, R2]"]]);
    expect(marksAt("D1")).toEqual([["this line", "[D1]"]]);
    expect(marksAt("Case")).toEqual([
      ["this line", ""],
      ["this stage", "[J1]"],
    ]);
  });

  test("a step with all that belongs to it", () => {
    const steps = guideOf("## A\n\n1. Solder R1.\n\n   Then solder D1.\n2. Solder Q1.\n", LIST);
    const page = steps.pages[0]!;
    const [scope] = scopesAt(steps, page.uri, page.text.toString().indexOf("Then"));
    expect(adopt(steps, scope).proposals.map(({ mark }) => mark)).toEqual(["[R1]", "[D1]"]);
  });

  test("a parts table that is kept is not marked", () => {
    const table =
      "<!-- parts table -->\n\n| Ref | Value |\n|---|---|\n| R1 | 4k7 |\n\n<!-- end -->";
    expect(marks(`## A\n\n${table}\n\n- R2\n`)).toEqual(["[R2]"]);
  });
});
