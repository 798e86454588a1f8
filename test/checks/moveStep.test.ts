import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { applyFix, checkFiles } from "../fixture.ts";

const LIST = `
Designator,Quantity,Value,Height
"W1, W2",2,link,1
"R1, R2, R3, R4, R5, R6, R7, R8",8,10k,2.5
"D1, D2, D3",3,1N4001,2.7
"XU1, XU2",2,socket,4
"U1, U2",2,TL072,4
"Q1, Q2, Q3",3,BC547B,8
"C1, C2, C3, C4",4,470u,11
"K1, K2",2,12 V relay,15.5
"T1, T2",2,2 x 9 V transformer,22
,20,M3x10`;

type Files = ReadonlyMap<string, string>;

/** The guides that the fixes of `height-order` lead to. */
async function moves(files: Files): Promise<Files[]> {
  const { diagnoses } = await checkFiles(files);
  return diagnoses
    .filter((one) => one.code === "height-order")
    .flatMap((one) => one.fixes().map((fix) => applyFix(files, fix)));
}

/** Which step is the first to solder, and owes a note, follows the order. */
const HEAD = "---\nparts: parts.csv\nchecks: { hazard-missing: off }\n---\n\n";

function filesOf(body: string): Files {
  return new Map([
    ["guide.md", HEAD + body],
    ["parts.csv", LIST.trimStart()],
  ]);
}

function bodyOf(files: Files): string {
  return files.get("guide.md")!.slice(HEAD.length);
}

/** The guide's body after the only fix; undefined when none is offered. */
async function moved(body: string): Promise<string | undefined> {
  const after = await moves(filesOf(body));
  expect(after.length).toBeLessThanOrEqual(1);
  return after[0] && bodyOf(after[0]);
}

