/** Marks for parts that are dragged from the view of those not yet fitted. */
import { expect, test } from "vitest";
import { type Choice, markOf } from "../../client/src/views/markOf.ts";
import { overviewOf } from "../../server/src/features/overview.ts";
import { guideOf } from "../model/guides.ts";

const LIST = `Designator,Value,Height,Board
"R1,R2,R3,R7",4k7,2.5,main
"C1,C2",1n,7,main
"R1,R2,R3",1k,2.5,relay
W1,wire,1,
`;

/** The groups of a guide that fits nothing yet. */
function groupsOf(list: string) {
  return overviewOf(guideOf("## A\n\n1. Look.\n", list), []).left;
}

/** The names of the parts that a mark fits in that guide. */
function fittedBy(mark: string, list: string): string[] {
  const { parts, missing } = guideOf(`## A\n\n1. Solder ${mark}.\n`, list);
  const isLeft = new Set(missing);
  return parts.filter((part) => !isLeft.has(part)).map(({ board, name }) => `${board}/${name}`);
}

test("a group becomes ranges, and names its board once", () => {
  const [loose, main, capacitors, relay] = groupsOf(LIST);
  expect(markOf([{ group: main! }])).toBe("[main/R1–R3, R7]");
  expect(markOf([{ group: relay!, part: relay!.parts[1]! }])).toBe("[relay/R2]");
  const all: Choice[] = [main!, capacitors!, relay!, loose!].map((group) => ({ group }));
  expect(markOf(all)).toBe("[W1, main/R1–R3, R7, C1, C2, relay/R1–R3]");
  expect(fittedBy(markOf(all), LIST)).toHaveLength(10);
});

test("a part that is chosen with its group is named once", () => {
  const [, main] = groupsOf(LIST);
  const both = [{ group: main!, part: main!.parts[0]! }, { group: main! }];
  expect(markOf(both)).toBe("[main/R1–R3, R7]");
  expect(fittedBy(markOf(both), LIST)).toEqual(["main/R1", "main/R2", "main/R3", "main/R7"]);
});

test("a kit of one board needs no board in its marks", () => {
  const list = 'Designator,Value,Board\n"R1,R2",1k,main\n';
  expect(markOf(groupsOf(list).map((group) => ({ group })))).toBe("[R1, R2]");
});
