/** Cautions follow edits: after any change of blocks the findings are those of a fresh check. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { type Diagnosis, Service } from "../../../server/src/service.ts";
import { MemoryFiles } from "../../memoryFiles.ts";

const GUIDE = "file:///kit/guide.md";
const LIST = `Designator,Quantity,Value,Voltage,Power,Board,Description
R1,1,10k,,,a,
R2,1,1k,,,b,
R50,1,100R,,2 W,a,
C1,1,10000u,63 V,,a,electrolytic
Q1,1,IRF510,,,b,MOSFET
J9,1,inlet,,,a,mains inlet
HS1,1,8 K/W,,,b,heat sink
`;

const HEADS = [
  "parts: parts.csv\n",
  "parts: parts.csv\nsupply: { VP: 40 V, VM: -40 V }\n",
  "parts: parts.csv\nsupply: { VCC: 12 V }\nfigures: { P(R50): 1.5 W }\n",
  "parts: parts.csv\nlanguage: de\n",
  "title: no guide\n",
];
const BLOCKS = [
  "# Part\n",
  "## Stage\n",
  "## Safety\n\n> **CAUTION: hot surface, fumes.** They hurt. Take care: do not touch, and air the room.\n",
  "1. Fit [R1] and cut the leads.\n",
  "2. Fit [all R].\n",
  "3. Fit [rest of R].\n",
  "4. Drill the lid. [tool: drill press]\n",
  "5. Screw it on. [HS1] [C1]\n",
  "6. Screw it on. [J9] [Q1]\n",
  "<!-- power on -->\n",
  "<!-- board b -->\n",
  "<!-- allow hazard-missing: so -->\n",
  "7. Switch it on and measure {read V(TP1) = 80 V ± 5 %}.\n",
  "8. Set the current limit to 1 A and look for solder bridges.\n",
  "   If it is off, switch off.\n",
  "> **WARNING: electric shock, stored charge, moving parts.** They kill. Never touch them.\n",
  "> **NOTICE: hot surface.** Hot.\n",
  "> [!CAUTION]\n> Chips fly: wear safety glasses.\n",
  "9. Die Löcher bohren und einschalten.\n",
];

function textOf(head: number, blocks: readonly number[]): string {
  const body = blocks.map((block) => BLOCKS[block]).join("\n");
  return `---\n${HEADS[head]}---\n\n${body}`;
}

function shown(service: Service): unknown[] {
  service.takeChanges();
  return service
    .diagnoses(GUIDE)
    .map(({ code, severity, message, span, related }: Diagnosis) => [
      code,
      severity,
      message,
      span,
      related.map((one) => [one.span, one.message]),
    ]);
}

async function opened(text: string): Promise<Service> {
  const files = new MemoryFiles();
  files.set("file:///kit/parts.csv", LIST);
  const service = new Service(files);
  service.open(GUIDE, 0, text);
  await service.settle();
  return service;
}

/** The one stretch in which two texts differ. */
function difference(before: string, after: string) {
  let start = 0;
  while (start < before.length && before[start] === after[start]) start++;
  let tail = 0;
  const most = Math.min(before.length, after.length) - start;
  while (tail < most && before.at(-1 - tail) === after.at(-1 - tail)) tail++;
  return {
    span: { start, end: before.length - tail },
    text: after.slice(start, after.length - tail),
  };
}

const someBlocks = fc.array(fc.nat(BLOCKS.length - 1), { maxLength: 9 });
const anyChange = fc.record({
  head: fc.option(fc.nat(HEADS.length - 1), { freq: 4 }),
  at: fc.nat(9),
  drop: fc.nat(2),
  add: fc.array(fc.nat(BLOCKS.length - 1), { maxLength: 2 }),
});

const EVERY_CODE: [number[], { head: number | null; at: number; drop: number; add: number[] }[]] = [
  [1, 3, 9, 12, 16, 15],
  [
    { head: 1, at: 9, drop: 0, add: [] },
    { head: null, at: 4, drop: 0, add: [13] },
  ],
];

test("Findings on hazards are those of a fresh check after blocks come, go and change places", async () => {
  const seen = new Set<string>();
  await fc.assert(
    fc.asyncProperty(
      someBlocks,
      fc.array(anyChange, { minLength: 1, maxLength: 4 }),
      async (start, changes) => {
        let [head, blocks, version] = [0, [...start], 0];
        let text = textOf(head, blocks);
        const service = await opened(text);
        for (const change of changes) {
          head = change.head ?? head;
          blocks = blocks.toSpliced(change.at, change.drop, ...change.add);
          const next = textOf(head, blocks);
          service.edit(GUIDE, ++version, [difference(text, next)]);
          text = next;
          await service.settle();
          const now = shown(service);
          expect(now).toEqual(shown(await opened(text)));
          for (const finding of now) seen.add((finding as string[])[0]!);
        }
      },
    ),
    // The example has each of the codes that are asked for below, however chance may have it.
    { numRuns: 150, examples: [EVERY_CODE] },
  );
  expect([...seen]).toEqual(
    expect.arrayContaining([
      "hazard-missing",
      "hazard-late",
      "hazard-word",
      "hazard-incomplete",
      "power-up-missing",
      "power-up-order",
      "reading-remedy",
    ]),
  );
});