describe("The move of a step", () => {
  test("is not offered to another page", async () => {
    const files = new Map([
      ["guide.md", `${HEAD.replace("parts:", "pages: [b.md]\nparts:")}## A\n\n1. Solder [C1].\n`],
      ["b.md", "1. Solder [R1].\n2. Solder [C2].\n3. Solder [R2].\n"],
      ["parts.csv", LIST.trimStart()],
    ]);
    const { diagnoses } = await checkFiles(files);
    const own = diagnoses.filter(({ code }) => code === "height-order");
    expect(own).toHaveLength(2);
    expect(own.flatMap((one) => one.fixes())).toEqual([]);
  });

  test("puts it before the first step with a taller part", async () => {
    const body = "## Board\n\n1. [R1–R4]\n2. [D1]\n3. [Q1]\n4. [K1]\n5. [R5]\n6. [T1]";
    expect(await moved(body)).toBe(
      "## Board\n\n1. [R1–R4]\n2. [R5]\n3. [D1]\n4. [Q1]\n5. [K1]\n6. [T1]",
    );
  });

  test("takes a tall step behind the lower ones", async () => {
    const body = "## Board\n\n1. [K1]\n2. [R1–R4]\n3. [D1]\n4. [T1]\n\n## Case\n\n1. Close it.";
    expect(await moved(body)).toBe(
      "## Board\n\n1. [R1–R4]\n2. [D1]\n3. [K1]\n4. [T1]\n\n## Case\n\n1. Close it.",
    );
  });

  test("takes comments, sub-steps, pictures and text along, and leaves blank lines in place", async () => {
    const body = `## Board

<!-- board main -->

1. Solder [K1].

   ![K1](k1.jpg)


<!-- allow stated-value: printed so -->
<!-- the old print -->
2. Solder [R1].
   1. Bend its leads.
   2. Cut them [tool: cutters].

   ![R1](r1.jpg)

Text that belongs to step 2.

3. Solder [T1].`;
    expect(await moved(body)).toBe(`## Board

<!-- board main -->

<!-- allow stated-value: printed so -->
<!-- the old print -->
1. Solder [R1].
   1. Bend its leads.
   2. Cut them [tool: cutters].

   ![R1](r1.jpg)

Text that belongs to step 2.


2. Solder [K1].

   ![K1](k1.jpg)

3. Solder [T1].`);
  });

  test("leaves the numbers with their steps where they do not count on, or in another length", async () => {
    expect(await moved("## Board\n\n9. [K1]\n10. [D1]\n\n    Mind it.\n11. [T1]")).toBe(
      "## Board\n\n10. [D1]\n\n    Mind it.\n9. [K1]\n11. [T1]",
    );
    expect(await moved("## Board\n\n2. [K1]\n1. [D1]\n3. [T1]")).toBe(
      "## Board\n\n1. [D1]\n2. [K1]\n3. [T1]",
    );
    expect(await moved("## Board\n\n1. [K1]\n1. [D1]\n1. [T1]")).toBe(
      "## Board\n\n1. [D1]\n1. [K1]\n1. [T1]",
    );
  });

  test("keeps CRLF, trailing spaces and the missing end of the last line", async () => {
    const body = "## Board\r\n\r\n1. [K1]  \r\n2. [D1]\r\n   🔧  \r\n3. [T1]";
    expect(await moved(body)).toBe("## Board\r\n\r\n1. [D1]\r\n   🔧  \r\n2. [K1]  \r\n3. [T1]");
    expect(await moved("## Board\n\n1. [K1]  \n2. [D1]")).toBe("## Board\n\n1. [D1]\n2. [K1]  ");
  });

  test("moves headings with what stands below them, bullets and paragraphs", async () => {
    expect(await moved("## B\n\n### [K1]\n\nText.\n\n### [R1]\n\nMore.\n\n## C\n")).toBe(
      "## B\n\n### [R1]\n\nMore.\n\n### [K1]\n\nText.\n\n## C\n",
    );
    expect(await moved("## B\n\n- [K1]\n- [R1]\n- [T1]")).toBe("## B\n\n- [R1]\n- [K1]\n- [T1]");
    expect(await moved("## B\n\n[K1] first.\n\n[R1] next.")).toBe(
      "## B\n\n[R1] next.\n\n[K1] first.",
    );
  });

  describe.each([
    ["a hazard note", "1. [K1]\n\n> **WARNING: hot surface.** Let it cool.\n\n2. [C1]\n3. [R1]"],
    ["a hazard note right above its place", "1. [D1]\n\n> [!CAUTION]\n> Hot.\n\n2. [K1]\n3. [R1]"],
    ["a step that makes it", "1. [K1]\n2. [make: R1]\n3. [R1]"],
    ["a match", "1. [K1, K2, T1]\n2. [match: R1+R2]\n3. [R1+R2]"],
    ["a trial", "1. [K1]\n2. [try: R1]\n3. [R1]"],
    ["the trial's end", "1. [K1]\n2. [try: R1]\n3. [remove: R1]\n4. [R1]"],
    ["power", "1. [K1]\n\n<!-- power on -->\n\n2. Switch on.\n3. [R1]"],
    ["a reading", "1. [K1]\n2. {read V(T1) = 9 V ± 5 %}\n3. [R1]"],
    ["a subheading", "1. [K1]\n\n### Resistors\n\n2. [R1]"],
    ["the rest of a set", "1. [K1]\n2. [rest of D]\n3. [R1]"],
    [
      "a step whose comment would be parted",
      "1. [K1]\n2. Wait.\n\n   <!-- allow x: y -->\n\n   Text.\n3. [R1]",
    ],
  ])("is not offered past %s", (_, steps) => {
    test("and the finding stays", async () => {
      const files = filesOf(`## Board\n\n${steps}`);
      const { diagnoses } = await checkFiles(files);
      expect(diagnoses.filter((one) => one.code === "height-order").length).toBeGreaterThan(0);
      expect(await moves(files)).toEqual([]);
    });
  });

  describe.each([
    ["for a sub-step", "1. [K1]\n2. Then:\n   1. [R1]"],
    ["for a table row", "| Step | Part |\n|---|---|\n| 1 | [K1] |\n| 2 | [R1] |"],
    ["for a step whose other parts do not belong there", "1. [Q1]\n2. [C1]\n3. [R1] [K1]\n4. [T1]"],
    ["within one step", "1. [K1], [R1]"],
    ["for a part that is too late since an earlier stage", "1. [K1]\n\n## Next\n\n1. [R1]"],
    ["where a socket would come after its chip", "1. [K1] [insert: U1]\n2. [XU1]"],
    ["where Markdown would read the lines otherwise", "[K1] comes first.\n\n2. [R1]\n3. [T1]"],
  ])("is not offered %s", (_, steps) => {
    test("and the finding stays", async () => {
      const files = filesOf(`## Board\n\n${steps}`);
      const { diagnoses } = await checkFiles(files);
      expect(diagnoses.filter((one) => one.code === "height-order").length).toBeGreaterThan(0);
      expect(await moves(files)).toEqual([]);
    });
  });
});

/** What may stand in and around a step; `#` is its mark. */
const SHAPES = [
  "1. Fit #.",
  "1. Fit #.\n",
  "7) Fit #.\n",
  "3. Fit #,\nlazily.",
  "2. Fit #.\n\n   ![picture](p.jpg)\n",
  "2. Fit #.\n   1. Bend it.\n   2. Cut it.\n",
  "1. Fit #. [1 × M3x10]\n\nText below the list.\n",
  "4. Fit #:\n\n       code, indented\n",
  "1. Fit #:\n   ~~~\n   1. code\n   <!-- allow x: y -->\n   ~~~",
  "<!-- allow stated-value: so -->\n1. Fit #.",
  "<!-- a remark -->\n\n1. Fit #.\n",
  "1. Fit #.\n\n> A quotation.\n",
  "1. Fit #.\n\n> **CAUTION: hot.** Wait.\n",
  "- Fit #.",
  "Fit # now.\n",
  "### Fit #\n\nText.\n",
  "### Heading without a step\n\n1. Fit #.",
  "1. Only text.",
  "   1. Fit #.",
  "1. Wait.\n   - Fit #.\n   - And a bullet.",
  "| a | # |\n|---|---|\n| b | c |\n",
];

const NAMES = [
  ...["W1", "W2", "R1", "R2", "R3", "R4", "D1", "D2", "D3", "U1", "Q1", "Q2", "Q3"],
  ...["C1", "C2", "C3", "K1", "K2", "T1", "T2"],
];

const anyGuide = fc
  .tuple(
    fc.shuffledSubarray(NAMES, { minLength: 3, maxLength: 7 }),
    fc.array(fc.constantFrom(...SHAPES), { minLength: 7, maxLength: 7 }),
    fc.constantFrom("\n", "\r\n"),
    fc.boolean(),
  )
  .map(([names, shapes, lineEnd, finished]) => {
    const steps = names.map((name, i) => shapes[i]!.replace("#", `[${name}]`));
    const body = `## Board\n\n${steps.join("\n")}${finished ? "\n\n## Case\n\n1. Close it.\n" : ""}`;
    return body.replaceAll("\n", lineEnd);
  });

/** Lines that are not blank, with everything that stands in them but for the numbers of steps. */
function linesOf(body: string): string[] {
  return body
    .split(/\r?\n/)
    .filter((line) => line.trim() !== "")
    .map((line) => line.replace(/^\d+(?=[.)])/, "#"));
}

function numbersOf(body: string): string[] {
  return body.match(/^\d+(?=[.)])/gm) ?? [];
}

/** Whether `b` is `a` with two neighbouring runs of lines exchanged. */
function isOneMove(a: readonly string[], b: readonly string[]): boolean {
  const wanted = b.join("\n");
  for (let i = 0; i < a.length; i++) {
    for (let j = i + 1; j < a.length; j++) {
      for (let k = j + 1; k <= a.length; k++) {
        const turned = [...a.slice(0, i), ...a.slice(j, k), ...a.slice(i, j), ...a.slice(k)];
        if (turned.join("\n") === wanted) return true;
      }
    }
  }
  return false;
}

function blanks(body: string): number {
  return body.split(/\r?\n/).filter((line) => line.trim() === "").length;
}

/** Findings by what they stand on. */
async function findingsOf(files: Files): Promise<string[]> {
  const { diagnoses } = await checkFiles(files);
  return diagnoses.map((one) => {
    const text = files.get(one.uri.slice(one.uri.lastIndexOf("/") + 1))!;
    return `${one.code} ${text.slice(one.span.start, one.span.end)}`;
  });
}

test("A move keeps all lines, removes its finding and adds none", async () => {
  let offered = 0;
  await fc.assert(
    fc.asyncProperty(anyGuide, async (body) => {
      const files = filesOf(body);
      const before = await findingsOf(files);
      for (const after of await moves(files)) {
        offered++;
        const text = bodyOf(after);
        expect(isOneMove(linesOf(body), linesOf(text)), text).toBe(true);
        expect(blanks(text)).toBe(blanks(body));
        expect(numbersOf(text).toSorted()).toEqual(numbersOf(body).toSorted());
        const rest = [...before];
        for (const finding of await findingsOf(after)) {
          expect(rest, text).toContain(finding);
          rest.splice(rest.indexOf(finding), 1);
        }
        expect(rest.filter((finding) => finding.startsWith("height-order")).length).toBeGreaterThan(
          0,
        );
      }
    }),
    { numRuns: 150 },
  );
  expect(offered).toBeGreaterThan(40);
});
